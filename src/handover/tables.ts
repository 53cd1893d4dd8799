import { correctedInUnit } from '../analysis/correctedInUnit.ts';
import { masterTimeOf } from '../analysis/clocks.ts';
import type { FlightResults } from '../analysis/flightResults.ts';
import { resultTables } from '../analysis/tables/resultTables.ts';
import type { Table } from '../file/csv.ts';
import { kindTables } from '../file/kindTables.ts';
import { readingTables } from '../file/readingTables.ts';
import { entriesTable, readingsTable, type Meaning } from '../file/tables.ts';
import type { FlightView } from '../record/flight.ts';

/** Every table of a flight, by what it is for. */
export interface FlightTables {
  readonly entries: Table;
  /** Every reading in one table, the unit beside the value. */
  readonly readings: Table;
  readonly readingsByQuantity: readonly Table[];
  readonly kinds: readonly Table[];
  readonly results: readonly Table[];
}

export function flightTables(view: FlightView, results: FlightResults): FlightTables {
  const { standing, state } = view;
  const meaning: Meaning = {
    toBase: (at, rec) => masterTimeOf(results.clocks.fits, rec, at),
    corrected: (reading) => correctedInUnit(state.sheet, reading),
  };
  return {
    entries: entriesTable(standing, state.sheet, meaning),
    readings: readingsTable(standing, state.sheet, meaning),
    readingsByQuantity: readingTables(standing, state.sheet, meaning),
    kinds: kindTables(standing, meaning),
    results: resultTables(view, results),
  };
}
