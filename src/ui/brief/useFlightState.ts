import { useEffect, useState } from 'react';
import type { Shelf } from '../../journal/journal.ts';
import { flightId } from '../../record/brand.ts';
import { viewOf } from '../../record/flight.ts';
import type { FlightState } from '../../record/flightState.ts';

/** What a flight of the shelf came to; null while it is read, `absent` where it cannot be. */
export function useFlightState(shelf: Shelf, flight: string): FlightState | 'absent' | null {
  const [state, setState] = useState<FlightState | 'absent' | null>(null);
  useEffect(() => {
    let wanted = true;
    shelf
      .journalOf(flightId(flight))
      .then((journal) => viewOf(journal.entries()).state)
      .then(
        (found) => wanted && setState(found),
        () => wanted && setState('absent'),
      );
    return () => {
      wanted = false;
    };
  }, [shelf, flight]);
  return state;
}
