import type { FlightResults, PointOfFlight } from '../flightResults.ts';
import type { ReductionFigure } from '../results.ts';
import { percent, type CellsOf, type ResultTable } from './table.ts';

type Row = ResultTable['rows'][number];

/** Every run, one a row: its number with interval, or the reason for none. */
export function pointsTable(points: readonly PointOfFlight[], cells: CellsOf): ResultTable {
  const { flowUnit, massUnit } = cells;
  return {
    name: 'points',
    header: [
      'point',
      'run',
      'title',
      'setting',
      'suction',
      'state',
      'started_base_utc',
      'ended_base_utc',
      'readings_used',
      'readings_left_out',
      'left_out_because',
      'kind',
      'no_number_because',
      'gates_broken',
      'provisional',
      `flow_at_card_${flowUnit}`,
      `weight_at_card_${massUnit}`,
      `baseline_at_that_weight_${flowUnit}`,
      'fuel_reduction_pct',
      'fuel_reduction_standard_uncertainty_pct',
      'fuel_reduction_low95_pct',
      'fuel_reduction_high95_pct',
      'drag_reduction_pct',
      'drag_reduction_low95_pct',
      'drag_reduction_high95_pct',
      'no_drag_because',
      `gross_${flowUnit}`,
      `suction_${flowUnit}`,
      `net_${flowUnit}`,
      'net_reduction_pct',
      'baseline_method',
      'baseline_runs',
      'entries',
    ],
    rows: points.map((point) => rowOf(point, cells)),
  };
}

function rowOf(point: PointOfFlight, cells: CellsOf): Row {
  const { entries, result } = point;
  const used = point.readingsUsed.flatMap((reading) => reading.entries);
  return [
    point.point,
    point.run,
    point.title,
    point.setting,
    point.suction,
    point.state,
    cells.time(point.startedAt, entries[0]),
    cells.time(point.endedAt, entries[1]),
    point.readingsUsed.length,
    point.readingsLeftOut.length,
    [...new Set(point.readingsLeftOut.flatMap(({ broken }) => broken))].join(' '),
    result.kind,
    ...numbersOf(result, cells),
    cells.entries([...entries, ...used, ...('madeOf' in result ? result.madeOf.entries : [])]),
  ];
}

const NO_REDUCTION = Array.from({ length: 15 }, () => null);

function numbersOf(result: PointOfFlight['result'], cells: CellsOf): Row {
  switch (result.kind) {
    case 'none':
      return [result.because, null, null, null, null, ...NO_REDUCTION];
    case 'baseline':
      return [
        null,
        null,
        null,
        cells.flow(result.flowAtCardKgPerS),
        cells.weight(result.weightAtCardN),
        ...NO_REDUCTION,
      ];
    case 'valid':
    case 'indicative': {
      const { fuel, drag, madeOf } = result;
      return [
        null,
        result.broken.join(' '),
        result.provisional.join(' '),
        cells.flow(madeOf.flowAtCardKgPerS),
        cells.weight(madeOf.weightAtCardN),
        cells.flow(madeOf.baselineAtThatWeightKgPerS),
        percent(fuel.fraction),
        percent(fuel.standardUncertainty),
        ...intervalCells(fuel),
        ...('because' in drag
          ? [null, null, null, drag.because]
          : [percent(drag.fraction), ...intervalCells(drag), null]),
        cells.flow(result.grossKgPerS),
        cells.flow(result.suctionUnitKgPerS),
        cells.flow(result.netKgPerS),
        percent(result.netFraction),
        madeOf.method,
        madeOf.baselineRuns.join(' '),
      ];
    }
  }
}

function intervalCells({ interval95 }: ReductionFigure): readonly (number | null)[] {
  return [percent(interval95.low), percent(interval95.high)];
}

/** Settings against the first finished point, on the flow saved and on per cent. */
export function comparisonsTable(
  rows: FlightResults['comparisons'],
  { flow, flowUnit }: CellsOf,
): ResultTable {
  return {
    name: 'comparisons',
    header: [
      'point',
      'run',
      'against_point',
      'against_run',
      `flow_saved_difference_${flowUnit}`,
      `flow_saved_difference_two_u_${flowUnit}`,
      'flow_saved_differs',
      'reduction_difference_pct',
      'reduction_difference_two_u_pct',
      'reduction_differs',
    ],
    rows: rows.map((one) => [
      one.point,
      one.run,
      one.against.point,
      one.against.run,
      flow(one.savedDifferenceKgPerS),
      flow(one.savedTwoUKgPerS),
      String(one.savingDiffers),
      percent(one.differenceFraction),
      percent(one.twoUFraction),
      String(one.fractionDiffers),
    ]),
  };
}
