import { standardTemperatureK } from './atmosphere.ts';
import { trueFromMach } from './airspeed.ts';
import { geometricClimbRateMPerS, LEVEL_CORRECTION_LIMIT_FRACTION } from './fuelFlow.ts';
import { requireFinite, requireNotNegative, requirePositive, unavailable } from './outcome.ts';
import type { Unavailable } from './outcome.ts';
import { slopeOf, type Slope } from './statistics/slope.ts';
import { METRES_PER_FOOT, METRES_PER_SECOND_PER_KNOT, SECONDS_PER_MINUTE } from './units.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from './units.ts';

/* Whether a stretch of cruise was steady enough to be read, as it stands or after a correction. */

/** One look at an instrument. */
export interface Sample {
  readonly timeS: number;
  readonly value: number;
}

/** Looks at each instrument, in any order; the instruments need not have been read together. */
export interface CruiseSamples {
  readonly mach: readonly Sample[];
  readonly pressureAltitudeM: readonly Sample[];
  readonly staticTemperatureK: readonly Sample[];
  readonly fuelFlowKgPerS: readonly Sample[];
}

export type StabilityItem =
  | 'machRange'
  | 'altitudeRange'
  | 'temperatureRange'
  | 'fuelFlowRange'
  /** Slopes that a correction can take out, as long as it stays small. */
  | 'climb'
  | 'acceleration'
  | 'correction';

export interface StabilityLimits {
  readonly windowS: number;
  readonly fewestSamples: number;
  /** Share of the window between the first and the last look. */
  readonly leastSpanFraction: number;
  /** Greatest less least. */
  readonly machRange: number;
  readonly altitudeRangeM: number;
  readonly temperatureRangeK: number;
  /** Share of the mean flow. */
  readonly fuelFlowRangeFraction: number;
  /** Up to these nothing needs correcting. */
  readonly climbMPerS: number;
  readonly accelerationMPerS2: number;
  readonly correctionFraction: number;
}

/**
 * Common practice, from memory: Mach ± 0.005, height ± 50 ft, temperature within 1 K. Climb and acceleration
 * are what half a per cent of drag is at a lift to drag ratio of 16, Mach 0.75 and 40 000 ft.
 */
export const STABILITY_LIMITS: StabilityLimits = {
  windowS: 180,
  fewestSamples: 3,
  leastSpanFraction: 0.5,
  machRange: 0.01,
  altitudeRangeM: 100 * METRES_PER_FOOT,
  temperatureRangeK: 1,
  fuelFlowRangeFraction: 0.03,
  climbMPerS: (14 * METRES_PER_FOOT) / SECONDS_PER_MINUTE,
  accelerationMPerS2: (0.36 * METRES_PER_SECOND_PER_KNOT) / SECONDS_PER_MINUTE,
  correctionFraction: LEVEL_CORRECTION_LIMIT_FRACTION,
};

export interface Stability {
  readonly kind: 'stable' | 'correctable' | 'unstable';
  /** Every item beyond its limit, ranges first. */
  readonly failing: readonly StabilityItem[];
  readonly machRange: number;
  readonly altitudeRangeM: number;
  readonly temperatureRangeK: number;
  readonly fuelFlowRangeFraction: number;
  /** Geometric, and of true airspeed; with the doubt of either. */
  readonly climbMPerS: number;
  readonly climbStandardUncertaintyMPerS: number;
  readonly accelerationMPerS2: number;
  readonly accelerationStandardUncertaintyMPerS2: number;
  /** Share of the flow that paid for height and speed; negative when descending or slowing. */
  readonly correctionFraction: number;
}

export interface NoStability extends Unavailable<'tooFewSamples' | 'spanTooShort'> {
  readonly of: keyof CruiseSamples;
}

/**
 * Steadiness over the window that ends at `endS`.
 *
 * A slope beyond its limit leaves the stretch correctable; a range beyond it, or a correction above its
 * own limit, makes it unstable.
 *
 * @param flowPerForceShare f′W/F: the relative fuel that thrust of one weight would cost, with constant
 *   specific consumption the lift to drag ratio
 * @returns the instrument that was looked at too seldom, or over too short a part of the window
 * @throws RangeError when a number is not finite, or a Mach number, temperature or flow not above zero
 */
