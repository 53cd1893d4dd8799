import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  expandedUncertainty,
  type Component,
} from './statistics/uncertainty.ts';
import { requireFinite, requirePositive } from './outcome.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from './units.ts';

/** A standard uncertainty and how well it is known; infinity for one that is stated. */
export interface Doubt {
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
}

/** A reading with suction on against a fitted baseline, and the doubts that do not cancel between them. */
export interface Comparison {
  /** Level, unaccelerated, as flown. */
  readonly levelFuelFlowKgPerS: number;
  /** The same, referred, and the baseline at the same referred weight: only their ratio enters. */
  readonly referredFuelFlowKgPerS: number;
  readonly baselineFuelFlowKgPerS: number;
  /** E = d ln baseline/d ln weight. */
  readonly weightElasticity: number;
  /** d ln baseline/dM. */
  readonly machSensitivity: number;
  readonly slopeKgPerSPerN: number;
  readonly weightN: number;
  readonly trueAirspeedMPerS: number;
  readonly temperatureK: number;
  /** Doubts of the flow itself: scatter, resolution, the difference of the flow meters between the runs. */
  readonly fuelFlowDoubtsKgPerS: readonly Doubt[];
  readonly climbRateDoubtMPerS: Doubt;
  readonly accelerationDoubtMPerS2: Doubt;
  readonly pressureRatioRelativeDoubt: Doubt;
  readonly temperatureDoubtK: Doubt;
  readonly weightDoubtN: Doubt;
  readonly machDoubt: Doubt;
  /** Of the fitted mean, not of one new reading: the readings bring their own scatter. */
  readonly baselineDoubtKgPerS: Doubt;
}

export interface Reduction {
  /** R = 1 − L/T; may be negative. */
  readonly reductionFraction: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  readonly expanded95: number;
  /** Flow doubts first, then in the order of `Comparison`; sensitivities are those of R. */
  readonly components: readonly Component[];
}

/**
 * Fuel-flow reduction and its 95 % interval, every doubt carried to the ratio by its own sensitivity.
 *
 * @throws RangeError when a flow, weight, speed or temperature is not above zero, or a doubt negative
 * @see JCGM 100:2008 clause 5. Check values: test/reference/uncertainty.json
 */
export function compareWithBaseline(of: Comparison): Reduction {
  requirePositive('level fuel flow', of.levelFuelFlowKgPerS);
  requirePositive('referred fuel flow', of.referredFuelFlowKgPerS);
  requirePositive('baseline fuel flow', of.baselineFuelFlowKgPerS);
  requirePositive('weight', of.weightN);
  requirePositive('true airspeed', of.trueAirspeedMPerS);
  requirePositive('temperature', of.temperatureK);
  requireFinite('slope', of.slopeKgPerSPerN);
  const left = of.referredFuelFlowKgPerS / of.baselineFuelFlowKgPerS;
  const perFlow = 1 / of.levelFuelFlowKgPerS;
  const perForce = (of.slopeKgPerSPerN * of.weightN) / of.levelFuelFlowKgPerS;
  const relative: readonly (readonly [sensitivity: number, doubt: Doubt])[] = [
    ...of.fuelFlowDoubtsKgPerS.map((doubt) => [perFlow, doubt] as const),
    [perForce / of.trueAirspeedMPerS, of.climbRateDoubtMPerS],
    [perForce / STANDARD_GRAVITY_M_PER_S2, of.accelerationDoubtMPerS2],
    // Pressure divides both the flow and the weight the baseline is asked at, so part of it cancels.
    [1 - of.weightElasticity, of.pressureRatioRelativeDoubt],
    [1 / (2 * of.temperatureK), of.temperatureDoubtK],
    [of.weightElasticity / of.weightN, of.weightDoubtN],
    [of.machSensitivity, of.machDoubt],
    [1 / of.baselineFuelFlowKgPerS, of.baselineDoubtKgPerS],
  ];
  const components = relative.map(([sensitivity, doubt]) => ({
    sensitivity: sensitivity * left,
    ...doubt,
  }));
  const standardUncertainty = combinedUncertainty(components);
  const degreesOfFreedom = effectiveDegreesOfFreedom(components);
  return {
    reductionFraction: 1 - left,
    standardUncertainty,
    degreesOfFreedom,
    expanded95: expandedUncertainty({ standardUncertainty, degreesOfFreedom }),
    components,
  };
}
