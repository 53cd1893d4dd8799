import { HEAT_CAPACITY_RATIO, SEA_LEVEL_PRESSURE_PA, speedOfSoundMPerS } from './atmosphere.ts';
import { requireFinite, requireNotNegative, requirePositive } from './outcome.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from './units.ts';

/*
 * From a reading to the flow the same aircraft would have needed level and unaccelerated, on any other
 * day at the same Mach number. SFTE Reference Handbook (2013), fixed-wing performance standardization.
 * Pressure and temperature ratios are ambient: engine texts often mean total conditions, a factor of
 * 1.53 at Mach 0.75. Check values: test/reference/fuelFlow.json
 */

/** A reading whose energy correction is larger than this is rejected (a product choice). */
export const LEVEL_CORRECTION_LIMIT_FRACTION = 0.03;

/**
 * Geometric climb rate from the rate of pressure altitude: warm air is taller than standard air.
 *
 * @returns m/s
 * @throws RangeError when the rate is not finite or a temperature not above zero
 */
export function geometricClimbRateMPerS({
  pressureAltitudeRateMPerS,
  temperatureK,
  standardTemperatureK,
}: {
  readonly pressureAltitudeRateMPerS: number;
  readonly temperatureK: number;
  readonly standardTemperatureK: number;
}): number {
  requireFinite('rate of pressure altitude', pressureAltitudeRateMPerS);
  requirePositive('temperature', temperatureK);
  requirePositive('standard temperature', standardTemperatureK);
  return (pressureAltitudeRateMPerS * temperatureK) / standardTemperatureK;
}

/** Rate of change of true airspeed from the drift of Mach in steady air, m/s². */
export function accelerationFromMachRate({
  machRatePerS,
  temperatureK,
}: {
  readonly machRatePerS: number;
  readonly temperatureK: number;
}): number {
  requireFinite('rate of Mach', machRatePerS);
  return machRatePerS * speedOfSoundMPerS(temperatureK);
}

/**
 * Thrust beyond drag, W (ḣ/V + V̇/g), small angles.
 *
 * @returns newtons, negative when descending or slowing
 * @throws RangeError when a rate is not finite, or weight or speed not above zero
 */
export function excessForceN({
  weightN,
  climbRateMPerS,
  accelerationMPerS2,
  trueAirspeedMPerS,
}: {
  readonly weightN: number;
  readonly climbRateMPerS: number;
  readonly accelerationMPerS2: number;
  readonly trueAirspeedMPerS: number;
}): number {
  requirePositive('weight', weightN);
  requirePositive('true airspeed', trueAirspeedMPerS);
  requireFinite('climb rate', climbRateMPerS);
  requireFinite('acceleration', accelerationMPerS2);
  return (
    weightN * (climbRateMPerS / trueAirspeedMPerS + accelerationMPerS2 / STANDARD_GRAVITY_M_PER_S2)
  );
}

/** A flow brought to level, unaccelerated flight. The number stands even when the gate is broken. */
export interface LevelFuelFlow {
  readonly fuelFlowKgPerS: number;
  /** Size of the correction as a share of the reading, never negative. */
  readonly correctionFraction: number;
  readonly tooLarge: boolean;
}

/**
 * Fuel flow without the excess force: Wf − f′X.
 *
 * @param slopeKgPerSPerN fuel a newton more thrust costs, at the temperature flown
 * @param limitFraction above it `tooLarge` is set; 0.03 unless the card says otherwise
 * @throws RangeError when flow is not above zero, slope negative or force not finite
 */
export function levelFuelFlow({
  fuelFlowKgPerS,
  slopeKgPerSPerN,
  excessForceN: excessN,
  limitFraction = LEVEL_CORRECTION_LIMIT_FRACTION,
}: {
  readonly fuelFlowKgPerS: number;
  readonly slopeKgPerSPerN: number;
  readonly excessForceN: number;
  readonly limitFraction?: number;
}): LevelFuelFlow {
  requirePositive('fuel flow', fuelFlowKgPerS);
  requireNotNegative('slope', slopeKgPerSPerN);
  requireFinite('excess force', excessN);
  const correctionKgPerS = slopeKgPerSPerN * excessN;
  const correctionFraction = Math.abs(correctionKgPerS) / fuelFlowKgPerS;
  return {
    fuelFlowKgPerS: fuelFlowKgPerS - correctionKgPerS,
    correctionFraction,
    tooLarge: correctionFraction > limitFraction,
  };
}

/**
 * Flow of the reference fuel that would have given the same heat: readings on two fuel batches differ
 * without it as if drag did.
 *
 * @param heatingValue lower heating value, in any unit: only the ratio enters
 * @throws RangeError unless all are above zero
 */
export function sameHeatFuelFlowKgPerS({
  fuelFlowKgPerS,
  heatingValue,
  referenceHeatingValue,
}: {
  readonly fuelFlowKgPerS: number;
  readonly heatingValue: number;
  readonly referenceHeatingValue: number;
}): number {
  requirePositive('fuel flow', fuelFlowKgPerS);
  requirePositive('heating value', heatingValue);
  requirePositive('reference heating value', referenceHeatingValue);
  return (fuelFlowKgPerS * heatingValue) / referenceHeatingValue;
}

interface Ratios {
  readonly pressureRatio: number;
  readonly temperatureRatio: number;
}

/**
 * Referred fuel flow Wf/(δ√θ), the same on every day at one Mach number and referred weight.
 *
 * @throws RangeError when flow is not finite or a ratio not above zero
 */
export function referredFuelFlowKgPerS({
  fuelFlowKgPerS,
  ...ratios
}: Ratios & { readonly fuelFlowKgPerS: number }): number {
  requireFinite('fuel flow', fuelFlowKgPerS);
  return fuelFlowKgPerS / referringFactor(ratios);
}

/** The inverse of `referredFuelFlowKgPerS`: the flow at another height or day. */
export function fuelFlowAtKgPerS({
  referredFuelFlowKgPerS: referredKgPerS,
  ...ratios
}: Ratios & { readonly referredFuelFlowKgPerS: number }): number {
  requireFinite('referred fuel flow', referredKgPerS);
  return referredKgPerS * referringFactor(ratios);
}

/** Referred weight W/δ, newtons. @throws RangeError unless both are above zero */
export function referredWeightN({
  weightN,
  pressureRatio,
}: {
  readonly weightN: number;
  readonly pressureRatio: number;
}): number {
  requirePositive('weight', weightN);
  requirePositive('pressure ratio', pressureRatio);
  return weightN / pressureRatio;
}

/** Lift coefficient of level flight, (W/δ)/(½γ p0 M² S). @throws RangeError unless all are above zero */
export function liftCoefficient({
  referredWeightN: referredN,
  mach,
  wingAreaM2,
}: {
  readonly referredWeightN: number;
  readonly mach: number;
  readonly wingAreaM2: number;
}): number {
  requirePositive('referred weight', referredN);
  requirePositive('Mach number', mach);
  requirePositive('wing area', wingAreaM2);
  const seaLevelDynamicPa = (HEAT_CAPACITY_RATIO / 2) * SEA_LEVEL_PRESSURE_PA * mach ** 2;
  return referredN / (seaLevelDynamicPa * wingAreaM2);
}

function referringFactor({ pressureRatio, temperatureRatio }: Ratios): number {
  requirePositive('pressure ratio', pressureRatio);
  requirePositive('temperature ratio', temperatureRatio);
  return pressureRatio * Math.sqrt(temperatureRatio);
}
