import type { Entry } from './entry.ts';

/** Order of writing: what the timeline file is sorted by and which of two amendments comes later. Never 0 for two entries. */
export function compareEntries(a: Entry, b: Entry): number {
  return a.ord - b.ord || compareText(a.rec, b.rec) || a.seq - b.seq || compareText(a.id, b.id);
}

/** Both logs as one: the set union by id, in order of writing. Who merges first makes no difference. */
export function union(a: readonly Entry[], b: readonly Entry[]): readonly Entry[] {
  const left = inOrder(a);
  const right = inOrder(b);
  const both: Entry[] = [];
  let at = 0;
  for (const entry of right) {
    for (
      let next = left[at];
      next !== undefined && compareEntries(next, entry) < 0;
      next = left[at]
    ) {
      both.push(next);
      at += 1;
    }
    if (left[at]?.id === entry.id) {
      at += 1;
    }
    both.push(entry);
  }
  for (; at < left.length; at += 1) {
    const rest = left[at];
    if (rest !== undefined) {
      both.push(rest);
    }
  }
  return both;
}

/** Each entry once, in order of writing. Logs come sorted nearly always, and then nothing is copied. */
function inOrder(entries: readonly Entry[]): readonly Entry[] {
  let last: Entry | undefined;
  for (const entry of entries) {
    if (last !== undefined && compareEntries(last, entry) >= 0) {
      return entries
        .toSorted(compareEntries)
        .filter((one, index, sorted) => index === 0 || one.id !== sorted[index - 1]?.id);
    }
    last = entry;
  }
  return entries;
}

function compareText(a: string, b: string): number {
  if (a === b) {
    return 0;
  }
  return a < b ? -1 : 1;
}
