import type { Canary } from './canary.ts';
import type { Database } from './database.ts';
import { inTime } from './faults.ts';
import type { Clock } from './journal.ts';
import type { OpenFlights } from './openFlights.ts';
import type { JournalPorts } from './ports.ts';

/** What the journals of one page share. */
export interface JournalContext {
  readonly clock: Clock;
  readonly device: string;
  readonly ports: JournalPorts;
  readonly database: Database;
  readonly canary: Canary;
  readonly open: OpenFlights;
}

const ANSWER_WITHIN_MS = 10_000;

/** Does what may be repeated, a second time on a new connection: the first after sleep may be dead. */
export async function twice<T>(context: JournalContext, work: () => Promise<T>): Promise<T> {
  const { database, ports } = context;
  try {
    return await inTime(work(), ANSWER_WITHIN_MS, ports.schedule);
  } catch {
    database.discard();
    return inTime(work(), ANSWER_WITHIN_MS, ports.schedule);
  }
}
