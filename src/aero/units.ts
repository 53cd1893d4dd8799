import { ready, requireFinite, requirePositive, unavailable, type Outcome } from './outcome.ts';

/*
 * Factors are exact by definition (NIST Special Publication 811, appendix B) unless a line says
 * otherwise. Check values: test/reference/units.json
 */
export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_INCH = 0.0254;
export const METRES_PER_NAUTICAL_MILE = 1852;
export const KILOGRAMS_PER_POUND = 0.45359237;
export const CUBIC_METRES_PER_US_GALLON = 3.785411784e-3;
export const CUBIC_METRES_PER_IMPERIAL_GALLON = 4.54609e-3;
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;
export const ICE_POINT_K = 273.15;
export const SECONDS_PER_MINUTE = 60;
export const SECONDS_PER_HOUR = 3600;
export const PASCALS_PER_MILLIBAR = 100;
export const PASCALS_PER_STANDARD_ATMOSPHERE = 101_325;

export const METRES_PER_SECOND_PER_KNOT = METRES_PER_NAUTICAL_MILE / SECONDS_PER_HOUR;
export const NEWTONS_PER_POUND_FORCE = KILOGRAMS_PER_POUND * STANDARD_GRAVITY_M_PER_S2;
export const KILOGRAMS_PER_SLUG =
  (KILOGRAMS_PER_POUND * STANDARD_GRAVITY_M_PER_S2) / METRES_PER_FOOT;
export const PASCALS_PER_PSI = NEWTONS_PER_POUND_FORCE / METRES_PER_INCH ** 2;

/** Conventional inch of water: density 1000 kg/m³ and standard gravity, exactly. */
export const PASCALS_PER_INCH_OF_WATER = METRES_PER_INCH * 1000 * STANDARD_GRAVITY_M_PER_S2;
/** Inch of water at 39.2 °F: measured water density, as printed by NIST. */
export const PASCALS_PER_INCH_OF_WATER_39F = 249.082;
/** Inch of water at 60 °F: measured water density, as printed by NIST. */
export const PASCALS_PER_INCH_OF_WATER_60F = 248.84;
/** Inch of water at 20 °C, from a water density of 998.2071 kg/m³ (the density from memory). */
export const PASCALS_PER_INCH_OF_WATER_20C = 248.642;

/** Density behind the conventional millimetre of mercury, exact by convention. */
export const CONVENTIONAL_MERCURY_DENSITY_KG_PER_M3 = 13_595.1;
export const PASCALS_PER_INCH_OF_MERCURY =
  METRES_PER_INCH * CONVENTIONAL_MERCURY_DENSITY_KG_PER_M3 * STANDARD_GRAVITY_M_PER_S2;
/** Inch of mercury at 32 °F, as printed by NIST. */
export const PASCALS_PER_INCH_OF_MERCURY_32F = 3386.38;
/** Inch of mercury at 60 °F, as printed by NIST. */
export const PASCALS_PER_INCH_OF_MERCURY_60F = 3376.85;

export type Dimension =
  | 'mass'
  | 'massFlow'
  | 'length'
  | 'speed'
  | 'acceleration'
  | 'area'
  | 'volume'
  | 'density'
  | 'temperature'
  | 'pressure'
  | 'force'
  | 'angle'
  | 'ratio'
  | 'perSecond'
  | 'time';

interface Scale {
  readonly dimension: Dimension;
  /** SI units in one of this unit. */
  readonly factor: number;
  /** SI value of this unit's zero. */
  readonly zero?: number;
}

const RANKINE_K = 5 / 9;

