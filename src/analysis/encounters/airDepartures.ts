import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';
import { sampleOf, type AirField } from '../reading/looks.ts';
import { sheetTerms, type SheetTerms } from '../reading/sheetTerms.ts';

/** One look at the air data, held against what the cards allow. In SI. */
export interface AirLook {
  readonly at: EpochMs;
  readonly by: readonly EntryId[];
  readonly field: AirField;
  readonly departure: number;
  readonly tolerance: number;
}

/** Every look of the flight at Mach, height and their rates; none where the card's condition cannot be read. */
export function airLooks(state: FlightState, sheet: FlightSheet): readonly AirLook[] {
  const terms = sheetTerms(sheet);
  if (terms === null) return [];
  const bounds = boundsOf(terms);
  return [...items(state.glances)].flatMap((glance) =>
    bounds.flatMap(({ field, wanted, tolerance }) => {
      const sample = sampleOf(sheet, glance, field);
      if (sample === null) return [];
      return [{ at: glance.at, by: glance.by, field, departure: sample.value - wanted, tolerance }];
    }),
  );
}

export function isOutOfTolerance({ departure, tolerance }: AirLook): boolean {
  // Displays such as 0.725 less 0.720 carry rounding of their own; at the limit is inside it.
  return Math.abs(departure) > tolerance * (1 + 1e-9) + 1e-12;
}

function boundsOf({ cardMach, cardAir, tolerances }: SheetTerms): readonly {
  readonly field: AirField;
  readonly wanted: number;
  readonly tolerance: number;
}[] {
  return [
    { field: 'mach', wanted: cardMach, tolerance: tolerances.mach },
    {
      field: 'pressureAltitude',
      wanted: cardAir.pressureAltitudeM,
      tolerance: tolerances.altitudeM,
    },
    { field: 'machRate', wanted: 0, tolerance: tolerances.machRatePerS },
    { field: 'altitudeRate', wanted: 0, tolerance: tolerances.climbMPerS },
  ];
}
