import { UNITS, type Measure, type Unit } from './measure.ts';
import type { Instrument, Quantity } from './sheet.ts';

/** What a unit measures. Only so much of it as a flight sheet is checked by; results are worked out in aero. */
export type Dimension =
  | 'flow'
  | 'mass'
  | 'length'
  | 'area'
  | 'speed'
  | 'temperature'
  | 'ratio'
  | 'rate'
  | 'pressure'
  | 'force'
  | 'flowPerForce'
  | 'time'
  | 'density'
  | 'volume';

const DIMENSIONS: Readonly<Record<Unit, Dimension>> = {
  'lb/h': 'flow',
  'kg/h': 'flow',
  lb: 'mass',
  kg: 'mass',
  ft: 'length',
  m: 'length',
  ft2: 'area',
  m2: 'area',
  'ft/min': 'speed',
  'm/s': 'speed',
  kt: 'speed',
  degC: 'temperature',
  K: 'temperature',
  '1': 'ratio',
  '1/min': 'rate',
  inH2O: 'pressure',
  'inH2O@39.2F': 'pressure',
  'inH2O@60F': 'pressure',
  'inH2O@20C': 'pressure',
  mbar: 'pressure',
  lbf: 'force',
  N: 'force',
  'lb/h/lbf': 'flowPerForce',
  'kg/h/N': 'flowPerForce',
  s: 'time',
  'lb/USgal': 'density',
  'kg/l': 'density',
  USgal: 'volume',
  l: 'volume',
};

const BY_QUANTITY: Readonly<Record<Quantity, Dimension>> = {
  fuelFlow: 'flow',
  suctionFuelFlow: 'flow',
  fuelUsed: 'mass',
  fuelRemaining: 'mass',
  tankFuel: 'mass',
  mach: 'ratio',
  pressureAltitude: 'length',
  staticAirTemp: 'temperature',
  totalAirTemp: 'temperature',
  machRate: 'rate',
  altitudeRate: 'speed',
  probeDeficit: 'pressure',
};

export const QUANTITY_WORDS: Readonly<Record<Quantity, string>> = {
  fuelFlow: 'fuel flow',
  suctionFuelFlow: 'suction fuel flow',
  fuelUsed: 'fuel used',
  fuelRemaining: 'fuel remaining',
  tankFuel: 'tank fuel',
  mach: 'Mach',
  pressureAltitude: 'pressure altitude',
  staticAirTemp: 'static air temperature',
  totalAirTemp: 'total air temperature',
  machRate: 'Mach rate',
  altitudeRate: 'height rate',
  probeDeficit: 'probe pressure',
};

export function dimensionOf(unit: Unit): Dimension {
  return DIMENSIONS[unit];
}

/** Units that a gauge of this quantity may show. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  return UNITS.filter((unit) => DIMENSIONS[unit] === dimension);
}

export function unitsFor(quantity: Quantity): readonly Unit[] {
  return unitsOf(BY_QUANTITY[quantity]);
}

export function unitFits(instrument: Instrument): boolean {
  return dimensionOf(instrument.unit) === BY_QUANTITY[instrument.quantity];
}

/** Exact by definition: international foot and avoirdupois pound (NIST SP 811, appendix B.8). */
const SHARE_OF_BASE: Partial<Readonly<Record<Unit, number>>> = {
  lb: 0.45359237,
  kg: 1,
  'lb/h': 0.45359237,
  'kg/h': 1,
  ft: 0.3048,
  m: 1,
  ft2: 0.09290304,
  m2: 1,
  'ft/min': 0.00508,
  'm/s': 1,
  kt: 1852 / 3600,
};

/** In kg, kg/h, m, m2 or m/s, so that two fields can be held against each other; null for any other unit. */
export function inBase(measure: Measure): number | null {
  const share = SHARE_OF_BASE[measure.unit];
  return share === undefined ? null : measure.value * share;
}

const UNIT_WORDS: Partial<Readonly<Record<Unit, string>>> = {
  ft2: 'ft²',
  m2: 'm²',
  degC: '°C',
  '1': '',
  '1/min': 'a minute',
  'inH2O@39.2F': 'inH2O at 39.2 °F',
  'inH2O@60F': 'inH2O at 60 °F',
  'inH2O@20C': 'inH2O at 20 °C',
  'lb/h/lbf': 'lb/h per lbf',
  'kg/h/N': 'kg/h per N',
  'lb/USgal': 'lb per US gal',
  'kg/l': 'kg per litre',
  USgal: 'US gal',
  l: 'litres',
};

export function unitWords(unit: Unit): string {
  return UNIT_WORDS[unit] ?? unit;
}

/** A number as a person reads it: true minus, thousands parted from five digits on, no trailing zeros. */
export function numberWords(value: number): string {
  const [whole = '', decimals] = String(Number(value.toPrecision(12))).split('.');
  const digits = whole.replace('-', '');
  const parted = digits.length > 4 ? digits.replace(/\B(?=(\d{3})+$)/g, '\u00a0') : digits;
  const sign = value < 0 ? '\u2212' : '';
  return `${sign}${parted}${decimals === undefined ? '' : `.${decimals}`}`;
}

export function measureWords(measure: Measure): string {
  const unit = unitWords(measure.unit);
  return unit === '' ? numberWords(measure.value) : `${numberWords(measure.value)}\u00a0${unit}`;
}
