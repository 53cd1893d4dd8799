import { baselineAt, fitBaseline, type BaselineRun } from '../aero/baseline.ts';
import { BASELINE_LIMITS } from '../aero/baselineGates.ts';
import { referredFuelFlowKgPerS, referredWeightN } from '../aero/fuelFlow.ts';
import { studentTQuantile } from '../aero/statistics/distributions.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../aero/units.ts';
import type { FlightView } from '../record/flight.ts';
import type { Measure } from '../record/measure.ts';
import type { ArchivedPoint, FlightSheet } from '../record/sheet.ts';
import { measureDifferenceSi, measureSi } from './calibrate.ts';
import { contextOf } from './reading/context.ts';
import { reducedRuns } from './reducedRuns.ts';
import { flowIn, flowUnitOf, massUnitOf, weightIn } from './sheetUnits.ts';

/**
 * Suction-off points of earlier flights, referred to sea level: flow/(δ√θ) against W/δ, F = a + b (W/δ)². What is
 * borrowed from them is the share of flow for a share of weight; the level of an earlier flight is never borrowed.
 */

/** Where a point came with no doubt of its own, and no other point has one either: a share of its flow (a choice). */
const UNDECLARED_DOUBT = 0.01;
const CURVE_POINTS = 41;

export interface ArchiveFit {
  readonly kind: 'fit';
  readonly used: readonly ArchivedPoint[];
  /** Points at another Mach or in a unit that is no weight or flow: shown, not fitted. */
  readonly left: readonly ArchivedPoint[];
  /** Least and greatest W/δ of what was fitted. */
  readonly hullN: readonly [number, number];
  readonly curve: readonly {
    readonly weightN: number;
    readonly flowKgPerS: number;
    /** Half of the 95 % interval of the line. */
    readonly halfKgPerS: number;
  }[];
  /** d ln F/d ln W in the middle of the hull. */
  readonly elasticity: number;
  readonly elasticityStandardUncertainty: number;
}

export type NoArchiveFit = 'noPoint' | 'tooFewPoints' | 'oneWeight';

/** @param sheet its archive, fitted at the Mach of its cards */
export function archiveFit(
  sheet: FlightSheet,
): ArchiveFit | { readonly kind: 'noFit'; readonly because: NoArchiveFit } {
  const { baselineArchive: points = [], condition } = sheet;
  if (points.length === 0) return { kind: 'noFit', because: 'noPoint' };
  const placed = points.map((point) => ({ point, ...placeOf(point) }));
  const used = placed.flatMap(({ point, weightN, flowKgPerS }) =>
    weightN === null ||
    flowKgPerS === null ||
    Math.abs(point.mach - condition.mach) > BASELINE_LIMITS.machDifference
      ? []
      : [{ point, weightN, flowKgPerS }],
  );
  const given = used.flatMap(({ point }) => doubtOf(point) ?? []);
  const runs = used.map(({ point, weightN, flowKgPerS }): BaselineRun => ({
    weightN,
    fuelFlowKgPerS: flowKgPerS,
    standardUncertaintyKgPerS:
      doubtOf(point) ?? (given.length > 0 ? Math.max(...given) : UNDECLARED_DOUBT * flowKgPerS),
    readingCount: point.readings,
    mach: point.mach,
  }));
  if (runs.length < 2) return { kind: 'noFit', because: 'tooFewPoints' };
  const baseline = fitBaseline({ runs, trust: 'absolute' });
  if (baseline.kind === 'unavailable') return { kind: 'noFit', because: 'oneWeight' };
  const { fit, referenceWeightN } = baseline;
  // More scatter than the points admit to is the points' fault: it widens what is said of them, and never narrows it.
  const spare = fit.degreesOfFreedom;
  const excess = spare > 0 ? Math.max(1, Math.sqrt(fit.residualSumOfSquares / spare)) : 1;
  const coverage = studentTQuantile({
    probability: 0.975,
    degreesOfFreedom: excess > 1 ? spare : Number.POSITIVE_INFINITY,
  });
  const weights = runs.map(({ weightN }) => weightN);
  const hullN = [Math.min(...weights), Math.max(...weights)] as const;
  const middleN = (hullN[0] + hullN[1]) / 2;
  const [constant = 0, slope = 0] = fit.coefficients;
  const z = (middleN / referenceWeightN) ** 2;
  const flow = constant + slope * z;
  const [byConstant, bySlope] = [(-2 * slope * z) / flow ** 2, (2 * z * constant) / flow ** 2];
  const [[vaa = 0, vab = 0] = [], [, vbb = 0] = []] = fit.covariance;
  const variance = byConstant ** 2 * vaa + 2 * byConstant * bySlope * vab + bySlope ** 2 * vbb;
  const margin = (hullN[1] - hullN[0]) * 0.1;
  return {
    kind: 'fit',
    used: used.map(({ point }) => point),
    left: points.filter((point) => !used.some((one) => one.point === point)),
    hullN,
    curve: Array.from({ length: CURVE_POINTS }, (_, place) => {
      const share = place / (CURVE_POINTS - 1);
      const weightN = hullN[0] - margin + share * (hullN[1] - hullN[0] + 2 * margin);
      const at = baselineAt(baseline, weightN);
      return {
        weightN,
        flowKgPerS: at.fuelFlowKgPerS,
        halfKgPerS: coverage * excess * at.standardUncertaintyKgPerS,
      };
    }),
    elasticity: (2 * slope * z) / flow,
    elasticityStandardUncertainty: excess * Math.sqrt(Math.max(0, variance)),
  };
}

