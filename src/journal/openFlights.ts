import type { FlightId } from '../record/brand.ts';
import type { Canary } from './canary.ts';
import { share } from './locks.ts';
import type { JournalPorts } from './ports.ts';

/** Which flights flown here are open in this page: while there is one, no new release installs itself. */
export interface OpenFlights {
  readonly set: (flight: FlightId, open: boolean) => void;
  readonly pageLeft: () => void;
  readonly pageShown: () => void;
}

export function openFlights(locks: JournalPorts['locks'], canary: Canary): OpenFlights {
  const held = new Map<FlightId, () => void>();
  return {
    set: (flight, open) => {
      const letGo = held.get(flight);
      if (open && letGo === undefined) {
        held.set(flight, share(locks, 'kneeline-flight-open'));
        canary.noteFlightOpen(true);
      } else if (!open && letGo !== undefined) {
        letGo();
        held.delete(flight);
        if (held.size === 0) {
          canary.noteFlightOpen(false);
        }
      }
    },
    pageLeft: () => canary.noteFlightOpen(false),
    pageShown: () => {
      if (held.size > 0) {
        canary.noteFlightOpen(true);
      }
    },
  };
}
