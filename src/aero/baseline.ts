import { ready, requireNotNegative, requirePositive, unavailable } from './outcome.ts';
import type { Outcome, Unavailable } from './outcome.ts';
import {
  fitLinear,
  predict,
  type Fit,
  type NoFit,
  type Weighting,
} from './statistics/leastSquares.ts';

/*
 * Fuel flow with suction off against weight, at one Mach number: F = a + b z, z = (W/Wref)². Flow and
 * weight are both referred, or both brought to the card's height on a standard day; the two say the same.
 * SFTE Reference Handbook (2013): D/δ = A + B (W/δ)². Check values: test/reference/baseline.json
 */

/** The mean of one suction-off run. */
export interface BaselineRun {
  readonly fuelFlowKgPerS: number;
  readonly weightN: number;
  /** Independent part of the doubt of that mean. */
  readonly standardUncertaintyKgPerS: number;
  readonly readingCount: number;
}

/** d ln F/d ln W, and how well it is known. */
export interface WeightElasticity {
  readonly elasticity: number;
  readonly standardUncertainty: number;
}

/** Where none is borrowed: anywhere from no weight effect (0) to all drag growing with W² (2). */
export const UNKNOWN_WEIGHT_ELASTICITY: WeightElasticity = {
  elasticity: 1,
  standardUncertainty: 1 / Math.sqrt(3),
};

/** Two off runs either side of an on run further apart than this many doubts give no value: 2 √2. */
export const BRACKET_DRIFT_DOUBTS = 2 * Math.SQRT2;

export interface PairBaseline {
  readonly kind: 'pair';
  readonly runs: readonly [BaselineRun];
  readonly borrowed: WeightElasticity;
}

export interface FittedBaseline {
  readonly kind: 'fit';
  readonly runs: readonly BaselineRun[];
  readonly borrowed: WeightElasticity | undefined;
  readonly referenceWeightN: number;
  readonly fit: Fit;
}

export type Baseline = PairBaseline | FittedBaseline;

/** The baseline at one weight. */
export interface BaselineValue {
  readonly fuelFlowKgPerS: number;
  readonly standardUncertaintyKgPerS: number;
  /** d ln F/d ln W there. */
  readonly weightElasticity: number;
  /** ∂F/∂F_k, one a run: a doubt common to the runs enters once, through their sum. */
  readonly runShares: readonly number[];
  /** ∂F/∂E of the borrowed elasticity, kg/s; 0 where none was borrowed. */
  readonly perElasticityKgPerS: number;
  /** h0 of the fit; 0 for a pair, which has none. */
  readonly leverage: number;
}

/**
 * One run moved along by an elasticity, F1 (W/W1)^E: used until a second run is flown.
 *
 * @throws RangeError when flow or weight is not above zero or a doubt negative
 */
export function pairBaseline(run: BaselineRun, borrowed: WeightElasticity): PairBaseline {
  requireRun(run);
  requireNotNegative('elasticity uncertainty', borrowed.standardUncertainty);
  return { kind: 'pair', runs: [run], borrowed };
}

/**
 * F = a + b (W/Wref)² through two or more runs.
 *
 * @param borrowed one more row: the elasticity at the mean weight, with its doubt. Only with `absolute`
 * @param trust `absolute` takes the doubts of the runs as they stand; `relative` lets their scatter about
 *   the line set the size, and needs a run to spare
 * @param referenceWeightN left out, the mean weight of the runs: raw W² would make the columns alike
 * @returns a reason when there are too few runs or all are at one weight
 * @throws RangeError for a run out of range, or a borrowed elasticity with relative trust
 */
export function fitBaseline({
  runs,
  trust,
  borrowed,
  referenceWeightN,
}: {
  readonly runs: readonly BaselineRun[];
  readonly trust: 'absolute' | 'relative';
  readonly borrowed?: WeightElasticity;
  readonly referenceWeightN?: number;
}): FittedBaseline | NoFit {
  for (const run of runs) requireRun(run);
  if (runs.length < 2) return unavailable('tooFewObservations');
  const meanWeightN = meanOf(runs.map((run) => run.weightN));
  const reference = referenceWeightN ?? meanWeightN;
  requirePositive('reference weight', reference);
  const rows = runs.map((run) => rowAt(run.weightN, reference));
  const observations = runs.map((run) => run.fuelFlowKgPerS);
  const uncertainties = runs.map((run) => run.standardUncertaintyKgPerS);
  if (borrowed !== undefined) {
    if (trust === 'relative') {
      throw new RangeError('a borrowed elasticity has an absolute doubt, so the runs must too');
    }
    requirePositive('elasticity uncertainty', borrowed.standardUncertainty);
    // E = 2bz/(a + bz) at the mean weight, as a row that should read zero: −E a + (2 − E) z b = 0 ± u_E F.
    const meanRow = rowAt(meanWeightN, reference);
    rows.push([-borrowed.elasticity, (2 - borrowed.elasticity) * meanRow[1]]);
    observations.push(0);
    uncertainties.push(
      borrowed.standardUncertainty * meanOf(runs.map((run) => run.fuelFlowKgPerS)),
    );
  }
  const weighting: Weighting = { kind: trust, uncertainties };
  const fit = fitLinear({ rows, observations, weighting });
  if (fit.kind === 'unavailable') return fit;
  return { kind: 'fit', runs, borrowed, referenceWeightN: reference, fit };
}

