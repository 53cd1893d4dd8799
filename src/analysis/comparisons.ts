import type { Component } from '../aero/statistics/uncertainty.ts';
import type { EntryId } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import { contextOf, type Context } from './reading/context.ts';
import { doubtsOf, withInterval, type Doubts, type Sensitivities } from './reading/doubts.ts';
import type { RunMean } from './reading/runMean.ts';
import { reducedRuns, type ReducedRun } from './reducedRuns.ts';

/**
 * One setting against another. Per cent rises as fuel burns off while the flow saved does not, so settings
 * are ranked on flow saved; both are given. Neither is ranked unless it lies beyond the doubt of the difference.
 */
export interface Comparison {
  readonly point: string;
  readonly run: number;
  readonly against: { readonly point: string; readonly run: number };
  readonly differenceFraction: number;
  /** Half of the 95 % interval: twice the standard uncertainty, more where few readings show their own scatter. */
  readonly twoUFraction: number;
  readonly fractionDiffers: boolean;
  /** At the card. */
  readonly savedDifferenceKgPerS: number;
  readonly savedTwoUKgPerS: number;
  readonly savingDiffers: boolean;
  readonly entries: readonly EntryId[];
}

/** Every finished suction-on run against the first one finished; none until there are two. */
export function comparisons(view: FlightView): readonly Comparison[] {
  const context = contextOf(view);
  if (context === null) return [];
  const finished = reducedRuns(context).flatMap(comparable);
  const [reference, ...others] = finished;
  if (reference === undefined) return [];
  return others.map((other) => compare(context, other, reference));
}

interface Comparable {
  readonly point: string;
  readonly run: number;
  readonly mean: RunMean;
  readonly against: NonNullable<ReducedRun['against']>;
  readonly entries: readonly EntryId[];
}

function comparable({ run, mean, against, readings }: ReducedRun): readonly Comparable[] {
  if (run.state !== 'complete' || mean === null || against === null) return [];
  if (against.broken.length > 0) return [];
  const entries = [
    ...readings.used.flatMap((reading) => reading.entries),
    ...against.inUse.entries,
  ];
  return [{ point: run.point, run: run.run, mean, against, entries }];
}

function compare(context: Context, one: Comparable, other: Comparable): Comparison {
  const differenceFraction =
    one.against.reduction.fuel.fraction - other.against.reduction.fuel.fraction;
  const savedDifferenceKgPerS = savedKgPerS(one) - savedKgPerS(other);
  const twoUFraction = halfWidth(context, one, other, perFraction);
  const savedTwoUKgPerS = halfWidth(context, one, other, perSaving);
  return {
    point: one.point,
    run: one.run,
    against: { point: other.point, run: other.run },
    differenceFraction,
    twoUFraction,
    fractionDiffers: Math.abs(differenceFraction) > twoUFraction,
    savedDifferenceKgPerS,
    savedTwoUKgPerS,
    savingDiffers: Math.abs(savedDifferenceKgPerS) > savedTwoUKgPerS,
    entries: [...new Set([...one.entries, ...other.entries])],
  };
}

function savedKgPerS({ against, mean }: Comparable): number {
  return against.reduction.baselineKgPerS - mean.flowAtCardKgPerS;
}

function perFraction({ against, mean }: Comparable): Sensitivities {
  const { baselineKgPerS } = against.reduction;
  return {
    perFlow: -1 / baselineKgPerS,
    perBaseline: mean.flowAtCardKgPerS / baselineKgPerS ** 2,
  };
}

function perSaving(): Sensitivities {
  return { perFlow: -1, perBaseline: 1 };
}

/**
 * Doubts of the two runs add; those of the baseline runs, of a borrowed elasticity, of calibration and of weight cancel
 * as far as both results move alike with them, whether the two stand on a fit, a pair or one on each.
 */
function halfWidth(
  context: Context,
  one: Comparable,
  other: Comparable,
  sensitivities: (of: Comparable) => Sensitivities,
): number {
  const [a, b] = [one, other].map((of) => doubtsIn(context, of, sensitivities(of)));
  if (a === undefined || b === undefined) return 0;
  const components = [
    ...a.run,
    ...b.run,
    ...apart(a.baseline, b.baseline),
    ...apart(a.calibration, b.calibration),
    ...apart(a.weight, b.weight),
  ];
  const { interval95 } = withInterval(0, components);
  return interval95.high;
}

function doubtsIn({ terms }: Context, { mean, against }: Comparable, moves: Sensitivities): Doubts {
  const { inUse, reduction } = against;
  return doubtsOf({ run: mean, inUse, at: reduction.at, terms }, moves);
}

/** Source by source, how much more the one moves than the other, in the unit of the result. */
function apart(ones: readonly Component[], others: readonly Component[]): readonly Component[] {
  return ones.map((one, index) => {
    const other = others[index];
    const moved = one.sensitivity * one.standardUncertainty;
    const otherMoved = other === undefined ? 0 : other.sensitivity * other.standardUncertainty;
    return {
      sensitivity: moved - otherMoved,
      standardUncertainty: 1,
      degreesOfFreedom: one.degreesOfFreedom,
    };
  });
}
