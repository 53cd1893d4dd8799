import type { EntryId } from '../../record/brand.ts';
import type { Entry } from '../../record/entry.ts';
import type { FlightView } from '../../record/flight.ts';
import type { StandingEntry } from '../../record/flightState.ts';

const byView = new WeakMap<FlightView, ReadonlyMap<EntryId, readonly StandingEntry[]>>();

/** Entries that name this one: amendments, withdrawals, settlings, decisions and notes, in order of writing. */
export function entriesAbout(view: FlightView, target: EntryId): readonly StandingEntry[] {
  let index = byView.get(view);
  if (index === undefined) {
    index = indexOf(view);
    byView.set(view, index);
  }
  return index.get(target) ?? [];
}

function targetsOf(entry: Entry): readonly EntryId[] {
  if (entry.kind === 'unrecognised' || !('target' in entry.body)) {
    return [];
  }
  const { target } = entry.body;
  const others = entry.kind === 'observationsResolved' ? [entry.body.other] : [];
  return target === undefined ? [] : [...new Set([target, ...others])];
}

function indexOf(view: FlightView): ReadonlyMap<EntryId, readonly StandingEntry[]> {
  const found = new Map<EntryId, StandingEntry[]>();
  for (const standing of view.standing) {
    for (const target of targetsOf(standing.entry)) {
      const about = found.get(target) ?? [];
      about.push(standing);
      found.set(target, about);
    }
  }
  for (const about of found.values()) {
    about.sort((a, b) => a.entry.ord - b.entry.ord);
  }
  return found;
}
