import { startApp, type AppServer } from './appServer.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';

/** The built app on a server of its own, and the tablets that were started on it. */
export class Journey {
  private readonly server: AppServer;
  private readonly tablets: Tablet[] = [];

  private constructor(server: AppServer) {
    this.server = server;
  }

  static async begin(): Promise<Journey> {
    return new Journey(await startApp());
  }

  /** A tablet that has never seen the app, with its clock at that time, and someone at it. */
  async newScribe(startMs: number): Promise<Scribe> {
    const tablet = await Tablet.launch(this.server.origin, { startAt: startMs });
    this.tablets.push(tablet);
    await tablet.open();
    return new Scribe(tablet, startMs + 5000);
  }

  async end(): Promise<void> {
    await Promise.all(this.tablets.map((tablet) => tablet.close()));
    await this.server.close();
  }
}
