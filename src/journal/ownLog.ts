import { unwrap } from 'idb';
import type { RecorderId } from '../record/brand.ts';
import { hashLine } from '../record/chain.ts';
import type { Entry } from '../record/entry.ts';
import type { Database, FlightRow, Head } from './database.ts';
import { HeadMoved } from './faults.ts';
import type { Diverged, Found } from './writer.ts';

export function headOf(entry: Entry): Head {
  return { rec: entry.rec, flight: entry.flight, seq: entry.seq, id: entry.id, ord: entry.ord };
}

/**
 * Adds entries at the end of their recorder's chain: all or none, on disk when it resolves. A number that is taken
 * makes it fail whole. A chain that does not end where it should is told only after the entries were added: they are
 * on disk then, and `findStored` says what is the matter. Waiting for the end before adding would cost a turn a touch.
 *
 * @param from where the chain ended after the last save; null when nothing stands under this recorder
 * @param rowOf the flight's new summary, worked out while nobody else can write it; null when these entries leave it
 */
export async function extendLog(
  database: Database,
  entries: readonly Entry[],
  from: Head | null,
  rowOf: (() => FlightRow) | null,
): Promise<void> {
  const last = entries.at(-1);
  if (last === undefined) {
    return;
  }
  let ended: Head | undefined;
  const ask = (tx: IDBTransaction) => {
    const heads = tx.objectStore('heads');
    const lines = tx.objectStore('lines');
    const reading: IDBRequest<Head | undefined> = heads.get(last.rec);
    reading.onsuccess = () => {
      ended = reading.result;
    };
    for (const entry of entries) {
      lines.add({ line: entry.line }, [entry.rec, entry.seq]);
    }
    heads.put(headOf(last));
  };
  if (rowOf === null) {
    await database.writeAtOnce(['lines', 'heads'], ask);
  } else {
    await database.write(['lines', 'heads', 'flights'], async (tx) => {
      ask(unwrap(tx));
      await tx.objectStore('flights').get(last.flight);
      await tx.objectStore('flights').put(rowOf());
    });
  }
  if (ended?.seq !== from?.seq || ended?.id !== from?.id) {
    throw new HeadMoved(`the chain must end at ${from?.seq ?? 0}, found ${ended?.seq ?? 0}`);
  }
}

/** How many of `unsaved`, whose first follows `from`, are on disk after an answer was lost, and whether all is well. */
export function findStored(
  database: Database,
  rec: RecorderId,
  from: Head | null,
  unsaved: readonly Entry[],
): Promise<Found> {
  const savedSeq = from?.seq ?? 0;
  return database.read(['lines', 'heads'], async (tx): Promise<Found> => {
    const lines = tx.objectStore('lines');
    const headSeq = (await tx.objectStore('heads').get(rec))?.seq ?? 0;
    const lineAt = async (seq: number) => (await lines.get([rec, seq]))?.line;

    let stored = 0;
    let diverged: Diverged | null = null;
    for (const entry of unsaved.filter(({ seq }) => seq <= headSeq)) {
      if ((await lineAt(entry.seq)) !== entry.line) {
        diverged = { kind: 'fork', seq: entry.seq };
        break;
      }
      stored += 1;
    }
    const endSeq = savedSeq + stored;
    if (headSeq > endSeq) {
      diverged ??= { kind: 'fork', seq: endSeq + 1 };
    }
    const savedLine = await lineAt(savedSeq);
    if (headSeq < endSeq || (from !== null && savedLine === undefined)) {
      const upTo = IDBKeyRange.bound([rec, 1], [rec, savedSeq]);
      diverged = { kind: 'missing', expectedSeq: savedSeq, foundSeq: await lines.count(upTo) };
    } else if (savedLine !== undefined && hashLine(savedLine) !== from?.id) {
      diverged = { kind: 'fork', seq: savedSeq };
    }
    return { stored, diverged };
  });
}
