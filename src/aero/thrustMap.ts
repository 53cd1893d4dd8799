import {
  ready,
  requireFinite,
  requireNotNegative,
  requirePositive,
  unavailable,
  type Outcome,
} from './outcome.ts';

/*
 * Fuel flow against thrust at one Mach number and height on a standard day, as a straight line or as the
 * rows of a table with straight lines between. A table answers only between its own ends. A map belongs
 * to one aircraft or to one engine; none is built in.
 */
export type ThrustMap = ThrustLine | ThrustTable;

export interface ThrustLine {
  readonly kind: 'line';
  /** Flow at no thrust. */
  readonly idleKgPerS: number;
  readonly slopeKgPerSPerN: number;
}

export interface ThrustRow {
  readonly thrustN: number;
  readonly fuelFlowKgPerS: number;
}

/** Made by `thrustTable`: two rows or more, thrust and flow both rising. */
export interface ThrustTable {
  readonly kind: 'table';
  readonly rows: readonly ThrustRow[];
}

/**
 * A table from rows in any order.
 *
 * @returns `rowNotPhysical` for a thrust or flow that is negative or no number, `notRising` where more
 *   thrust would burn no more fuel or a thrust is there twice: then a flow would have no one thrust
 */
export function thrustTable(
  rows: readonly ThrustRow[],
): Outcome<ThrustTable, 'tooFewRows' | 'rowNotPhysical' | 'notRising'> {
  if (rows.length < 2) return unavailable('tooFewRows');
  if (!rows.every(({ thrustN, fuelFlowKgPerS }) => [thrustN, fuelFlowKgPerS].every(isPhysical))) {
    return unavailable('rowNotPhysical');
  }
  const sorted = rows.toSorted((a, b) => a.thrustN - b.thrustN);
  const rises = segmentsOf(sorted).every(
    ({ low, high }) => high.thrustN > low.thrustN && high.fuelFlowKgPerS > low.fuelFlowKgPerS,
  );
  return rises ? ready({ kind: 'table', rows: sorted }) : unavailable('notRising');
}

/** Fuel flow of a thrust. @returns `outsideMap` beyond the rows of a table, or below no thrust */
export function fuelFlowOfThrust(map: ThrustMap, thrustN: number): Outcome<number, 'outsideMap'> {
  requireFinite('thrust', thrustN);
  const segment = segmentWhere(map, ({ low, high }) => within(thrustN, low.thrustN, high.thrustN));
  if (segment === undefined) return unavailable('outsideMap');
  return ready(segment.low.fuelFlowKgPerS + segment.slope * (thrustN - segment.low.thrustN));
}

/** Thrust of a fuel flow. @returns `outsideMap` beyond the rows of a table, or below idle */
export function thrustOfFuelFlow(
  map: ThrustMap,
  fuelFlowKgPerS: number,
): Outcome<number, 'outsideMap'> {
  const segment = segmentAtFlow(map, fuelFlowKgPerS);
  return segment === undefined
    ? unavailable('outsideMap')
    : ready(thrustIn(segment, fuelFlowKgPerS));
}

/**
 * Fuel a newton more thrust costs at a flow, kg/s per N; at a row of a table, on the line above it.
 *
 * @returns `outsideMap` as above
 */
export function slopeAtFuelFlow(
  map: ThrustMap,
  fuelFlowKgPerS: number,
): Outcome<number, 'outsideMap'> {
  const segment = segmentAtFlow(map, fuelFlowKgPerS);
  return segment === undefined ? unavailable('outsideMap') : ready(segment.slope);
}

/** A drag reduction read off a map, and how it moves with all that it came from. */
export interface MapDragReduction {
  /** 1 − T(F)/T(Fb); may be negative. */
  readonly dragReductionFraction: number;
  /** ∂/∂F and ∂/∂Fb, s/kg. */
  readonly perFuelFlow: number;
  readonly perBaselineFuelFlow: number;
  /** ∂/∂ of an error that lifts every flow of the map alike, as a doubt of idle does, s/kg. */
  readonly perMapFlow: number;
  /** ∂/∂ of the flow of each row alone, s/kg; their sum is `perMapFlow`. A line has none. */
  readonly perRowFlow: readonly number[];
}

/**
 * Share of drag removed, the thrusts of two level, unaccelerated flows compared.
 *
 * @param map of the whole aircraft, at the condition of both flows
 * @returns `outsideMap` or `baselineOutsideMap` where a flow lies beyond the map, or the baseline at no thrust
 */
