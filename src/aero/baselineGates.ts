import { baselineAt, type Baseline } from './baseline.ts';
import { requireFinite, requirePositive } from './outcome.ts';
import { METRES_PER_FOOT } from './units.ts';

/** Why a comparison with the baseline is struck. The number is still shown, with the gate named. */
export type BaselineGate =
  'tooFewReadings' | 'tooFewToSpare' | 'mach' | 'altitude' | 'outsideWeights' | 'leverage';

export interface BaselineLimits {
  readonly fewestReadings: number;
  readonly fewestToSpare: number;
  readonly machDifference: number;
  readonly altitudeDifferenceM: number;
}

/**
 * Readings and spare readings as the t table suggests (12.7 at one to spare, 3.18 at three); Mach a
 * product choice; altitude where referred curves stop repeating, SFTE Reference Handbook (2013).
 */
export const BASELINE_LIMITS: BaselineLimits = {
  fewestReadings: 5,
  fewestToSpare: 3,
  machDifference: 0.005,
  altitudeDifferenceM: 5000 * METRES_PER_FOOT,
};

const ROUNDING = 1e-9;

/**
 * The gates a new condition breaks, in the order of the list above; none means the baseline serves.
 *
 * A borrowed elasticity carries one run to any weight with its own doubt, so with one only Mach and
 * altitude strike. With a Mach term every Mach number inside the data will do.
 *
 * @param machDifference signed, condition less baseline; likewise the altitude
 * @param mach the condition's own; asked only of a baseline with a Mach term
 */
export function baselineGates({
  baseline,
  weightN,
  mach,
  machDifference,
  altitudeDifferenceM,
  limits = BASELINE_LIMITS,
}: {
  readonly baseline: Baseline;
  readonly weightN: number;
  readonly mach?: number;
  readonly machDifference: number;
  readonly altitudeDifferenceM: number;
  readonly limits?: BaselineLimits;
}): readonly BaselineGate[] {
  requirePositive('weight', weightN);
  requireFinite('Mach difference', machDifference);
  requireFinite('altitude difference', altitudeDifferenceM);
  const readings = baseline.runs.reduce((total, run) => total + run.readingCount, 0);
  const weights = baseline.runs.map((run) => run.weightN);
  const held = baseline.borrowed !== undefined;
  const outside = weightN < Math.min(...weights) || weightN > Math.max(...weights);
  const broken: Record<BaselineGate, boolean> = {
    tooFewReadings: !held && readings < limits.fewestReadings,
    tooFewToSpare: !held && readings - termsOf(baseline) < limits.fewestToSpare,
    mach: Math.abs(machDifference) > limits.machDifference && !machInsideData(baseline, mach),
    altitude: Math.abs(altitudeDifferenceM) > limits.altitudeDifferenceM,
    outsideWeights: !held && outside,
    leverage: !held && leverageExceeded(baseline, weightN, mach),
  };
  return GATES.filter((gate) => broken[gate]);
}

const GATES: readonly BaselineGate[] = [
  'tooFewReadings',
  'tooFewToSpare',
  'mach',
  'altitude',
  'outsideWeights',
  'leverage',
];

function termsOf(baseline: Baseline): number {
  return baseline.kind === 'fit' ? baseline.fit.coefficients.length : 2;
}

function machInsideData(baseline: Baseline, mach: number | undefined): boolean {
  if (baseline.kind === 'pair' || baseline.machTerm === undefined || mach === undefined)
    return false;
  return mach >= baseline.machTerm.lowestMach && mach <= baseline.machTerm.highestMach;
}

/**
 * Range alone misses holes of two variables and lopsided data, leverage alone misses one end of them: both
 * are asked.
 */
function leverageExceeded(baseline: Baseline, weightN: number, mach: number | undefined): boolean {
  if (baseline.kind === 'pair') return false;
  const ofData = baseline.runs.map((run) => baselineAt(baseline, run.weightN, run.mach).leverage);
  // The lightest and heaviest run themselves are inside: a hair for rounding.
  return baselineAt(baseline, weightN, mach).leverage > Math.max(...ofData) * (1 + ROUNDING);
}
