import type { EntryId } from './brand.ts';
import { type FlightView, viewOf } from './flight.ts';
import { compareEntries } from './merge.ts';
import { items } from './trail.ts';

/**
 * The flight as it was known when this entry was written: nothing written after it has a say, whatever time it speaks of.
 * An old result is this view asked again, so a new calibration or a correction never loses what was said before it.
 *
 * @returns null when the flight has no such entry
 */
export function viewAsOf(view: FlightView, id: EntryId): FlightView | null {
  const entries = [...items(view.timeline)].map(({ entry }) => entry);
  const last = entries.find((entry) => entry.id === id);
  if (last === undefined) {
    return null;
  }
  return viewOf(entries.filter((entry) => compareEntries(entry, last) <= 0));
}
