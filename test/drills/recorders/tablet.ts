import { forceCloseDatabase } from 'fake-indexeddb';
import type { FlightId } from '../../../src/record/brand.ts';
import type { Draft, Entry, Stamp } from '../../../src/record/entry.ts';
import { watchClockSteps } from '../../../src/journal/clockSteps.ts';
import { openShelf } from '../../../src/journal/idbJournal.ts';
import type { Journal, Shelf } from '../../../src/journal/journal.ts';
import { faultyDisk, type Fault, type FaultyDisk } from '../../journal/faultyDisk.ts';
import { intercept } from '../../journal/intercept.ts';
import { noted } from '../../journal/smallFlight.ts';
import { storedLines } from '../../journal/standIn.ts';
import { testLocks, testMemory, testPorts, type TestPorts } from '../../journal/testPorts.ts';
import { testTime, type TestTime } from '../../journal/testTime.ts';
import type { Turns } from './turns.ts';

const LONGEST_WAIT_MS = 60_000;
const LEAST_STEP_MS = 500;

/** What a page lives on; all of it is gone with the page. */
interface Page {
  readonly time: TestTime;
  readonly ports: TestPorts;
  readonly shelf: Shelf;
  readonly checkClock: () => void;
  alive: boolean;
  journal: Journal | null;
}

/** A tablet whose page may be killed at any turn of its disk, and all that it ever said to be saved. */
export class Tablet {
  readonly told: Entry[] = [];
  readonly broken: string[] = [];
  /** Words of touches that are neither saved nor given up by a crash. */
  readonly open = new Set<string>();
  readonly #memory = testMemory();
  readonly #locks = testLocks();
  readonly #databaseName: string;
  readonly #turns: Turns;
  readonly #randomId: () => string;
  #wallMs: number;
  #steppedMs: number | null = null;
  #disk: FaultyDisk | null = null;
  #page: Page | null = null;
  #touches = 0;
  readonly name: string;

  constructor(
    name: string,
    given: { readonly wallMs: number; readonly turns: Turns; readonly randomId: () => string },
  ) {
    this.name = name;
    this.#databaseName = `${name}-${given.randomId()}`;
    this.#turns = given.turns;
    this.#randomId = given.randomId;
    this.#wallMs = given.wallMs;
  }

