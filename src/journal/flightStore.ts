import { unwrap } from 'idb';
import type { FlightId } from '../record/brand.ts';
import type { Entry } from '../record/entry.ts';
import { parseEntry } from '../record/parse.ts';
import type { Canary, Mark } from './canary.ts';
import type { Database, FlightRow, ForeignLine, Head } from './database.ts';
import { entrySet, type EntrySet } from './entrySet.ts';
import type { Diverged } from './writer.ts';

type Remembered = Pick<Mark, 'rec' | 'seq' | 'headHash'>;

/** A flight as the disk has it. */
export interface StoredFlight {
  readonly row: FlightRow | null;
  readonly entries: EntrySet;
  /** End of the chain that this tablet writes on; null when there is none, or none that may be written on. */
  readonly head: Head | null;
  /** Where this tablet remembers that chains reached. */
  readonly remembered: readonly Remembered[];
  /** The log is not what this tablet remembers. */
  readonly diverged: Diverged | null;
}

/** Reads a flight whole. Lines that cannot be read count as missing: they are never dropped silently. */
export async function loadFlight(
  database: Database,
  canary: Canary,
  flight: FlightId,
): Promise<StoredFlight> {
  const { row, heads, own, foreign } = await database.read(
    ['flights', 'heads', 'lines', 'foreign'],
    async (tx) => {
      const flightRow = await tx.objectStore('flights').get(flight);
      const ownHeads = (await tx.objectStore('heads').getAll()).filter(
        (head) => head.flight === flight,
      );
      const ownLines: (readonly { readonly line: string }[])[] = [];
      for (const head of ownHeads) {
        const range = IDBKeyRange.bound([head.rec, 0], [head.rec, Infinity]);
        ownLines.push(await tx.objectStore('lines').getAll(range));
      }
      return {
        row: flightRow ?? null,
        heads: ownHeads,
        own: ownLines.flat(),
        foreign: await tx.objectStore('foreign').index('flight').getAll(flight),
      };
    },
  );
  const entries = entrySet();
  entries.add(
    [...own, ...foreign].flatMap(({ line }) => {
      const read = parseEntry(line);
      return read.ok ? [read.value] : [];
    }),
  );
  const remembered = [
    ...heads.map(({ rec, seq, id }) => ({ rec, seq, headHash: id })),
    ...canary.marks().filter((mark) => mark.flight === flight),
  ];
  const head = heads.find(({ rec }) => rec === row?.recorder) ?? null;
  const ofHead = remembered.filter(({ rec }) => rec === head?.rec);
  const mayGoOn =
    divergence(entries, ofHead) === null && ofHead.every(({ seq }) => seq <= (head?.seq ?? 0));
  return {
    row,
    entries,
    remembered,
    head: mayGoOn ? head : null,
    diverged: divergence(entries, remembered) ?? unreadable(entries, foreign),
  };
}

function unreadable(entries: EntrySet, foreign: readonly ForeignLine[]): Diverged | null {
  const lost = foreign.filter(({ id }) => entries.byId(id) === undefined).length;
  return lost > 0
    ? { kind: 'missing', expectedSeq: foreign.length, foundSeq: foreign.length - lost }
    : null;
}

/** Whether every chain reaches what is remembered of it, be it by a copy taken in. */
export function divergence(entries: EntrySet, remembered: readonly Remembered[]): Diverged | null {
  for (const { rec, seq, headHash } of remembered) {
    const foundSeq = entries.unbroken(rec);
    if (foundSeq < seq) {
      return { kind: 'missing', expectedSeq: seq, foundSeq };
    }
    if (entries.byId(headHash) === undefined) {
      return { kind: 'fork', seq };
    }
  }
  return null;
}

/**
 * Keeps entries of other recorders: one transaction, all or nothing, own lines untouched.
 *
 * @param rowOf the flight's new summary, worked out while nobody else can write it
 */
export function storeForeign(
  database: Database,
  flight: FlightId,
  entries: readonly Entry[],
  rowOf: () => FlightRow,
): Promise<void> {
  return database.write(['flights', 'foreign'], async (tx) => {
    const foreign = tx.objectStore('foreign');
    const flights = tx.objectStore('flights');
    const kept = new Set(await foreign.index('flight').getAllKeys(flight));
    const before = await flights.get(flight);
    const row = rowOf();
    // No promise for each of what may be a hundred thousand: the transaction judges them all.
    const adding = unwrap(foreign);
    for (const { id, line } of entries) {
      if (!kept.has(id)) {
        adding.add({ id, flight, line });
      }
    }
    // Another window may have begun a recorder since: the summary changes, whose pen it is does not.
    await flights.put({ ...row, recorder: before?.recorder ?? row.recorder });
  });
}
