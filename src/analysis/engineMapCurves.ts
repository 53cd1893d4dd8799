import type { FlightSheet } from '../record/sheet.ts';
import { instrumentsFor, measureDifferenceSi, measureSi } from './calibrate.ts';

/** An engine map as the flight sheet gives it, sound or not, for an eye to judge. */
export interface EngineMapCurve {
  readonly name: string;
  readonly isTable: boolean;
  readonly points: readonly { readonly thrustN: number; readonly fuelFlowKgPerS: number }[];
  /** One standard uncertainty of the curve as a whole; 0 where none was given. */
  readonly doubtKgPerS: number;
}

/** Where neither a gauge nor a table says how far it goes, a line is drawn to so many times its idle flow. */
const LINE_TO_IDLES = 5;

/** Curves in the order of the sheet: its tables, then its line. What is in no unit of flow or force is left out. */
export function engineMapCurves(sheet: FlightSheet): readonly EngineMapCurve[] {
  return [...tablesOf(sheet), ...lineOf(sheet)].filter(({ points }) => points.length > 1);
}

function tablesOf({ engineTables = [] }: FlightSheet): readonly EngineMapCurve[] {
  return engineTables.map((table) => ({
    name: table.engine === undefined ? 'all engines' : `engine ${table.engine}`,
    isTable: true,
    points: table.rows
      .flatMap(({ thrust, flow }) => {
        const thrustN = measureSi(thrust, 'force');
        const fuelFlowKgPerS = measureSi(flow, 'massFlow');
        const isGiven = thrust.value !== 0 || flow.value !== 0;
        return thrustN === undefined || fuelFlowKgPerS === undefined || !isGiven
          ? []
          : [{ thrustN, fuelFlowKgPerS }];
      })
      .toSorted((a, b) => a.thrustN - b.thrustN),
    doubtKgPerS:
      table.flowStandardUncertainty === undefined
        ? 0
        : (measureDifferenceSi(table.flowStandardUncertainty, 'massFlow') ?? 0),
  }));
}

function lineOf(sheet: FlightSheet): readonly EngineMapCurve[] {
  const { engineMap: map } = sheet;
  if (map === undefined) return [];
  const idle = measureSi(map.idleFlow, 'massFlow');
  const slope = slopeSi(map.flowPerThrust);
  if (idle === undefined || slope === null || !(slope > 0)) return [];
  const gauged = instrumentsFor(sheet, 'fuelFlow').reduce(
    (sum, { rangeHigh = 0, unit }) =>
      sum + (measureSi({ value: rangeHigh, unit }, 'massFlow') ?? 0),
    0,
  );
  const tabled = tablesOf(sheet).flatMap(({ points }) =>
    points.map(({ fuelFlowKgPerS }) => fuelFlowKgPerS),
  );
  const most = Math.max(gauged > idle ? gauged : LINE_TO_IDLES * idle, ...tabled);
  return [
    {
      name: 'line',
      isTable: false,
      points: [
        { thrustN: 0, fuelFlowKgPerS: idle },
        { thrustN: (most - idle) / slope, fuelFlowKgPerS: most },
      ],
      doubtKgPerS:
        map.idleStandardUncertainty === undefined
          ? 0
          : (measureDifferenceSi(map.idleStandardUncertainty, 'massFlow') ?? 0),
    },
  ];
}

/** kg/s per N, by the flow and the force that the unit is made of. */
function slopeSi({ value, unit }: NonNullable<FlightSheet['engineMap']>['flowPerThrust']) {
  const parts = { 'lb/h/lbf': ['lb/h', 'lbf'], 'kg/h/N': ['kg/h', 'N'] } as const;
  if (unit !== 'lb/h/lbf' && unit !== 'kg/h/N') return null;
  const [flow, force] = parts[unit];
  const flowSi = measureSi({ value, unit: flow }, 'massFlow');
  const forceSi = measureSi({ value: 1, unit: force }, 'force');
  return flowSi === undefined || forceSi === undefined ? null : flowSi / forceSi;
}