  get page(): Page {
    if (this.#page === null) throw new Error(`${this.name} must have a page`);
    return this.#page;
  }

  get journal(): Journal {
    const { journal } = this.page;
    if (journal === null) throw new Error(`${this.name} must have a flight`);
    return journal;
  }

  /** Time passes here; what falls due is done. */
  pass(ms: number): void {
    this.#page?.time.advance(ms);
  }

  nextDueMs(): number {
    return this.#page?.time.nextDueMs() ?? Infinity;
  }

  async start(): Promise<void> {
    const time = testTime(this.#wallMs, this.#randomId());
    const ports = testPorts({
      schedule: time.schedule,
      databaseName: this.#databaseName,
      memory: this.#memory,
      locks: this.#locks,
      randomId: this.#randomId,
    });
    const shelf = await this.#answered(
      openShelf({ clock: time.clock, device: this.name, ports }),
      time,
    );
    const { check } = watchClockSteps({
      ticks: { wallMs: () => time.clock.now(), monoMs: () => time.clock.stampNow().mono },
      schedule: time.schedule,
      isVisible: () => true,
      isAwake: () => true,
      onStep: ({ what, stepMs }) => {
        if (stepMs !== this.#steppedMs) {
          this.broken.push(`${this.name}: a step of ${this.#steppedMs} ms noted as ${stepMs} ms`);
        }
        this.touch((stamp, words) => ({
          kind: 'deviceNoted',
          body: { what, stepMs, words },
          stamp,
        }));
      },
    });
    const page: Page = { time, ports, shelf, checkClock: check, alive: true, journal: null };
    this.#page = page;
    const flight = await this.#answered(shelf.openedFlight(), time);
    page.journal = flight === null ? null : await this.#answered(shelf.journalOf(flight), time);
  }

  /** Has the journal of a flight that was opened or joined on this page. */
  async fly(opened: Promise<Journal>): Promise<FlightId> {
    const journal = await this.#answered(opened, this.page.time);
    this.page.journal = journal;
    return journal.flight;
  }

  touch(draftOf: (stamp: Stamp, words: string) => Draft = noted): void {
    const { page, journal } = this;
    const words = `${this.name}, touch ${(this.#touches += 1)}`;
    const stamp = page.time.clock.stampNow();
    const seenOrd = journal.entries().reduce((most, { ord }) => Math.max(most, ord), -Infinity);
    this.open.add(words);
    void journal.append(draftOf(stamp, words)).then((entry) => {
      if (!page.alive) return;
      this.told.push(entry);
      this.open.delete(words);
      if (entry.wall !== stamp.wall || entry.mono !== stamp.mono || entry.boot !== stamp.boot) {
        this.broken.push(`${words}: its time was changed`);
      }
      if (entry.ord <= seenOrd) {
        this.broken.push(`${words}: ordered before what was seen`);
      }
    });
  }

  stepClock(ms: number): void {
    const { time, checkClock } = this.page;
    this.#steppedMs = Math.abs(ms) > LEAST_STEP_MS ? ms : null;
    time.setWall(time.clock.now() + ms);
    checkClock();
  }

  show(): void {
    this.page.ports.show();
  }

  breakDisk(fault: Fault, atCall: number, lasting: boolean): void {
    this.mendDisk();
    this.#disk = faultyDisk(fault, atCall, lasting, this.#databaseName);
  }

  mendDisk(): void {
    this.#disk?.heal();
    this.#disk?.restore();
    this.#disk = null;
  }

  /**
   * The page is gone at once; what was not told saved is nobody's promise.
   *
   * @param rollsBack whether what the disk had not committed goes with it, or comes to its end after the page
   */
  async crash(rollsBack: boolean): Promise<void> {
    this.mendDisk();
    this.page.alive = false;
    const stayShut = intercept(IDBFactory.prototype, 'open', (_self, run, [name]) =>
      name === this.#databaseName ? new IDBOpenDBRequest() : run(),
    );
    if (rollsBack) rollBack(this.#databaseName);
    do {
      for (const connection of connectionsOf(this.#databaseName)) {
        // Its declared type asks for the class where the instance is meant.
        Reflect.apply(forceCloseDatabase, undefined, [connection]);
      }
      await this.#turns.take();
      // What has not come to its end by now waits for the page that is gone.
      rollBack(this.#databaseName);
    } while (connectionsOf(this.#databaseName).length > 0);
    stayShut();
    this.#locks.drop();
    this.open.clear();
    this.#wallMs = this.page.time.clock.now();
    await this.start();
  }

  /** Own lines as the disk has them. */
  stored(): ReadonlySet<string> {
    return new Set(storedLines(this.#databaseName));
  }

  forget(): void {
    this.mendDisk();
    Reflect.get(indexedDB, '_databases').delete(this.#databaseName);
  }

  /** The end of a piece of work, with as many turns and as much time as it takes. */
  async #answered<T>(work: Promise<T>, time: TestTime): Promise<T> {
    let over = false;
    work
      .finally(() => {
        over = true;
      })
      .catch(() => {});
    for (let waitedMs = 0; waitedMs < LONGEST_WAIT_MS; waitedMs += 250) {
      await this.#turns.take();
      if (over) return work;
      time.advance(250);
    }
    throw new Error(`${this.name} did not answer`);
  }
}

function rollBack(databaseName: string) {
  const transactions: readonly object[] = insideOf(databaseName)?.transactions ?? [];
  for (const transaction of transactions) {
    if (Reflect.get(transaction, '_state') !== 'finished') {
      Reflect.apply(Reflect.get(transaction, '_abort'), transaction, ['AbortError']);
    }
  }
}

function connectionsOf(databaseName: string): readonly object[] {
  return [...(insideOf(databaseName)?.connections ?? [])];
}

interface Inside {
  readonly connections: readonly object[];
  readonly transactions: readonly object[];
}

/** What the stand-in for the database keeps to itself. */
function insideOf(databaseName: string): Inside | undefined {
  return Reflect.get(indexedDB, '_databases').get(databaseName);
}
