import { baselineAt } from '../aero/baseline.ts';
import type { FlightView } from '../record/flight.ts';
import { contextOf } from './reading/context.ts';
import type { RunMean } from './reading/runMean.ts';
import { reducedRuns, type ReducedRun } from './reducedRuns.ts';

/**
 * One setting against another. Per cent rises as fuel burns off while the flow saved does not, so settings
 * are ranked on flow saved; both are given.
 */
export interface Comparison {
  readonly point: string;
  readonly run: number;
  readonly against: { readonly point: string; readonly run: number };
  readonly differenceFraction: number;
  readonly twoUFraction: number;
  readonly fractionDiffers: boolean;
  /** At the card. */
  readonly savedDifferenceKgPerS: number;
  readonly savedTwoUKgPerS: number;
  readonly savingDiffers: boolean;
}

/** Every finished suction-on run against the first one finished; none until there are two. */
export function comparisons(view: FlightView): readonly Comparison[] {
  const context = contextOf(view);
  if (context === null) return [];
  const finished = reducedRuns(context).flatMap(comparable);
  const [reference, ...others] = finished;
  if (reference === undefined) return [];
  return others.flatMap((other) => {
    // Baseline doubts cancel only where both stand on the same one.
    if (other.inUse.baseline.kind !== reference.inUse.baseline.kind) return [];
    return [compare(other, reference)];
  });
}

interface Comparable {
  readonly point: string;
  readonly run: number;
  readonly mean: RunMean;
  readonly inUse: NonNullable<ReducedRun['against']>['inUse'];
  readonly baselineKgPerS: number;
  readonly fraction: number;
}

function comparable({ run, mean, against }: ReducedRun): readonly Comparable[] {
  if (run.state !== 'complete' || mean === null || against === null) return [];
  if (against.broken.length > 0) return [];
  const { inUse, reduction } = against;
  return [
    {
      point: run.point,
      run: run.run,
      mean,
      inUse,
      baselineKgPerS: reduction.baselineKgPerS,
      fraction: reduction.fuel.fraction,
    },
  ];
}

function compare(one: Comparable, other: Comparable): Comparison {
  const differenceFraction = one.fraction - other.fraction;
  const savedDifferenceKgPerS = savedKgPerS(one) - savedKgPerS(other);
  const twoUFraction = 2 * differenceUncertainty(one, other, perFraction);
  const savedTwoUKgPerS = 2 * differenceUncertainty(one, other, perSaving);
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
  };
}

function savedKgPerS({ baselineKgPerS, mean }: Comparable): number {
  return baselineKgPerS - mean.flowAtCardKgPerS;
}

/** How far a result moves with its own flow, with the baseline, and with an error common to all gauges. */
interface Sensitivities {
  readonly flow: number;
  readonly baseline: number;
  readonly common: number;
}

function perFraction({ baselineKgPerS, mean, fraction }: Comparable): Sensitivities {
  return {
    flow: 1 / baselineKgPerS,
    baseline: mean.flowAtCardKgPerS / baselineKgPerS ** 2,
    common: fraction / baselineKgPerS,
  };
}

function perSaving(): Sensitivities {
  return { flow: 1, baseline: 1, common: 0 };
}

/** Doubts of the two runs add; those of the baseline and the calibration cancel as far as they are shared. */
function differenceUncertainty(
  one: Comparable,
  other: Comparable,
  sensitivities: (of: Comparable) => Sensitivities,
): number {
  const [a, b] = [sensitivities(one), sensitivities(other)];
  const at = baselineAt(one.inUse.baseline, one.mean.weightAtCardN);
  const otherAt = baselineAt(other.inUse.baseline, other.mean.weightAtCardN);
  const baselines = one.inUse.means.map((mean, index) => {
    const share =
      a.baseline * (at.runShares[index] ?? 0) - b.baseline * (otherAt.runShares[index] ?? 0);
    return share * mean.standardUncertaintyKgPerS;
  });
  const elasticity =
    (a.baseline * at.perElasticityKgPerS - b.baseline * otherAt.perElasticityKgPerS) *
    one.inUse.elasticityUncertainty;
  return Math.hypot(
    a.flow * one.mean.standardUncertaintyKgPerS,
    b.flow * other.mean.standardUncertaintyKgPerS,
    ...baselines,
    elasticity,
    (a.common - b.common) * one.mean.calibrationKgPerS,
  );
}
