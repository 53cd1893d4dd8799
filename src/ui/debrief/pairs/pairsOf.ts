import { observationPairs, type ObservationPair } from '../../../analysis/observationPairs.ts';
import type { EntryId } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';

const byView = new WeakMap<FlightView, readonly ObservationPair[]>();

/** The pairs of a view, looked for once. */
export function pairsOf(view: FlightView): readonly ObservationPair[] {
  const known = byView.get(view) ?? observationPairs(view);
  byView.set(view, known);
  return known;
}

export function pairsWith(view: FlightView, entry: EntryId): readonly ObservationPair[] {
  return pairsOf(view).filter(({ first, second }) =>
    [first, second].some((one) => one.entry.id === entry),
  );
}
