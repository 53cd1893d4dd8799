import { requireFinite, requirePositive, unavailable, type Unavailable } from './outcome.ts';
import { METRES_PER_FOOT, STANDARD_GRAVITY_M_PER_S2 } from './units.ts';

/*
 * U.S. Standard Atmosphere, 1976 (NOAA/NASA/USAF), defining constants. Heights are geopotential: that is
 * what an altimeter shows; the standard's printed tables are entered at geometric height.
 * Check values: test/reference/atmosphere.json
 */
export const GAS_CONSTANT_J_PER_KMOL_K = 8314.32;
export const MOLAR_MASS_KG_PER_KMOL = 28.9644;
export const SEA_LEVEL_TEMPERATURE_K = 288.15;
export const SEA_LEVEL_PRESSURE_PA = 101_325;
export const EARTH_RADIUS_M = 6_356_766;
export const HEAT_CAPACITY_RATIO = 1.4;
export const SUTHERLAND_COEFFICIENT = 1.458e-6;
export const SUTHERLAND_TEMPERATURE_K = 110.4;
export const TROPOSPHERE_LAPSE_K_PER_M = -0.0065;
export const UPPER_LAPSE_K_PER_M = 0.001;
export const TROPOPAUSE_M = 11_000;
export const ISOTHERMAL_TOP_M = 20_000;
export const TOP_M = 32_000;
/** The printed tables start at geometric −5000 m, which is geopotential −5003.94 m. */
export const BOTTOM_M = -5004;

/** Pressure altitudes this product answers for; outside them it gives a reason (a product choice). */
export const LOWEST_PRESSURE_ALTITUDE_M = -1000 * METRES_PER_FOOT;
export const HIGHEST_PRESSURE_ALTITUDE_M = 65_000 * METRES_PER_FOOT;
/** Air further than this from the standard day is kept and flagged (a product choice, from memory). */
export const TEMPERATURE_DEPARTURE_LIMIT_K = 35;

export const SPECIFIC_GAS_CONSTANT_J_PER_KG_K = GAS_CONSTANT_J_PER_KMOL_K / MOLAR_MASS_KG_PER_KMOL;
/** g0/R: the lapse at which density would not change with height. */
const HYDROSTATIC_K_PER_M = STANDARD_GRAVITY_M_PER_S2 / SPECIFIC_GAS_CONSTANT_J_PER_KG_K;

interface Layer {
  readonly baseM: number;
  readonly baseTemperatureK: number;
  readonly basePressurePa: number;
  readonly lapseKPerM: number;
}

const TROPOSPHERE: Layer = {
  baseM: 0,
  baseTemperatureK: SEA_LEVEL_TEMPERATURE_K,
  basePressurePa: SEA_LEVEL_PRESSURE_PA,
  lapseKPerM: TROPOSPHERE_LAPSE_K_PER_M,
};
const ISOTHERMAL = layerAbove(TROPOSPHERE, TROPOPAUSE_M, 0);
const UPPER = layerAbove(ISOTHERMAL, ISOTHERMAL_TOP_M, UPPER_LAPSE_K_PER_M);

/** The air an aeroplane flies in: pressure from the altimeter, temperature from the thermometer. */
export interface AirState {
  readonly kind: 'air';
  readonly pressureAltitudeM: number;
  readonly pressurePa: number;
  readonly temperatureK: number;
  readonly standardTemperatureK: number;
  readonly densityKgPerM3: number;
  readonly speedOfSoundMPerS: number;
  readonly dynamicViscosityPaS: number;
  /** δ, ambient. */
  readonly pressureRatio: number;
  /** θ, ambient. */
  readonly temperatureRatio: number;
  /** σ = δ/θ. */
  readonly densityRatio: number;
  /** More than 35 K from the standard day: the number stands, the thermometer wants a look. */
  readonly temperatureSuspect: boolean;
}

export type NoAir = Unavailable<'altitudeOutsideRange' | 'temperatureNotPhysical'>;