/**
 * The best baseline from what has been flown so far: a pair from one run, a fit with the borrowed row
 * from the second on.
 *
 * @param borrowed `UNKNOWN_WEIGHT_ELASTICITY` where the flight has none; then every value is provisional
 */
export function liveBaseline(
  runs: readonly BaselineRun[],
  borrowed: WeightElasticity,
): Baseline | Unavailable<'noRuns'> | NoFit {
  const [first] = runs;
  if (first === undefined) return unavailable('noRuns');
  if (runs.length === 1) return pairBaseline(first, borrowed);
  return fitBaseline({ runs, trust: 'absolute', borrowed });
}

/** The baseline at `weightN`, on the line or off its end: gates are asked separately. */
export function baselineAt(baseline: Baseline, weightN: number): BaselineValue {
  requirePositive('weight', weightN);
  if (baseline.kind === 'pair') return pairAt(baseline, weightN);
  const { fit, runs, referenceWeightN, borrowed } = baseline;
  const row = rowAt(weightN, referenceWeightN);
  const { value, standardUncertainty, leverage, shares } = predict(fit, row);
  const [, slope = 0] = fit.coefficients;
  return {
    fuelFlowKgPerS: value,
    standardUncertaintyKgPerS: standardUncertainty,
    weightElasticity: (2 * slope * row[1]) / value,
    runShares: shares.slice(0, runs.length),
    // A higher E lifts what the last row reads by the flow at the mean weight.
    perElasticityKgPerS:
      borrowed === undefined ? 0 : (shares[runs.length] ?? 0) * fittedAtMean(baseline),
    leverage,
  };
}

/**
 * An on run between two off runs: both moved to its weight, their mean taken.
 *
 * @returns `bracketDrifts` when they differ by more than 2√2 of their doubt
 */
export function bracketAt({
  before,
  after,
  weightN,
  borrowed,
}: {
  readonly before: BaselineRun;
  readonly after: BaselineRun;
  readonly weightN: number;
  readonly borrowed: WeightElasticity;
}): Outcome<BaselineValue, 'bracketDrifts'> {
  const [a, b] = [before, after].map((run) => pairAt(pairBaseline(run, borrowed), weightN));
  if (a === undefined || b === undefined) throw new RangeError('a bracket has two runs');
  const u = (before.standardUncertaintyKgPerS + after.standardUncertaintyKgPerS) / 2;
  if (Math.abs(a.fuelFlowKgPerS - b.fuelFlowKgPerS) > BRACKET_DRIFT_DOUBTS * u) {
    return unavailable('bracketDrifts');
  }
  const runShares = [...a.runShares, ...b.runShares].map((share) => share / 2);
  const perElasticityKgPerS = (a.perElasticityKgPerS + b.perElasticityKgPerS) / 2;
  const [shareA = 0, shareB = 0] = runShares;
  return ready({
    fuelFlowKgPerS: (a.fuelFlowKgPerS + b.fuelFlowKgPerS) / 2,
    standardUncertaintyKgPerS: Math.hypot(
      shareA * before.standardUncertaintyKgPerS,
      shareB * after.standardUncertaintyKgPerS,
      perElasticityKgPerS * borrowed.standardUncertainty,
    ),
    weightElasticity: borrowed.elasticity,
    runShares,
    perElasticityKgPerS,
    leverage: 0,
  });
}

function pairAt({ runs: [run], borrowed }: PairBaseline, weightN: number): BaselineValue {
  requirePositive('weight', weightN);
  const share = (weightN / run.weightN) ** borrowed.elasticity;
  const fuelFlowKgPerS = run.fuelFlowKgPerS * share;
  const perElasticityKgPerS = fuelFlowKgPerS * Math.log(weightN / run.weightN);
  return {
    fuelFlowKgPerS,
    standardUncertaintyKgPerS: Math.hypot(
      share * run.standardUncertaintyKgPerS,
      perElasticityKgPerS * borrowed.standardUncertainty,
    ),
    weightElasticity: borrowed.elasticity,
    runShares: [share],
    perElasticityKgPerS,
    leverage: 0,
  };
}

function fittedAtMean({ fit, runs, referenceWeightN }: FittedBaseline): number {
  return predict(fit, rowAt(meanOf(runs.map((run) => run.weightN)), referenceWeightN)).value;
}

function rowAt(weightN: number, referenceWeightN: number): readonly [one: number, z: number] {
  return [1, (weightN / referenceWeightN) ** 2];
}

function meanOf(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0) / values.length;
}

function requireRun(run: BaselineRun): void {
  requirePositive('fuel flow', run.fuelFlowKgPerS);
  requirePositive('weight', run.weightN);
  requirePositive('uncertainty of a run', run.standardUncertaintyKgPerS);
}
