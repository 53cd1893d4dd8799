import type { EntryId } from './brand.ts';
import type { Entry } from './entry.ts';

/** Order of writing: what the timeline file is sorted by and which of two amendments comes later. Never 0 for two entries. */
export function compareEntries(a: Entry, b: Entry): number {
  return a.ord - b.ord || compareText(a.rec, b.rec) || a.seq - b.seq || compareText(a.id, b.id);
}

/** Both logs as one: the set union by id, in order of writing. Who merges first makes no difference. */
export function union(a: readonly Entry[], b: readonly Entry[]): readonly Entry[] {
  const byId = new Map<EntryId, Entry>();
  for (const entry of a) {
    byId.set(entry.id, entry);
  }
  for (const entry of b) {
    byId.set(entry.id, entry);
  }
  return [...byId.values()].sort(compareEntries);
}

function compareText(a: string, b: string): number {
  if (a === b) {
    return 0;
  }
  return a < b ? -1 : 1;
}
