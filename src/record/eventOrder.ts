import type { EpochMs } from './brand.ts';
import type { StandingEntry } from './flightState.ts';
import { compareEntries } from './merge.ts';
import type { Standing } from './standing.ts';
import { itemAt, items, type Trail } from './trail.ts';

/** Order of event time; order of writing decides between entries of one instant. Never 0 for two entries. */
export function comparePlaced(a: StandingEntry, b: StandingEntry): number {
  return a.at - b.at || compareEntries(a.entry, b.entry);
}

/** Place of the first entry that is not before `wanted`: its own place if it is there. */
export function placeIn(timeline: Trail<StandingEntry>, wanted: StandingEntry): number {
  let low = 0;
  let high = timeline.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    const found = itemAt(timeline, middle);
    if (found !== undefined && comparePlaced(found, wanted) < 0) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low;
}

/** Place of the entry, also in an older timeline where it stood elsewhere; `null` when it is not there. */
export function placeOf(timeline: Trail<StandingEntry>, wanted: StandingEntry): number | null {
  const place = placeIn(timeline, wanted);
  if (itemAt(timeline, place)?.entry.id === wanted.entry.id) {
    return place;
  }
  let index = 0;
  for (const standing of items(timeline)) {
    if (standing.entry.id === wanted.entry.id) {
      return index;
    }
    index += 1;
  }
  return null;
}

export function standingEntry(own: Standing, at: EpochMs, ownAt: EpochMs): StandingEntry {
  const { effective } = own;
  const late =
    effective.kind !== 'unrecognised' &&
    (effective.body.basis === 'late' ||
      (effective.body.at !== undefined && effective.body.at < own.entry.wall));
  return { ...own, at, ownAt, late };
}

/** Whether two judgements of one entry say the same. The same amendments in the same order make the same entry. */
export function isSameStanding(a: StandingEntry, b: StandingEntry): boolean {
  return (
    a.at === b.at &&
    a.ownAt === b.ownAt &&
    a.standing === b.standing &&
    a.withdrawnBy === b.withdrawnBy &&
    isSameList(a.amendedBy, b.amendedBy) &&
    isSameList(a.conflicts, b.conflicts) &&
    isSameList(a.unapplied, b.unapplied)
  );
}

function isSameList(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((item, index) => item === b[index]);
}
