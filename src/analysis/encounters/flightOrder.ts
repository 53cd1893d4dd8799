import type { FlightView } from '../../record/flight.ts';

/** In the order in which the flights were opened, so that the order of asking changes nothing. */
export function byOpening(views: readonly FlightView[]): readonly FlightView[] {
  return views.toSorted(
    (a, b) =>
      (a.state.openedAt ?? 0) - (b.state.openedAt ?? 0) ||
      (a.state.flight ?? '').localeCompare(b.state.flight ?? ''),
  );
}