/** W/δ and flow of a point in SI; null where its unit is neither. */
export function placeOf(point: ArchivedPoint): {
  readonly weightN: number | null;
  readonly flowKgPerS: number | null;
} {
  const massKg = positive(measureSi(point.weightOverDelta, 'mass'));
  return {
    weightN: massKg === null ? null : massKg * STANDARD_GRAVITY_M_PER_S2,
    flowKgPerS: positive(measureSi(point.referredFlow, 'massFlow')),
  };
}

/**
 * Suction-off runs of a flight that were completed, as points of an archive in its own units.
 *
 * @param taken ids that stand in the archive already
 */
export function archivedPointsOf(
  view: FlightView,
  taken: readonly string[],
): readonly ArchivedPoint[] {
  const context = contextOf(view);
  const { sheet } = view.state;
  if (context === null || sheet === null) return [];
  const { pressureRatio, temperatureRatio } = context.terms.cardAir;
  const flowUnit = flowUnitOf(sheet);
  const massUnit = massUnitOf(sheet);
  const flow = (flowKgPerS: number): Measure => ({
    unit: flowUnit,
    value: rounded(
      flowIn(
        flowUnit,
        referredFuelFlowKgPerS({ fuelFlowKgPerS: flowKgPerS, pressureRatio, temperatureRatio }),
      ),
    ),
  });
  const date = view.state.date ?? '';
  const ids = new Set(taken);
  return reducedRuns(context).flatMap(({ run, suction, mean, readings }) => {
    if (suction !== 'off' || run.state !== 'complete' || mean === null) return [];
    const id = freeName(`${date.slice(2)} ${run.point}`.trim(), ids);
    ids.add(id);
    const weightN = referredWeightN({ weightN: mean.weightAtCardN, pressureRatio });
    return [
      {
        id,
        flight: `${view.state.title}${date === '' ? '' : `, ${date}`}`.slice(0, 200),
        configuration: '',
        mach: rounded(mean.mach),
        weightOverDelta: { unit: massUnit, value: rounded(weightIn(massUnit, weightN)) },
        referredFlow: flow(mean.flowAtCardKgPerS),
        standardUncertainty: flow(mean.standardUncertaintyKgPerS),
        readings: readings.used.length,
        source: 'timeline' as const,
      },
    ];
  });
}

function doubtOf({ standardUncertainty }: ArchivedPoint): number | null {
  return standardUncertainty === undefined
    ? null
    : positive(measureDifferenceSi(standardUncertainty, 'massFlow'));
}

function positive(value: number | undefined): number | null {
  return value !== undefined && value > 0 ? value : null;
}

/** Seven figures: more than any gauge, fewer than a float pretends to. */
function rounded(value: number): number {
  return Number(value.toPrecision(7));
}

function freeName(name: string, taken: ReadonlySet<string>): string {
  const short = name.slice(0, 34);
  if (!taken.has(short)) return short;
  let number = 2;
  while (taken.has(`${short} (${number})`)) number += 1;
  return `${short} (${number})`;
}
