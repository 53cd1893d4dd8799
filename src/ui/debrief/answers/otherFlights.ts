import { useEffect, useState } from 'react';
import type { Shelf } from '../../../journal/journal.ts';
import { viewOf, type FlightView } from '../../../record/flight.ts';

const NONE: readonly FlightView[] = [];

/**
 * Other flights of the same aircraft on this device; read, never written to and never mixed into this one.
 *
 * @param wanted whether a page that looks across flights is open; until then nothing is read
 */
export function useOtherFlights(
  shelf: Shelf,
  { state }: FlightView,
  wanted: boolean,
): readonly FlightView[] {
  const [others, setOthers] = useState(NONE);
  const { flight, nature } = state;
  const mark = state.sheet?.aircraft.mark ?? null;
  useEffect(() => {
    if (!wanted) return;
    let over = false;
    viewsBeside(shelf, { flight, mark, nature }).then(
      (views) => (over ? undefined : setOthers(views)),
      // What cannot be read is not there; this flight stands by itself.
      () => (over ? undefined : setOthers(NONE)),
    );
    return () => {
      over = true;
    };
  }, [shelf, flight, mark, nature, wanted]);
  return others;
}

/** An invented flight never stands beside a real one. */
async function viewsBeside(
  shelf: Shelf,
  of: { readonly flight: string | null; readonly mark: string | null; readonly nature: string },
): Promise<readonly FlightView[]> {
  const known = await shelf.flights();
  const wanted = known.filter(
    ({ flight, mark, nature }) => flight !== of.flight && mark === of.mark && nature === of.nature,
  );
  return Promise.all(wanted.map(async ({ flight }) => viewOf(await shelf.entriesOf(flight))));
}

/** Those that were opened before this one: they tell what is chronic in it. */
export function earlierThan(
  view: FlightView,
  others: readonly FlightView[],
): readonly FlightView[] {
  const openedAt = ({ state }: FlightView): number => state.openedAt ?? Number.POSITIVE_INFINITY;
  return others.filter((other) => openedAt(other) < openedAt(view));
}