export function stabilityVerdict({
  samples,
  endS,
  flowPerForceShare,
  limits = STABILITY_LIMITS,
}: {
  readonly samples: CruiseSamples;
  readonly endS: number;
  readonly flowPerForceShare: number;
  readonly limits?: StabilityLimits;
}): Stability | NoStability {
  requireFinite('end of the window', endS);
  requirePositive('window', limits.windowS);
  requireNotNegative('flow for force', flowPerForceShare);
  const mach = lookAt('mach', samples, endS, limits);
  if (mach.kind === 'unavailable') return mach;
  const height = lookAt('pressureAltitudeM', samples, endS, limits);
  if (height.kind === 'unavailable') return height;
  const temperature = lookAt('staticTemperatureK', samples, endS, limits);
  if (temperature.kind === 'unavailable') return temperature;
  const flow = lookAt('fuelFlowKgPerS', samples, endS, limits);
  if (flow.kind === 'unavailable') return flow;
  const standardK = standardTemperatureK(height.slope.middle);
  const trueMPerS = trueFromMach({
    mach: mach.slope.middle,
    temperatureK: temperature.slope.middle,
  });
  const geometric = (rate: number): number =>
    geometricClimbRateMPerS({
      pressureAltitudeRateMPerS: rate,
      temperatureK: temperature.slope.middle,
      standardTemperatureK: standardK,
    });
  // V = M a(T): air that grows warmer under a steady Mach number is an acceleration too.
  const perMach = trueMPerS / mach.slope.middle;
  const perKelvin = trueMPerS / (2 * temperature.slope.middle);
  const climbMPerS = geometric(height.slope.perS);
  const accelerationMPerS2 = perMach * mach.slope.perS + perKelvin * temperature.slope.perS;
  const measured = {
    machRange: mach.range,
    altitudeRangeM: height.range,
    temperatureRangeK: temperature.range,
    fuelFlowRangeFraction: flow.range / flow.slope.middle,
    climbMPerS,
    climbStandardUncertaintyMPerS: geometric(height.slope.standardUncertainty),
    accelerationMPerS2,
    accelerationStandardUncertaintyMPerS2: Math.hypot(
      perMach * mach.slope.standardUncertainty,
      perKelvin * temperature.slope.standardUncertainty,
    ),
    correctionFraction:
      flowPerForceShare * (climbMPerS / trueMPerS + accelerationMPerS2 / STANDARD_GRAVITY_M_PER_S2),
  };
  const failing = ITEMS.filter((item) => beyond(item, measured, limits));
  const unstable = failing.some((item) => item !== 'climb' && item !== 'acceleration');
  const kind = unstable ? 'unstable' : failing.length > 0 ? 'correctable' : 'stable';
  return { kind, failing, ...measured };
}

const ITEMS: readonly StabilityItem[] = [
  'machRange',
  'altitudeRange',
  'temperatureRange',
  'fuelFlowRange',
  'climb',
  'acceleration',
  'correction',
];

function beyond(
  item: StabilityItem,
  measured: Omit<Stability, 'kind' | 'failing'>,
  limits: StabilityLimits,
): boolean {
  const over = (value: number, limit: number): boolean => Math.abs(value) > limit * (1 + ROUNDING);
  switch (item) {
    case 'machRange':
      return over(measured.machRange, limits.machRange);
    case 'altitudeRange':
      return over(measured.altitudeRangeM, limits.altitudeRangeM);
    case 'temperatureRange':
      return over(measured.temperatureRangeK, limits.temperatureRangeK);
    case 'fuelFlowRange':
      return over(measured.fuelFlowRangeFraction, limits.fuelFlowRangeFraction);
    case 'climb':
      return over(measured.climbMPerS, limits.climbMPerS);
    case 'acceleration':
      return over(measured.accelerationMPerS2, limits.accelerationMPerS2);
    case 'correction':
      return over(measured.correctionFraction, limits.correctionFraction);
  }
}

/** Displays step in hundredths: 0.755 less 0.745 must not exceed 0.01. */
const ROUNDING = 1e-9;

interface Seen {
  readonly kind: 'seen';
  readonly range: number;
  readonly slope: Slope;
}

function lookAt(
  of: keyof CruiseSamples,
  samples: CruiseSamples,
  endS: number,
  { windowS, fewestSamples, leastSpanFraction }: StabilityLimits,
): Seen | NoStability {
  const inside = samples[of].filter(({ timeS }) => timeS <= endS && timeS >= endS - windowS);
  const timesS = inside.map((sample) => sample.timeS);
  const values = inside.map((sample) => sample.value);
  if (inside.length < fewestSamples) return { ...unavailable('tooFewSamples'), of };
  if (of !== 'pressureAltitudeM') for (const value of values) requirePositive(of, value);
  const spanS = Math.max(...timesS) - Math.min(...timesS);
  if (spanS < leastSpanFraction * windowS) return { ...unavailable('spanTooShort'), of };
  const slope = slopeOf({ timesS, values });
  if (slope.kind === 'unavailable') return { ...unavailable('tooFewSamples'), of };
  return { kind: 'seen', range: Math.max(...values) - Math.min(...values), slope: slope.value };
}

/**
 * Period of the phugoid, π√2 V/g (Lanchester, from memory): readings closer than this share one swing.
 *
 * @throws RangeError unless the speed is above zero
 */
export function phugoidPeriodS(trueAirspeedMPerS: number): number {
  requirePositive('true airspeed', trueAirspeedMPerS);
  return (Math.PI * Math.SQRT2 * trueAirspeedMPerS) / STANDARD_GRAVITY_M_PER_S2;
}
