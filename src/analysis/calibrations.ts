import type { EntryId } from '../record/brand.ts';
import type { FlightState } from '../record/flightState.ts';
import type { Instrument, Quantity } from '../record/sheet.ts';
import type { Provisional } from './results.ts';

/** What the calibrations behind a reduction rest on, and what is doubtful about them. */
export interface CalibrationsUsed {
  /** Entries that gave a calibration in force; the flight sheet's own need no naming. */
  readonly entries: readonly EntryId[];
  readonly provisional: readonly Provisional[];
}

/** Readings of these enter a reduction. */
const REDUCED: ReadonlySet<Quantity> = new Set([
  'fuelFlow',
  'suctionFuelFlow',
  'fuelUsed',
  'mach',
  'pressureAltitude',
  'staticAirTemp',
  'totalAirTemp',
  'machRate',
  'altitudeRate',
]);

/**
 * One rule for every result: the newest word on an instrument that stands is in force for the whole flight
 * (`record/fold/calibrations.ts`). Out of date on the day of the flight, or taken after it, a number stands and says so.
 *
 * @param flows gauges that the flow is summed from; one whose calibration leaves no doubt stated narrows the interval
 */
export function calibrationsUsed(
  { sheet, calibrations, calibrationsInDate, date }: FlightState,
  flows: readonly Instrument[],
): CalibrationsUsed {
  const used = sheet?.instruments.filter(({ quantity }) => REDUCED.has(quantity)) ?? [];
  const saidLate = calibrationsInDate !== null && !calibrationsInDate.inDate;
  const pastDue = used.some(({ calibration: { dueOn } }) => before(dueOn, date));
  const takenAfter = used.some(
    ({ id, calibration }) =>
      calibrations[id] !== undefined && before(date ?? undefined, calibration.calibratedOn ?? null),
  );
  const noDoubt = flows.some(
    ({ calibration }) => calibration.residualStandardUncertainty === undefined,
  );
  const provisional: readonly (readonly [boolean, Provisional])[] = [
    [saidLate || pastDue, 'calibrationPastDue'],
    [takenAfter, 'calibratedAfterFlight'],
    [noDoubt, 'noCalibrationDoubt'],
  ];
  return {
    entries: [
      ...used.flatMap(({ id }) => calibrations[id]?.by ?? []),
      ...(saidLate ? [calibrationsInDate.by] : []),
    ],
    provisional: provisional.flatMap(([holds, name]) => (holds ? [name] : [])),
  };
}

/** YYYY-MM-DD compares as text; a date that nobody gave is before nothing. */
function before(earlier: string | undefined, later: string | null): boolean {
  return earlier !== undefined && later !== null && earlier < later;
}
