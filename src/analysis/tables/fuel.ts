import type { FlightResults } from '../flightResults.ts';
import { FUEL_SOURCES } from '../fuel/balanceResults.ts';
import type { SuctionSpan } from '../fuel/spanResults.ts';
import { percent, remark, type CellsOf, type ResultTable } from './table.ts';

/** What the suction was worth over each stretch of it. */
export function spansTable(spans: readonly SuctionSpan[], cells: CellsOf): ResultTable {
  const { massUnit: unit, mass } = cells;
  return {
    name: 'suction-spans',
    header: [
      'from_base_utc',
      'to_base_utc',
      'wings',
      `turbulent_${unit}`,
      `counted_${unit}`,
      `gross_${unit}`,
      `gross_low95_${unit}`,
      `gross_high95_${unit}`,
      'gross_pct',
      `suction_${unit}`,
      'suction_by',
      `net_${unit}`,
      `net_low95_${unit}`,
      `net_high95_${unit}`,
      'net_pct',
      'remark',
      'entries',
    ],
    rows: spans.map(({ from, to, wings, saving }) => {
      const ids = saving.kind === 'answer' ? saving.how.entries : saving.entries;
      const value = saving.kind === 'answer' ? saving.value : null;
      return [
        cells.time(from, ids[0]),
        cells.time(to, ids[0]),
        wings.join(' '),
        mass(value?.turbulent.kg ?? null),
        mass(value?.countedKg ?? null),
        ...figureCells(value?.gross, mass),
        mass(value?.suctionKg ?? null),
        value?.suctionFrom ?? null,
        ...figureCells(value?.net, mass),
        remark(saving),
        cells.entries(ids),
      ];
    }),
  };
}

type Figure = Extract<SuctionSpan['saving'], { kind: 'answer' }>['value']['gross' | 'net'];

function figureCells(
  figure: Figure | undefined,
  mass: CellsOf['mass'],
): readonly (number | null)[] {
  if (figure === undefined || 'because' in figure) return [null, null, null, null];
  const { kg, interval95, fraction } = figure;
  return [mass(kg), mass(interval95.low), mass(interval95.high), percent(fraction)];
}

/** Fuel gone by each source; its comparisons stand on the page. */
export function fuelBooksTable(
  { used }: FlightResults['fuelBalance'],
  cells: CellsOf,
): ResultTable {
  const { massUnit: unit, mass } = cells;
  return {
    name: 'fuel-books',
    header: [
      'source',
      'from_base_utc',
      'to_base_utc',
      `gone_${unit}`,
      `gone_standard_uncertainty_${unit}`,
      'remark',
      'entries',
    ],
    rows: FUEL_SOURCES.map((source) => {
      const answer = used[source];
      const ids = answer.kind === 'answer' ? answer.how.entries : answer.entries;
      const value = answer.kind === 'answer' ? answer.value : null;
      return [
        source,
        cells.time(value?.from ?? null, ids[0]),
        cells.time(value?.to ?? null, ids[0]),
        mass(value?.kg ?? null),
        mass(value?.standardUncertaintyKg ?? null),
        remark(answer),
        cells.entries(ids),
      ];
    }),
  };
}

/** Each run's flow by the gauges beside the slope of the counters. */
export function flowsTable(
  { runs }: FlightResults['flowBesideCounters'],
  { flow, flowUnit, entries }: CellsOf,
): ResultTable {
  return {
    name: 'flow-beside-counters',
    header: [
      'point',
      'run',
      `gauges_${flowUnit}`,
      `counter_slope_${flowUnit}`,
      `difference_${flowUnit}`,
      `difference_standard_uncertainty_${flowUnit}`,
      'agrees',
      'used',
      'remark',
      'entries',
    ],
    rows: runs.map(({ point, run, flows }) => {
      const value = flows.kind === 'answer' ? flows.value : null;
      return [
        point,
        run,
        flow(value?.gaugesKgPerS ?? null),
        flow(value?.counterKgPerS ?? null),
        flow(value?.differenceKgPerS ?? null),
        flow(value?.differenceStandardUncertaintyKgPerS ?? null),
        value === null ? null : String(value.agrees),
        value?.used ?? null,
        remark(flows),
        entries(flows.kind === 'answer' ? flows.how.entries : flows.entries),
      ];
    }),
  };
}
