import {
  HEAT_CAPACITY_RATIO,
  SEA_LEVEL_PRESSURE_PA,
  SEA_LEVEL_TEMPERATURE_K,
  speedOfSoundMPerS,
} from './atmosphere.ts';
import {
  ready,
  requireNotNegative,
  requirePositive,
  unavailable,
  type Outcome,
} from './outcome.ts';

/*
 * Subsonic relations of NACA Report 1135 and the pitot-static chapter of the SFTE Reference Handbook
 * (2013). Speeds are corrected for position error before they come here.
 * Check values: test/reference/airspeed.json
 */
const DYNAMIC_FACTOR = HEAT_CAPACITY_RATIO / 2;
const TEMPERATURE_FACTOR = (HEAT_CAPACITY_RATIO - 1) / 2;
const PRESSURE_EXPONENT = HEAT_CAPACITY_RATIO / (HEAT_CAPACITY_RATIO - 1);
const SEA_LEVEL_SPEED_OF_SOUND_M_PER_S = speedOfSoundMPerS(SEA_LEVEL_TEMPERATURE_K);

interface MachAndPressure {
  readonly mach: number;
  readonly pressurePa: number;
}

/** q = ½γpM², pascals. @throws RangeError for a negative Mach number or a pressure not above zero */
export function dynamicPressurePa({ mach, pressurePa }: MachAndPressure): number {
  requireNotNegative('Mach number', mach);
  requirePositive('static pressure', pressurePa);
  return DYNAMIC_FACTOR * pressurePa * mach ** 2;
}

/** qc = pt − p for Mach 0 to 1, pascals. @throws RangeError outside */
export function impactPressurePa({ mach, pressurePa }: MachAndPressure): number {
  requireSubsonic(mach);
  requirePositive('static pressure', pressurePa);
  return pressurePa * impactRatio(mach);
}

/**
 * qc of a calibrated airspeed, pascals.
 *
 * @throws RangeError for a negative speed or one above the sea-level speed of sound
 */
export function impactPressurePaOfCalibrated(calibratedMPerS: number): number {
  return impactPressurePa({
    mach: calibratedMPerS / SEA_LEVEL_SPEED_OF_SOUND_M_PER_S,
    pressurePa: SEA_LEVEL_PRESSURE_PA,
  });
}

/**
 * Mach number of an impact pressure.
 *
 * @returns `supersonic` above qc/p = 0.8929, where the shock relation would be needed
 * @throws RangeError for a negative impact pressure or a static pressure not above zero
 */
export function machFromImpactPressure({
  impactPressurePa: impactPa,
  pressurePa,
}: {
  readonly impactPressurePa: number;
  readonly pressurePa: number;
}): Outcome<number, 'supersonic'> {
  requireNotNegative('impact pressure', impactPa);
  requirePositive('static pressure', pressurePa);
  const ratio = impactPa / pressurePa;
  if (ratio > impactRatio(1)) return unavailable('supersonic');
  const temperatureRise = (1 + ratio) ** (1 / PRESSURE_EXPONENT) - 1;
  return ready(Math.sqrt(temperatureRise / TEMPERATURE_FACTOR));
}

/** Mach number of a calibrated airspeed at a static pressure; no temperature enters. Fails as above. */
export function machFromCalibrated({
  calibratedMPerS,
  pressurePa,
}: {
  readonly calibratedMPerS: number;
  readonly pressurePa: number;
}): Outcome<number, 'supersonic'> {
  if (calibratedMPerS > SEA_LEVEL_SPEED_OF_SOUND_M_PER_S) return unavailable('supersonic');
  return machFromImpactPressure({
    impactPressurePa: impactPressurePaOfCalibrated(calibratedMPerS),
    pressurePa,
  });
}

/**
 * Calibrated airspeed, m/s.
 *
 * @returns `supersonic` where it would pass the sea-level speed of sound
 * @throws RangeError for a Mach number outside 0 to 1 or a pressure not above zero
 */
export function calibratedFromMach(speeds: MachAndPressure): Outcome<number, 'supersonic'> {
  const seaLevelMach = machFromImpactPressure({
    impactPressurePa: impactPressurePa(speeds),
    pressurePa: SEA_LEVEL_PRESSURE_PA,
  });
  return seaLevelMach.kind === 'unavailable'
    ? seaLevelMach
    : ready(seaLevelMach.value * SEA_LEVEL_SPEED_OF_SOUND_M_PER_S);
}

/** Equivalent airspeed M a0 √δ, m/s. @throws RangeError for a negative Mach number or pressure */
export function equivalentFromMach({ mach, pressurePa }: MachAndPressure): number {
  requireNotNegative('Mach number', mach);
  requirePositive('static pressure', pressurePa);
  return mach * SEA_LEVEL_SPEED_OF_SOUND_M_PER_S * Math.sqrt(pressurePa / SEA_LEVEL_PRESSURE_PA);
}

/** True airspeed, m/s. @throws RangeError for a negative Mach number or a temperature not above zero */
export function trueFromMach({
  mach,
  temperatureK,
}: {
  readonly mach: number;
  readonly temperatureK: number;
}): number {
  requireNotNegative('Mach number', mach);
  return mach * speedOfSoundMPerS(temperatureK);
}

/** Mach number of a true airspeed. @throws RangeError for a negative speed or temperature not above zero */
export function machFromTrue({
  trueMPerS,
  temperatureK,
}: {
  readonly trueMPerS: number;
  readonly temperatureK: number;
}): number {
  requireNotNegative('true airspeed', trueMPerS);
  return trueMPerS / speedOfSoundMPerS(temperatureK);
}

/**
 * Total temperature a probe shows in air at `staticTemperatureK`.
 *
 * @param recoveryFactor 0 to 1, from the calibration of the probe
 * @throws RangeError for a factor outside, a negative Mach number or a temperature not above zero
 */
export function totalTemperatureK({
  staticTemperatureK,
  mach,
  recoveryFactor,
}: {
  readonly staticTemperatureK: number;
  readonly mach: number;
  readonly recoveryFactor: number;
}): number {
  requirePositive('static temperature', staticTemperatureK);
  return staticTemperatureK * recoveredRatio(mach, recoveryFactor);
}

/** Static from indicated total temperature: the inverse of `totalTemperatureK`. */
export function staticTemperatureK({
  totalTemperatureK: totalK,
  mach,
  recoveryFactor,
}: {
  readonly totalTemperatureK: number;
  readonly mach: number;
  readonly recoveryFactor: number;
}): number {
  requirePositive('total temperature', totalK);
  return totalK / recoveredRatio(mach, recoveryFactor);
}

function impactRatio(mach: number): number {
  return (1 + TEMPERATURE_FACTOR * mach ** 2) ** PRESSURE_EXPONENT - 1;
}

function recoveredRatio(mach: number, recoveryFactor: number): number {
  requireNotNegative('Mach number', mach);
  if (!(recoveryFactor >= 0 && recoveryFactor <= 1)) {
    throw new RangeError(`recovery factor must be 0 to 1, got ${recoveryFactor}`);
  }
  return 1 + recoveryFactor * TEMPERATURE_FACTOR * mach ** 2;
}

function requireSubsonic(mach: number): void {
  if (!(mach >= 0 && mach <= 1)) throw new RangeError(`Mach number must be 0 to 1, got ${mach}`);
}