export function dragReductionOnMap({
  map,
  fuelFlowKgPerS,
  baselineFuelFlowKgPerS,
}: {
  readonly map: ThrustMap;
  readonly fuelFlowKgPerS: number;
  readonly baselineFuelFlowKgPerS: number;
}): Outcome<MapDragReduction, 'outsideMap' | 'baselineOutsideMap'> {
  const base = segmentAtFlow(map, baselineFuelFlowKgPerS);
  if (base === undefined) return unavailable('baselineOutsideMap');
  const baseThrustN = thrustIn(base, baselineFuelFlowKgPerS);
  if (!(baseThrustN > 0)) return unavailable('baselineOutsideMap');
  const own = segmentAtFlow(map, fuelFlowKgPerS);
  if (own === undefined) return unavailable('outsideMap');
  const left = thrustIn(own, fuelFlowKgPerS) / baseThrustN;
  // A flow too high by the map's error is a thrust too low: each error of the map counts against its flow.
  const perFuelFlow = -1 / (own.slope * baseThrustN);
  const perBaselineFuelFlow = left / (base.slope * baseThrustN);
  const rowCount = map.kind === 'table' ? map.rows.length : 0;
  return ready({
    dragReductionFraction: 1 - left,
    perFuelFlow,
    perBaselineFuelFlow,
    perMapFlow: -perFuelFlow - perBaselineFuelFlow,
    perRowFlow: Array.from(
      { length: rowCount },
      (_, row) =>
        -perFuelFlow * shareOfRow(own, row, fuelFlowKgPerS) -
        perBaselineFuelFlow * shareOfRow(base, row, baselineFuelFlowKgPerS),
    ),
  });
}

/** A straight piece of a map, and the position of its lower row. */
interface Segment {
  readonly row: number;
  readonly low: ThrustRow;
  readonly high: ThrustRow;
  readonly slope: number;
}

function segmentsOf(rows: readonly ThrustRow[]): readonly Segment[] {
  return rows.slice(1).flatMap((high, row) => {
    const low = rows[row];
    if (low === undefined) return [];
    const slope = (high.fuelFlowKgPerS - low.fuelFlowKgPerS) / (high.thrustN - low.thrustN);
    return [{ row, low, high, slope }];
  });
}

function segmentWhere(map: ThrustMap, holds: (segment: Segment) => boolean): Segment | undefined {
  // The last that holds: at a row the line above it, at the last row the line below.
  if (map.kind === 'table') return segmentsOf(map.rows).findLast(holds);
  requireLine(map);
  const low = { thrustN: 0, fuelFlowKgPerS: map.idleKgPerS };
  const high = { thrustN: Infinity, fuelFlowKgPerS: Infinity };
  const line = { row: 0, low, high, slope: map.slopeKgPerSPerN };
  return holds(line) ? line : undefined;
}

function segmentAtFlow(map: ThrustMap, fuelFlowKgPerS: number): Segment | undefined {
  requirePositive('fuel flow', fuelFlowKgPerS);
  return segmentWhere(map, ({ low, high }) =>
    within(fuelFlowKgPerS, low.fuelFlowKgPerS, high.fuelFlowKgPerS),
  );
}

function thrustIn({ low, slope }: Segment, fuelFlowKgPerS: number): number {
  return low.thrustN + (fuelFlowKgPerS - low.fuelFlowKgPerS) / slope;
}

/** How much of an error of a row's flow is an error of the map at this flow. */
function shareOfRow(segment: Segment, row: number, fuelFlowKgPerS: number): number {
  const { low, high } = segment;
  const upper = (fuelFlowKgPerS - low.fuelFlowKgPerS) / (high.fuelFlowKgPerS - low.fuelFlowKgPerS);
  if (row === segment.row) return 1 - upper;
  return row === segment.row + 1 ? upper : 0;
}

function requireLine({ idleKgPerS, slopeKgPerSPerN }: ThrustLine): void {
  requireNotNegative('idle flow', idleKgPerS);
  requirePositive('slope', slopeKgPerSPerN);
}

function within(value: number, low: number, high: number): boolean {
  return value >= low && value <= high;
}

function isPhysical(value: number): boolean {
  return Number.isFinite(value) && value >= 0;
}
