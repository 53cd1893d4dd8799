import { requireRun, type BaselineRun } from './baseline.ts';
import { ready, requireNotNegative, unavailable, type Outcome } from './outcome.ts';
import { polarDrag } from './polar.ts';
import { fitLinear } from './statistics/leastSquares.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  type Component,
} from './statistics/uncertainty.ts';

/*
 * Where no engine map is known, the suction-off runs and a drag polar say how specific consumption goes
 * with thrust: at one Mach number ln F against ln D has the slope 1 + s. Worth no more than the polar.
 */

/** What `dragReductionFromSlope` asks for. */
export interface TsfcSlope {
  /** s = d ln c/d ln T. */
  readonly slope: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
}

/** Suction-off drag of the aircraft at the condition that the runs were brought to. */
export interface CardPolar {
  readonly dynamicPressurePa: number;
  readonly wingAreaM2: number;
  /** CD0. */
  readonly zeroLiftCoefficient: number;
  /** K in CD = CD0 + K CL². */
  readonly liftFactor: number;
  /** Relative, of the share of drag that comes with lift; 0 where left out. */
  readonly liftShareRelativeUncertainty?: number;
}

/**
 * The local slope of specific consumption from the baseline itself.
 *
 * @param runs at one Mach number, all brought to one height and a standard day
 * @param trust `absolute` takes the doubts of the runs as they stand, from two runs on; `relative` lets
 *   their scatter about the line set the size, from three on
 * @returns `oneWeight` where the runs do not tell drags apart, `slopeNotUsable` where less thrust would
 *   burn no less fuel: then runs, weights or polar are wrong
 * @throws RangeError for a run or polar out of range
 */
export function tsfcSlopeFromBaseline({
  runs,
  polar,
  trust,
}: {
  readonly runs: readonly BaselineRun[];
  readonly polar: CardPolar;
  readonly trust: 'absolute' | 'relative';
}): Outcome<TsfcSlope, 'tooFewRuns' | 'oneWeight' | 'slopeNotUsable'> {
  for (const run of runs) requireRun(run);
  const { liftShareRelativeUncertainty = 0, ...aircraft } = polar;
  requireNotNegative('doubt of the lift-dependent share', liftShareRelativeUncertainty);
  if (runs.length < (trust === 'relative' ? 3 : 2)) return unavailable('tooFewRuns');
  const logDrags = runs.map(({ weightN }) => Math.log(polarDrag({ ...aircraft, weightN }).dragN));
  const middle = logDrags.reduce((total, log) => total + log, 0) / runs.length;
  const fit = fitLinear({
    // About the middle: logarithms of one aircraft's drag are all nearly alike.
    rows: logDrags.map((log) => [1, log - middle]),
    observations: runs.map((run) => Math.log(run.fuelFlowKgPerS)),
    weighting: {
      kind: trust,
      uncertainties: runs.map((run) => run.standardUncertaintyKgPerS / run.fuelFlowKgPerS),
    },
  });
  if (fit.kind === 'unavailable') return unavailable('oneWeight');
  const [, perLogDrag = 0] = fit.coefficients;
  if (!(perLogDrag > 0)) return unavailable('slopeNotUsable');
  const components: readonly Component[] = [
    {
      sensitivity: 1,
      standardUncertainty: Math.sqrt(fit.covariance[1]?.[1] ?? 0),
      degreesOfFreedom: trust === 'relative' ? fit.degreesOfFreedom : Infinity,
    },
    // The drags lie as far apart as the lift-dependent share says: the slope goes with its inverse.
    {
      sensitivity: perLogDrag,
      standardUncertainty: liftShareRelativeUncertainty,
      degreesOfFreedom: Infinity,
    },
  ];
  return ready({
    slope: perLogDrag - 1,
    standardUncertainty: combinedUncertainty(components),
    degreesOfFreedom: effectiveDegreesOfFreedom(components),
  });
}
