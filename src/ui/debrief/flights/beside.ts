import type { FlightView } from '../../../record/flight.ts';
import type { FlightInFiles } from './readFlights.ts';

/** A flight of the comparison and where its record lies. */
export interface FlightBeside {
  readonly view: FlightView;
  readonly from: string;
}

export interface Comparable {
  /** In the order in which they were opened. */
  readonly flights: readonly FlightBeside[];
  /** A sentence for each flight that is not compared. */
  readonly leftOut: readonly string[];
}

/**
 * This flight, those of this device, and those in files. A flight stands once: as this device has it, where it has it.
 * Another aircraft, or an invented flight beside a real one, is left out and named.
 */
export function comparable(
  own: FlightView,
  onDevice: readonly FlightView[],
  inFiles: readonly FlightInFiles[],
): Comparable {
  const flights: FlightBeside[] = [own, ...onDevice].map((view) => ({ view, from: 'this device' }));
  const leftOut: string[] = [];
  for (const { flight, files, view } of inFiles) {
    const name = `${titleOf(view)} (${files.join(', ')})`;
    if (flights.some((one) => one.view.state.flight === flight)) {
      leftOut.push(`${name}: on this device already, and shown as it stands here.`);
    } else if (view.state.sheet?.aircraft.mark !== own.state.sheet?.aircraft.mark) {
      leftOut.push(`${name}: another aircraft.`);
    } else if (view.state.nature !== own.state.nature) {
      leftOut.push(
        `${name}: ${NATURES[view.state.nature]}, and this is ${NATURES[own.state.nature]}.`,
      );
    } else {
      flights.push({ view, from: files.join(', ') });
    }
  }
  return {
    flights: flights.toSorted(
      (a, b) => (a.view.state.openedAt ?? 0) - (b.view.state.openedAt ?? 0),
    ),
    leftOut,
  };
}

const NATURES = { flight: 'a flight', practice: 'practice', demo: 'a demonstration' } as const;

export function titleOf({ state }: FlightView): string {
  return state.title === '' ? 'Untitled flight' : state.title;
}
