import { baselineAt, pairBaseline } from './baseline.ts';
import type { BaselineRun, BaselineValue, WeightElasticity } from './baseline.ts';
import { ready, unavailable, type Outcome } from './outcome.ts';

/** Two off runs either side of an on run further apart than this many doubts give no value: 2 √2. */
export const BRACKET_DRIFT_DOUBTS = 2 * Math.SQRT2;

/**
 * An on run between two off runs: both moved to its weight, their mean taken.
 *
 * @returns `bracketDrifts` when they differ by more than 2√2 of their doubt, that of the weight law included
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
  const [a, b] = [before, after].map((run) => baselineAt(pairBaseline(run, borrowed), weightN));
  if (a === undefined || b === undefined) throw new RangeError('a bracket has two runs');
  // Moved from either side to the middle, a wrong weight law parts the two as a drift would.
  const apartByLaw = (a.perElasticityKgPerS - b.perElasticityKgPerS) * borrowed.standardUncertainty;
  const u =
    Math.hypot(before.standardUncertaintyKgPerS, after.standardUncertaintyKgPerS, apartByLaw) /
    Math.SQRT2;
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
    machSlopeKgPerSPerMach: 0,
    perKnownMachSlope: 0,
    leverage: 0,
  });
}