/**
 * State of the air at a pressure altitude of −1000 to 65 000 ft.
 *
 * @param staticTemperatureK measured; left out, the standard day is meant
 * @returns a reason outside that range, or for a temperature at or below absolute zero
 * @throws RangeError when a number is not finite
 * @see U.S. Standard Atmosphere, 1976; SFTE Reference Handbook (2013) for the non-standard day
 */
export function airState({
  pressureAltitudeM,
  staticTemperatureK,
}: {
  readonly pressureAltitudeM: number;
  readonly staticTemperatureK?: number;
}): AirState | NoAir {
  requireFinite('pressure altitude', pressureAltitudeM);
  if (
    pressureAltitudeM < LOWEST_PRESSURE_ALTITUDE_M ||
    pressureAltitudeM > HIGHEST_PRESSURE_ALTITUDE_M
  ) {
    return unavailable('altitudeOutsideRange');
  }
  const standardK = standardTemperatureK(pressureAltitudeM);
  const temperatureK = staticTemperatureK ?? standardK;
  requireFinite('static temperature', temperatureK);
  if (temperatureK <= 0) return unavailable('temperatureNotPhysical');
  const pressurePa = standardPressurePa(pressureAltitudeM);
  const pressureRatio = pressurePa / SEA_LEVEL_PRESSURE_PA;
  const temperatureRatio = temperatureK / SEA_LEVEL_TEMPERATURE_K;
  return {
    kind: 'air',
    pressureAltitudeM,
    pressurePa,
    temperatureK,
    standardTemperatureK: standardK,
    densityKgPerM3: densityKgPerM3({ pressurePa, temperatureK }),
    speedOfSoundMPerS: speedOfSoundMPerS(temperatureK),
    dynamicViscosityPaS: dynamicViscosityPaS(temperatureK),
    pressureRatio,
    temperatureRatio,
    densityRatio: pressureRatio / temperatureRatio,
    temperatureSuspect: Math.abs(temperatureK - standardK) > TEMPERATURE_DEPARTURE_LIMIT_K,
  };
}

/**
 * Temperature of the standard day.
 *
 * @param geopotentialM metres, −5004 to 32 000; a pressure altitude is one
 * @returns kelvin
 * @throws RangeError outside that range; it does not extrapolate
 */
export function standardTemperatureK(geopotentialM: number): number {
  const layer = layerAt(geopotentialM);
  return layer.baseTemperatureK + layer.lapseKPerM * (geopotentialM - layer.baseM);
}

/**
 * Static pressure of the standard day: what a pressure altitude means, whatever the day.
 *
 * @param geopotentialM metres, −5004 to 32 000
 * @returns pascals
 * @throws RangeError outside that range
 */
export function standardPressurePa(geopotentialM: number): number {
  return pressureIn(layerAt(geopotentialM), geopotentialM);
}

/**
 * Pressure altitude of a static pressure: the inverse of `standardPressurePa`.
 *
 * @param pressurePa 868 to 177 800 Pa
 * @returns metres
 * @throws RangeError outside that range
 */
export function pressureAltitudeM(pressurePa: number): number {
  const highestPa = pressureIn(TROPOSPHERE, BOTTOM_M);
  const lowestPa = pressureIn(UPPER, TOP_M);
  if (!(pressurePa >= lowestPa && pressurePa <= highestPa)) {
    throw new RangeError(
      `static pressure must be ${lowestPa} to ${highestPa} Pa, got ${pressurePa} Pa`,
    );
  }
  const layer =
    pressurePa >= ISOTHERMAL.basePressurePa
      ? TROPOSPHERE
      : pressurePa >= UPPER.basePressurePa
        ? ISOTHERMAL
        : UPPER;
  const { baseM, baseTemperatureK, basePressurePa, lapseKPerM } = layer;
  const logRatio = Math.log(basePressurePa / pressurePa);
  if (lapseKPerM === 0) return baseM + (baseTemperatureK / HYDROSTATIC_K_PER_M) * logRatio;
  const exponent = lapseKPerM / HYDROSTATIC_K_PER_M;
  return baseM + (baseTemperatureK / lapseKPerM) * Math.expm1(exponent * logRatio);
}

