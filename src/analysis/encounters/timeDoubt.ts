import type { FlightView } from '../../record/flight.ts';
import type { StandingEntry, Timed } from '../../record/flightState.ts';
import type { FlightSheet } from '../../record/sheet.ts';

/** One standard uncertainty of an event's time, in seconds: as written, else the flight sheet's for such an entry. */
export function timeDoubtS(view: FlightView, sheet: FlightSheet, timed: Timed): number {
  if (timed.doubtS !== null) return timed.doubtS;
  const standing = view.byId(timed.by);
  return standing === undefined ? sheet.timeDoubts.touchS : usualDoubtS(sheet, standing);
}

function usualDoubtS({ timeDoubts }: FlightSheet, { late, effective }: StandingEntry): number {
  if (late) return timeDoubts.lateS;
  switch (effective.kind) {
    case 'fuelRead':
    case 'airDataRead':
    case 'fuelStateRead':
    case 'probesRead':
    case 'rakeRead':
      return timeDoubts.readingS;
    default:
      return timeDoubts.touchS;
  }
}
