import { requireRun, rowAt } from './baseline.ts';
import type { BaselineRun, FittedBaseline } from './baseline.ts';
import { ready, requireFinite, requireNotNegative, requirePositive } from './outcome.ts';
import { unavailable, type Outcome, type Unavailable } from './outcome.ts';
import { mean } from './statistics/descriptive.ts';
import { fitLinear, type NoFit } from './statistics/leastSquares.ts';

/*
 * A baseline flown at several Mach numbers: F = a + b z + m (M − Mref). Data of a steady cruise cannot tell
 * what Mach does: then m must be known beforehand, with a doubt.
 */

/** Runs needed before a third coefficient is asked for, and the Mach numbers they must span (product choices). */
export const FEWEST_RUNS_FOR_MACH = 8;
export const LEAST_MACH_SPAN = 0.01;
/** 1/(1 − r²) of Mach against z: beyond it the two cannot be told apart (common practice, no source). */
export const MOST_MACH_INFLATION = 10;

const ROUNDING = 1e-9;

export type NoMachTerm = 'machUnknown' | 'tooFewForMach' | 'machSpanTooSmall' | 'machFollowsWeight';

/** A slope from elsewhere, as a constant. */
export interface KnownMachSlope {
  readonly slopeKgPerSPerMach: number;
  readonly standardUncertainty: number;
}

/**
 * Whether these runs can carry a Mach term of their own.
 *
 * @returns the Mach numbers they span, or why not: a run without one, fewer than eight runs, less than
 *   0.01 between the slowest and the fastest, or a Mach number that merely followed the weight
 */
export function machSpanOf(
  runs: readonly BaselineRun[],
): Outcome<{ readonly lowestMach: number; readonly highestMach: number }, NoMachTerm> {
  const machs = machsOf(runs);
  if (machs === undefined) return unavailable('machUnknown');
  if (runs.length < FEWEST_RUNS_FOR_MACH) return unavailable('tooFewForMach');
  const lowestMach = Math.min(...machs);
  const highestMach = Math.max(...machs);
  if (highestMach - lowestMach < LEAST_MACH_SPAN - ROUNDING) return unavailable('machSpanTooSmall');
  const inflation =
    1 /
    (1 -
      squaredCorrelation(
        machs,
        runs.map((run) => run.weightN ** 2),
      ));
  if (!(inflation <= MOST_MACH_INFLATION)) return unavailable('machFollowsWeight');
  return ready({ lowestMach, highestMach });
}

/**
 * A baseline with a Mach term: fitted where the runs can carry it, or with a slope known beforehand.
 *
 * @param known left out, the slope is fitted
 * @param referenceMach that of the card; left out, the mean of the runs
 * @returns a reason when the runs cannot carry the term, or cannot be fitted
 * @throws RangeError for a run or Mach number out of range, or a negative doubt
 */
export function fitBaselineWithMach({
  runs,
  trust,
  known,
  referenceWeightN,
  referenceMach,
}: {
  readonly runs: readonly BaselineRun[];
  readonly trust: 'absolute' | 'relative';
  readonly known?: KnownMachSlope;
  readonly referenceWeightN?: number;
  readonly referenceMach?: number;
}): FittedBaseline | NoFit | Unavailable<NoMachTerm> {
  for (const run of runs) requireRun(run);
  if (runs.length < 2) return unavailable('tooFewObservations');
  const machs = machsOf(runs);
  if (machs === undefined) return unavailable('machUnknown');
  const span = known === undefined ? machSpanOf(runs) : undefined;
  if (span?.kind === 'unavailable') return span;
  if (known !== undefined) {
    requireFinite('Mach slope', known.slopeKgPerSPerMach);
    requireNotNegative('doubt of the Mach slope', known.standardUncertainty);
  }
  const mref = referenceMach ?? mean(machs);
  const wref = referenceWeightN ?? mean(runs.map((run) => run.weightN));
  requirePositive('reference Mach number', mref);
  requirePositive('reference weight', wref);
  const off = machs.map((mach) => mach - mref);
  const slopeTaken = known?.slopeKgPerSPerMach ?? 0;
  const fit = fitLinear({
    rows: runs.map((run, k) => {
      const row = rowAt(run.weightN, wref);
      return known === undefined ? [...row, off[k] ?? 0] : row;
    }),
    observations: runs.map((run, k) => run.fuelFlowKgPerS - slopeTaken * (off[k] ?? 0)),
    weighting: { kind: trust, uncertainties: runs.map((run) => run.standardUncertaintyKgPerS) },
  });
  if (fit.kind === 'unavailable') return fit;
  const [, , slopeFitted = 0] = fit.coefficients;
  return {
    kind: 'fit',
    runs,
    borrowed: undefined,
    referenceWeightN: wref,
    fit,
    machTerm: {
      kind: known === undefined ? 'fitted' : 'known',
      referenceMach: mref,
      lowestMach: Math.min(...machs),
      highestMach: Math.max(...machs),
      slopeKgPerSPerMach: known === undefined ? slopeFitted : slopeTaken,
      knownStandardUncertainty: known?.standardUncertainty ?? 0,
    },
  };
}

function machsOf(runs: readonly BaselineRun[]): readonly number[] | undefined {
  const machs = runs.map((run) => run.mach).filter((mach) => mach !== undefined);
  for (const mach of machs) requirePositive('Mach number', mach);
  return machs.length === runs.length ? machs : undefined;
}

function squaredCorrelation(x: readonly number[], y: readonly number[]): number {
  const [meanX, meanY] = [mean(x), mean(y)];
  let [xx, yy, xy] = [0, 0, 0];
  for (const [k, value] of x.entries()) {
    const [dx, dy] = [value - meanX, (y[k] ?? 0) - meanY];
    xx += dx * dx;
    yy += dy * dy;
    xy += dx * dy;
  }
  // Runs at one weight say nothing of a correlation: the fit itself then refuses.
  return xx === 0 || yy === 0 ? 0 : xy ** 2 / (xx * yy);
}