/**
 * Relative fall of pressure a metre of pressure altitude, g0/(R Tstd): carries a doubt of height to one of
 * pressure, 4.81e-5 a foot at 40 000 ft.
 *
 * @throws RangeError outside −5004 to 32 000 m
 */
export function pressureFallPerM(geopotentialM: number): number {
  return HYDROSTATIC_K_PER_M / standardTemperatureK(geopotentialM);
}

/**
 * Density of dry air as a perfect gas.
 *
 * @throws RangeError unless both are finite and above zero
 */
export function densityKgPerM3({
  pressurePa,
  temperatureK,
}: {
  readonly pressurePa: number;
  readonly temperatureK: number;
}): number {
  requirePositive('pressure', pressurePa);
  requirePositive('temperature', temperatureK);
  return pressurePa / (SPECIFIC_GAS_CONSTANT_J_PER_KG_K * temperatureK);
}

/** Speed of sound in dry air. @throws RangeError unless the temperature is finite and above zero */
export function speedOfSoundMPerS(temperatureK: number): number {
  requirePositive('temperature', temperatureK);
  return Math.sqrt(HEAT_CAPACITY_RATIO * SPECIFIC_GAS_CONSTANT_J_PER_KG_K * temperatureK);
}

/** Dynamic viscosity by Sutherland's law. @throws RangeError unless the temperature is finite and above zero */
export function dynamicViscosityPaS(temperatureK: number): number {
  requirePositive('temperature', temperatureK);
  return (SUTHERLAND_COEFFICIENT * temperatureK ** 1.5) / (temperatureK + SUTHERLAND_TEMPERATURE_K);
}

/** Geopotential from geometric height, metres. @throws RangeError at or below the centre of the earth */
export function geopotentialAltitudeM(geometricM: number): number {
  requirePositive('earth radius plus height', EARTH_RADIUS_M + geometricM);
  return (EARTH_RADIUS_M * geometricM) / (EARTH_RADIUS_M + geometricM);
}

/** Geometric from geopotential height, metres. @throws RangeError at or above one earth radius */
export function geometricAltitudeM(geopotentialM: number): number {
  requirePositive('earth radius less height', EARTH_RADIUS_M - geopotentialM);
  return (EARTH_RADIUS_M * geopotentialM) / (EARTH_RADIUS_M - geopotentialM);
}

function layerAt(geopotentialM: number): Layer {
  if (!(geopotentialM >= BOTTOM_M && geopotentialM <= TOP_M)) {
    throw new RangeError(`altitude must be ${BOTTOM_M} to ${TOP_M} m, got ${geopotentialM} m`);
  }
  if (geopotentialM <= ISOTHERMAL.baseM) return TROPOSPHERE;
  return geopotentialM <= UPPER.baseM ? ISOTHERMAL : UPPER;
}

function pressureIn(layer: Layer, geopotentialM: number): number {
  const { baseM, baseTemperatureK, basePressurePa, lapseKPerM } = layer;
  if (lapseKPerM === 0) {
    return (
      basePressurePa * Math.exp((-HYDROSTATIC_K_PER_M * (geopotentialM - baseM)) / baseTemperatureK)
    );
  }
  const temperatureK = baseTemperatureK + lapseKPerM * (geopotentialM - baseM);
  return basePressurePa * (baseTemperatureK / temperatureK) ** (HYDROSTATIC_K_PER_M / lapseKPerM);
}

function layerAbove(below: Layer, baseM: number, lapseKPerM: number): Layer {
  return {
    baseM,
    baseTemperatureK: below.baseTemperatureK + below.lapseKPerM * (baseM - below.baseM),
    basePressurePa: pressureIn(below, baseM),
    lapseKPerM,
  };
}
