import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as conversions from '../../src/aero/conversions.ts';
import {
  differenceFromSi,
  differenceToSi,
  dimensionOf,
  fromSi,
  isUnit,
  toSi,
  UNITS,
  type Dimension,
  type Unit,
} from '../../src/aero/units.ts';
import { valueOf } from './referenceRow.ts';

/** One of each unit in SI, from NIST SP 811 appendix B and the exact definitions, 7 digits or exact. */
const ONE: Readonly<Record<Unit, readonly [si: number, dimension: Dimension]>> = {
  lb: [0.45359237, 'mass'],
  kg: [1, 'mass'],
  slug: [14.59390294, 'mass'],
  'lb/h': [1.25997881e-4, 'massFlow'],
  'kg/h': [2.777777778e-4, 'massFlow'],
  // At 800 kg/m³ a US gallon holds 3.0283294272 kg.
  'USgal/h': [8.412026187e-4, 'massFlow'],
  in: [0.0254, 'length'],
  ft: [0.3048, 'length'],
  m: [1, 'length'],
  nmi: [1852, 'length'],
  'ft/min': [0.00508, 'speed'],
  'm/s': [1, 'speed'],
  kt: [0.5144444444, 'speed'],
  'kt/min': [0.008574074074, 'acceleration'],
  'm/s2': [1, 'acceleration'],
  ft2: [0.09290304, 'area'],
  m2: [1, 'area'],
  USgal: [0.003785411784, 'volume'],
  l: [0.001, 'volume'],
  impgal: [0.00454609, 'volume'],
  m3: [1, 'volume'],
  'kg/m3': [1, 'density'],
  'kg/l': [1000, 'density'],
  'lb/USgal': [119.8264273, 'density'],
  degC: [274.15, 'temperature'],
  degF: [255.9277778, 'temperature'],
  K: [1, 'temperature'],
  inH2O: [249.08891, 'pressure'],
  'inH2O@39.2F': [249.082, 'pressure'],
  'inH2O@60F': [248.84, 'pressure'],
  'inH2O@20C': [248.642, 'pressure'],
  mbar: [100, 'pressure'],
  hPa: [100, 'pressure'],
  Pa: [1, 'pressure'],
  psi: [6894.757293, 'pressure'],
  inHg: [3386.38864, 'pressure'],
  'inHg@32F': [3386.38, 'pressure'],
  'inHg@60F': [3376.85, 'pressure'],
  lbf: [4.448221615, 'force'],
  N: [1, 'force'],
  deg: [0.01745329252, 'angle'],
  '1': [1, 'ratio'],
  '%': [0.01, 'ratio'],
  '1/min': [0.01666666667, 'perSecond'],
  s: [1, 'time'],
  min: [60, 'time'],
  h: [3600, 'time'],
};

