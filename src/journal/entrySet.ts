import type { EntryId, RecorderId } from '../record/brand.ts';
import type { Entry } from '../record/entry.ts';
import { compareEntries, union } from '../record/merge.ts';

/** As many as one write brings are put in their places; more, as a file brings, are sorted together. */
const FEW = 64;

/** The entries of a flight in memory, sorted, each once. */
export interface EntrySet {
  /** Those that were not known, in the order given. */
  readonly add: (entries: readonly Entry[]) => readonly Entry[];
  readonly byId: (id: EntryId) => Entry | undefined;
  readonly size: () => number;
  /** The same array until something is added. */
  readonly sorted: () => readonly Entry[];
  /** Numbers 1 to n of a recorder that are there without a gap. */
  readonly unbroken: (rec: RecorderId) => number;
}

export function entrySet(): EntrySet {
  const known = new Map<EntryId, Entry>();
  let sorted: Entry[] = [];
  let shown: readonly Entry[] | null = null;

  /** Nearly every entry belongs at the end; a late clock or another recorder puts one a few places before it. */
  function insert(entry: Entry) {
    let at = sorted.length;
    for (
      let before = sorted[at - 1];
      before !== undefined && compareEntries(before, entry) > 0;
      before = sorted[at - 1]
    ) {
      at -= 1;
    }
    sorted.splice(at, 0, entry);
  }

  return {
    add: (entries) => {
      const added = entries.filter((entry) => {
        const isNew = !known.has(entry.id);
        known.set(entry.id, known.get(entry.id) ?? entry);
        return isNew;
      });
      if (added.length > 0) {
        shown = null;
      }
      if (added.length <= FEW) {
        added.forEach(insert);
      } else {
        sorted = [...union(sorted, added)];
      }
      return added;
    },
    byId: (id) => known.get(id),
    size: () => known.size,
    sorted: () => {
      // A copy of references, made when somebody looks: microseconds, where sorting anew would take the flight's length.
      shown ??= sorted.slice();
      return shown;
    },
    unbroken: (rec) => {
      const numbers = new Set(
        sorted.filter((entry) => entry.rec === rec).map((entry) => entry.seq),
      );
      let count = 0;
      while (numbers.has(count + 1)) {
        count += 1;
      }
      return count;
    },
  };
}
