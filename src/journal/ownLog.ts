import type { RecorderId } from '../record/brand.ts';
import type { Entry } from '../record/entry.ts';
import type { Database, FlightRow, Head } from './database.ts';
import { HeadMoved } from './faults.ts';
import type { Found } from './writer.ts';

export function headOf(entry: Entry): Head {
  return { rec: entry.rec, flight: entry.flight, seq: entry.seq, id: entry.id, ord: entry.ord };
}

/**
 * Adds entries at the end of their recorder's chain: all or none, on disk when it resolves.
 *
 * @param from where the chain ended after the last save; null when nothing stands under this recorder
 * @param rowOf the flight's new summary, worked out while nobody else can write it; null when these entries leave it
 */
export function extendLog(
  database: Database,
  entries: readonly Entry[],
  from: Head | null,
  rowOf: (() => FlightRow) | null,
): Promise<void> {
  const last = entries.at(-1);
  if (last === undefined) {
    return Promise.resolve();
  }
  const stores =
    rowOf === null ? (['lines', 'heads'] as const) : (['lines', 'heads', 'flights'] as const);
  return database.write(stores, async (tx) => {
    const heads = tx.objectStore('heads');
    const lines = tx.objectStore('lines');
    // All asked at once and judged by the transaction: waiting for the head first would cost a turn a touch.
    const reading = heads.get(last.rec);
    judgedByTransaction(reading);
    for (const entry of entries) {
      judgedByTransaction(lines.add({ line: entry.line }, [entry.rec, entry.seq]));
    }
    judgedByTransaction(heads.put(headOf(last)));
    const head = await reading;
    if (head?.seq !== from?.seq || head?.id !== from?.id) {
      throw new HeadMoved(`the chain must end at ${from?.seq ?? 0}, found ${head?.seq ?? 0}`);
    }
    if (rowOf !== null) {
      await tx.objectStore('flights').put(rowOf());
    }
  });
}

function judgedByTransaction(request: Promise<unknown>): void {
  request.catch(() => {});
}

/** How many of `unsaved`, whose first follows `from`, are on disk after an answer was lost. */
export function findStored(
  database: Database,
  rec: RecorderId,
  from: Head | null,
  unsaved: readonly Entry[],
): Promise<Found> {
  const savedSeq = from?.seq ?? 0;
  return database.read(['lines', 'heads'], async (tx): Promise<Found> => {
    const head = await tx.objectStore('heads').get(rec);
    const foundSeq = head?.seq ?? 0;
    if (foundSeq < savedSeq) {
      return { kind: 'missing', expectedSeq: savedSeq, foundSeq };
    }
    if (foundSeq === savedSeq && head?.id !== from?.id) {
      return { kind: 'fork', seq: savedSeq };
    }
    const stored = unsaved.filter((entry) => entry.seq <= foundSeq);
    for (const entry of stored) {
      const found = await tx.objectStore('lines').get([rec, entry.seq]);
      if (found?.line !== entry.line) {
        return { kind: 'fork', seq: entry.seq };
      }
    }
    return foundSeq > savedSeq + stored.length
      ? { kind: 'fork', seq: savedSeq + stored.length + 1 }
      : { kind: 'stored', count: stored.length };
  });
}
