import { requireFinite, requireNotNegative, requirePositive } from './outcome.ts';
import { unavailable, type Unavailable } from './outcome.ts';
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
  /** Mean Mach number; needed by a Mach term alone. */
  readonly mach?: number;
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
  /** From `fitBaselineWithMach`; without it the line holds at one Mach number. */
  readonly machTerm?: MachTerm;
}

/** + m (M − Mref): a third coefficient of the fit, or known beforehand with a doubt of its own. */
export interface MachTerm {
  readonly kind: 'fitted' | 'known';
  readonly referenceMach: number;
  readonly lowestMach: number;
  readonly highestMach: number;
  /** m. */
  readonly slopeKgPerSPerMach: number;
  /** Of a known slope; that of a fitted one is in the fit. */
  readonly knownStandardUncertainty: number;
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
  /** ∂F/∂M; 0 without a Mach term. */
  readonly machSlopeKgPerSPerMach: number;
  /** ∂F/∂m of a known Mach slope, in Mach numbers; 0 where none was handed in. */
  readonly perKnownMachSlope: number;
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

/**
 * The baseline at `weightN`, on the line or off its end: gates are asked separately.
 *
 * @param mach used by a baseline with a Mach term; left out, its reference
 */
export function baselineAt(baseline: Baseline, weightN: number, mach?: number): BaselineValue {
  requirePositive('weight', weightN);
  if (baseline.kind === 'pair') return pairAt(baseline, weightN);
  const { fit, runs, referenceWeightN, borrowed, machTerm } = baseline;
  const machOff =
    machTerm === undefined ? 0 : (mach ?? machTerm.referenceMach) - machTerm.referenceMach;
  requireFinite('Mach difference', machOff);
  const row = rowAt(weightN, referenceWeightN);
  const { value, standardUncertainty, leverage, shares } = predict(
    fit,
    machTerm?.kind === 'fitted' ? [...row, machOff] : row,
  );
  const runShares = shares.slice(0, runs.length);
  const known = machTerm?.kind === 'known' ? machTerm : undefined;
  // A steeper slope lifts the answer by its own distance and lowers it by that of the runs.
  const perKnownMachSlope =
    known === undefined
      ? 0
      : runShares.reduce(
          (left, share, k) => left - share * ((runs[k]?.mach ?? 0) - known.referenceMach),
          machOff,
        );
  const fuelFlowKgPerS = value + (known?.slopeKgPerSPerMach ?? 0) * machOff;
  const [, slope = 0] = fit.coefficients;
  return {
    fuelFlowKgPerS,
    standardUncertaintyKgPerS: Math.hypot(
      standardUncertainty,
      perKnownMachSlope * (known?.knownStandardUncertainty ?? 0),
    ),
    weightElasticity: (2 * slope * row[1]) / fuelFlowKgPerS,
    runShares,
    machSlopeKgPerSPerMach: machTerm?.slopeKgPerSPerMach ?? 0,
    perKnownMachSlope,
    // A higher E lifts what the last row reads by the flow at the mean weight.
    perElasticityKgPerS:
      borrowed === undefined ? 0 : (shares[runs.length] ?? 0) * fittedAtMean(baseline),
    leverage,
  };
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
    machSlopeKgPerSPerMach: 0,
    perKnownMachSlope: 0,
    leverage: 0,
  };
}

function fittedAtMean({ fit, runs, referenceWeightN }: FittedBaseline): number {
  return predict(fit, rowAt(meanOf(runs.map((run) => run.weightN)), referenceWeightN)).value;
}

/** The row of the fit at a weight. */
export function rowAt(
  weightN: number,
  referenceWeightN: number,
): readonly [one: number, z: number] {
  return [1, (weightN / referenceWeightN) ** 2];
}

function meanOf(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0) / values.length;
}

/** @throws RangeError when flow, weight or doubt is not above zero */
export function requireRun(run: BaselineRun): void {
  requirePositive('fuel flow', run.fuelFlowKgPerS);
  requirePositive('weight', run.weightN);
  requirePositive('uncertainty of a run', run.standardUncertaintyKgPerS);
}