const SCALES = {
  lb: { dimension: 'mass', factor: KILOGRAMS_PER_POUND },
  kg: { dimension: 'mass', factor: 1 },
  slug: { dimension: 'mass', factor: KILOGRAMS_PER_SLUG },
  'lb/h': { dimension: 'massFlow', factor: KILOGRAMS_PER_POUND / SECONDS_PER_HOUR },
  'kg/h': { dimension: 'massFlow', factor: 1 / SECONDS_PER_HOUR },
  in: { dimension: 'length', factor: METRES_PER_INCH },
  ft: { dimension: 'length', factor: METRES_PER_FOOT },
  m: { dimension: 'length', factor: 1 },
  nmi: { dimension: 'length', factor: METRES_PER_NAUTICAL_MILE },
  'ft/min': { dimension: 'speed', factor: METRES_PER_FOOT / SECONDS_PER_MINUTE },
  'm/s': { dimension: 'speed', factor: 1 },
  kt: { dimension: 'speed', factor: METRES_PER_SECOND_PER_KNOT },
  'kt/min': {
    dimension: 'acceleration',
    factor: METRES_PER_SECOND_PER_KNOT / SECONDS_PER_MINUTE,
  },
  'm/s2': { dimension: 'acceleration', factor: 1 },
  ft2: { dimension: 'area', factor: METRES_PER_FOOT ** 2 },
  m2: { dimension: 'area', factor: 1 },
  USgal: { dimension: 'volume', factor: CUBIC_METRES_PER_US_GALLON },
  l: { dimension: 'volume', factor: 1e-3 },
  impgal: { dimension: 'volume', factor: CUBIC_METRES_PER_IMPERIAL_GALLON },
  m3: { dimension: 'volume', factor: 1 },
  'kg/m3': { dimension: 'density', factor: 1 },
  'kg/l': { dimension: 'density', factor: 1e3 },
  'lb/USgal': { dimension: 'density', factor: KILOGRAMS_PER_POUND / CUBIC_METRES_PER_US_GALLON },
  degC: { dimension: 'temperature', factor: 1, zero: ICE_POINT_K },
  degF: { dimension: 'temperature', factor: RANKINE_K, zero: ICE_POINT_K - 32 * RANKINE_K },
  K: { dimension: 'temperature', factor: 1 },
  inH2O: { dimension: 'pressure', factor: PASCALS_PER_INCH_OF_WATER },
  'inH2O@39.2F': { dimension: 'pressure', factor: PASCALS_PER_INCH_OF_WATER_39F },
  'inH2O@60F': { dimension: 'pressure', factor: PASCALS_PER_INCH_OF_WATER_60F },
  'inH2O@20C': { dimension: 'pressure', factor: PASCALS_PER_INCH_OF_WATER_20C },
  mbar: { dimension: 'pressure', factor: PASCALS_PER_MILLIBAR },
  hPa: { dimension: 'pressure', factor: PASCALS_PER_MILLIBAR },
  Pa: { dimension: 'pressure', factor: 1 },
  psi: { dimension: 'pressure', factor: PASCALS_PER_PSI },
  inHg: { dimension: 'pressure', factor: PASCALS_PER_INCH_OF_MERCURY },
  'inHg@32F': { dimension: 'pressure', factor: PASCALS_PER_INCH_OF_MERCURY_32F },
  'inHg@60F': { dimension: 'pressure', factor: PASCALS_PER_INCH_OF_MERCURY_60F },
  lbf: { dimension: 'force', factor: NEWTONS_PER_POUND_FORCE },
  N: { dimension: 'force', factor: 1 },
  deg: { dimension: 'angle', factor: Math.PI / 180 },
  '1': { dimension: 'ratio', factor: 1 },
  '%': { dimension: 'ratio', factor: 0.01 },
  '1/min': { dimension: 'perSecond', factor: 1 / SECONDS_PER_MINUTE },
  s: { dimension: 'time', factor: 1 },
  min: { dimension: 'time', factor: SECONDS_PER_MINUTE },
  h: { dimension: 'time', factor: SECONDS_PER_HOUR },
} as const satisfies Record<string, Scale>;

/** A unit whose SI value needs nothing but the number itself. */
export type FixedUnit = keyof typeof SCALES;

/** Every unit an instrument may be marked in. A volume flow becomes a mass flow only with a fuel density. */
export type Unit = FixedUnit | 'USgal/h';

/** What a conversion is asked. The density serves `USgal/h` alone. */
export interface UnitQuestion {
  readonly value: number;
  readonly unit: Unit;
  readonly fuelDensityKgPerM3?: number;
}

export const UNITS: readonly Unit[] = [...fixedUnits(), 'USgal/h'];

export function isUnit(text: string): text is Unit {
  return text === 'USgal/h' || isFixedUnit(text);
}

export function dimensionOf(unit: Unit): Dimension {
  return unit === 'USgal/h' ? 'massFlow' : SCALES[unit].dimension;
}

/**
 * A gauge reading in SI: kg, kg/s, m, m/s, m², K, Pa, N, rad, s, and shares of one for percent.
 *
 * @returns `needsFuelDensity` for a volume flow without a measured density: a gallon is not a mass
 * @throws RangeError when the value is not finite or the density not above zero
 */
export function toSi(
  question: UnitQuestion,
): Outcome<{ readonly value: number; readonly dimension: Dimension }, 'needsFuelDensity'> {
  const scale = scaleOf(question);
  if (scale === undefined) return unavailable('needsFuelDensity');
  const value = question.value * scale.factor + (scale.zero ?? 0);
  return ready({ value, dimension: scale.dimension });
}

/** The reading a gauge in `unit` would show for an SI value. Fails as `toSi` does. */
export function fromSi(question: UnitQuestion): Outcome<number, 'needsFuelDensity'> {
  const scale = scaleOf(question);
  if (scale === undefined) return unavailable('needsFuelDensity');
  return ready((question.value - (scale.zero ?? 0)) / scale.factor);
}

/** A step, a doubt or a correction in SI: as `toSi`, but 1 °C is 1 K, not 274.15 K. */
export function differenceToSi(question: UnitQuestion): Outcome<number, 'needsFuelDensity'> {
  const scale = scaleOf(question);
  return scale === undefined
    ? unavailable('needsFuelDensity')
    : ready(question.value * scale.factor);
}

/** The inverse of `differenceToSi`. */
export function differenceFromSi(question: UnitQuestion): Outcome<number, 'needsFuelDensity'> {
  const scale = scaleOf(question);
  return scale === undefined
    ? unavailable('needsFuelDensity')
    : ready(question.value / scale.factor);
}

function fixedUnits(): readonly FixedUnit[] {
  return Object.keys(SCALES).filter(isFixedUnit);
}

function isFixedUnit(text: string): text is FixedUnit {
  return Object.hasOwn(SCALES, text);
}

function scaleOf({ value, unit, fuelDensityKgPerM3 }: UnitQuestion): Scale | undefined {
  requireFinite('value', value);
  if (unit !== 'USgal/h') return SCALES[unit];
  if (fuelDensityKgPerM3 === undefined) return undefined;
  requirePositive('fuel density', fuelDensityKgPerM3);
  const factor = (CUBIC_METRES_PER_US_GALLON * fuelDensityKgPerM3) / SECONDS_PER_HOUR;
  return { dimension: 'massFlow', factor };
}
