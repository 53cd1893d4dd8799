import type { FlightView } from '../../record/flight.ts';
import type { FlightResults } from '../flightResults.ts';
import { encountersTable, lossesTable, samplesTable } from './encounters.ts';
import { flowsTable, fuelBooksTable, spansTable } from './fuel.ts';
import { comparisonsTable, pointsTable } from './points.ts';
import { probesTable } from './probes.ts';
import { cellsOf, type ResultTable } from './table.ts';

/** Every result of a flight that fits rows, each as a table. Names of reasons and gates stand as in the JSON. */
export function resultTables(view: FlightView, results: FlightResults): readonly ResultTable[] {
  const cells = cellsOf(view, results.clocks.fits);
  return [
    pointsTable(results.points, cells),
    comparisonsTable(results.comparisons, cells),
    spansTable(results.suctionSpans, cells),
    encountersTable(results.encounters, cells),
    lossesTable(results.losses, cells),
    samplesTable(results.samples, cells),
    probesTable(results.probeHistory, cells),
    fuelBooksTable(results.fuelBalance, cells),
    flowsTable(results.flowBesideCounters, cells),
  ];
}