const fuelDensityKgPerM3 = 800;
const anyUnit = fc.constantFrom(...UNITS);
const anyReading = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('units', () => {
  it('are all in the table of this test', () => {
    expect(UNITS.toSorted()).toEqual(Object.keys(ONE).toSorted());
  });

  it.each(UNITS.map((unit) => [unit]))('one %s has its published size and dimension', (unit) => {
    const [size, dimension] = ONE[unit];
    const found = valueOf(toSi({ value: 1, unit, fuelDensityKgPerM3 }));
    expect(Math.abs(found.value - size)).toBeLessThanOrEqual(1e-8 * size);
    expect(found.dimension).toBe(dimension);
    expect(dimensionOf(unit)).toBe(dimension);
  });

  it('come back as they went', () => {
    fc.assert(
      fc.property(anyUnit, anyReading, (unit, value) => {
        const si = valueOf(toSi({ value, unit, fuelDensityKgPerM3 })).value;
        const back = valueOf(fromSi({ value: si, unit, fuelDensityKgPerM3 }));
        // Zero of a temperature scale: some 300 K of rounding either way.
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * (Math.abs(value) + 1000));
        const step = valueOf(differenceToSi({ value, unit, fuelDensityKgPerM3 }));
        const stepBack = valueOf(differenceFromSi({ value: step, unit, fuelDensityKgPerM3 }));
        expect(Math.abs(stepBack - value)).toBeLessThanOrEqual(1e-15 * Math.abs(value) + 1e-300);
      }),
    );
  });

  it('a difference of two readings is the difference of their SI values', () => {
    fc.assert(
      fc.property(anyUnit, anyReading, anyReading, (unit, a, b) => {
        const of = (value: number) => valueOf(toSi({ value, unit, fuelDensityKgPerM3 })).value;
        const step = valueOf(differenceToSi({ value: a - b, unit, fuelDensityKgPerM3 }));
        const scale = Math.abs(of(a)) + Math.abs(of(b)) + 1;
        expect(Math.abs(of(a) - of(b) - step)).toBeLessThanOrEqual(1e-12 * scale);
      }),
    );
  });

  it('a step of half a degree Celsius is half a kelvin', () => {
    expect(differenceToSi({ value: 0.5, unit: 'degC' })).toEqual({ kind: 'ready', value: 0.5 });
  });

  it('a volume flow is no mass flow until the density was measured', () => {
    const noDensity = { kind: 'unavailable', because: 'needsFuelDensity' };
    expect(toSi({ value: 500, unit: 'USgal/h' })).toEqual(noDensity);
    expect(fromSi({ value: 0.4, unit: 'USgal/h' })).toEqual(noDensity);
    expect(differenceToSi({ value: 1, unit: 'USgal/h' })).toEqual(noDensity);
    expect(differenceFromSi({ value: 1, unit: 'USgal/h' })).toEqual(noDensity);
  });

  it('knows its own spellings and no others', () => {
    expect(UNITS.every(isUnit)).toBe(true);
    for (const text of ['', 'LB/H', 'lbs', 'toString', 'inH2O@25C', 'gal/h']) {
      expect(isUnit(text), text).toBe(false);
    }
  });

  it.each([Number.NaN, Infinity])('refuses %d', (value) => {
    expect(() => toSi({ value, unit: 'lb' })).toThrow(RangeError);
    expect(() => toSi({ value: 1, unit: 'USgal/h', fuelDensityKgPerM3: value })).toThrow(
      RangeError,
    );
  });
});

describe('named conversions', () => {
  const pairs = [
    ['lb', conversions.kilogramsFromPounds, conversions.poundsFromKilograms],
    ['lb/h', conversions.kgPerSFromLbPerHour, conversions.lbPerHourFromKgPerS],
    ['ft', conversions.metresFromFeet, conversions.feetFromMetres],
    ['ft2', conversions.squareMetresFromSquareFeet, conversions.squareFeetFromSquareMetres],
    ['kt', conversions.metresPerSecondFromKnots, conversions.knotsFromMetresPerSecond],
    [
      'ft/min',
      conversions.metresPerSecondFromFeetPerMinute,
      conversions.feetPerMinuteFromMetresPerSecond,
    ],
    ['lbf', conversions.newtonsFromPoundsForce, conversions.poundsForceFromNewtons],
    ['degC', conversions.kelvinFromCelsius, conversions.celsiusFromKelvin],
  ] as const;

  it.each(pairs)('of %s agree with the table of units, both ways', (unit, into, out) => {
    for (const value of [-40, 0, 1, 37_000]) {
      const si = valueOf(toSi({ value, unit })).value;
      expect(into(value)).toBeCloseTo(si, 9);
      expect(out(si)).toBeCloseTo(value, 9);
    }
  });

  it('an aircraft of one pound weighs one pound-force', () => {
    const weightN = conversions.newtonsFromKilograms(conversions.kilogramsFromPounds(1));
    expect(conversions.poundsForceFromNewtons(weightN)).toBeCloseTo(1, 14);
    expect(conversions.kilogramsFromNewtons(weightN)).toBeCloseTo(0.45359237, 14);
  });
});
