import { describe, expect, it } from 'vitest';
import { parseIso } from '../../src/aero/calendar.ts';
import { LEAP_SECONDS } from '../../src/aero/timeScales.ts';
import { valueOf } from './referenceRow.ts';

/** Every number the room exports, by file: to the last digit, with where it was published. */
const PINNED = {
  'units.ts': [
    ['METRES_PER_FOOT', 0.3048, 'NIST SP 811, exact'],
    ['METRES_PER_INCH', 0.0254, 'NIST SP 811, exact'],
    ['METRES_PER_NAUTICAL_MILE', 1852, 'NIST SP 811, exact'],
    ['METRES_PER_SECOND_PER_KNOT', 1852 / 3600, 'NIST SP 811: 1852/3600, exact'],
    ['KILOGRAMS_PER_POUND', 0.45359237, 'international avoirdupois pound, exact'],
    [
      'KILOGRAMS_PER_SLUG',
      14.593902937206364,
      'lbf s²/ft by definition; NIST SP 811 prints 14.59390',
    ],
    ['NEWTONS_PER_POUND_FORCE', 4.4482216152605, 'NIST SP 811, exact'],
    ['PASCALS_PER_PSI', 6894.757293168361, 'lbf/in² by definition; NIST SP 811 prints 6894.757'],
    ['PASCALS_PER_MILLIBAR', 100, 'SI Brochure, exact'],
    ['PASCALS_PER_STANDARD_ATMOSPHERE', 101_325, 'NIST SP 811, exact'],
    ['PASCALS_PER_INCH_OF_WATER', 249.08891, '25.4 × 9.80665, exact'],
    ['PASCALS_PER_INCH_OF_WATER_39F', 249.082, 'NIST SP 811'],
    ['PASCALS_PER_INCH_OF_WATER_60F', 248.84, 'NIST SP 811'],
    [
      'PASCALS_PER_INCH_OF_WATER_20C',
      248.642,
      '998.2071 kg/m³, from memory; RP-1046 has 407.513 inches an atmosphere',
    ],
    [
      'CONVENTIONAL_MERCURY_DENSITY_KG_PER_M3',
      13_595.1,
      'conventional millimetre of mercury, from memory',
    ],
    [
      'PASCALS_PER_INCH_OF_MERCURY',
      3386.388640341,
      '25.4 × 13.5951 × 9.80665; NIST SP 811 prints 3386.389',
    ],
    ['PASCALS_PER_INCH_OF_MERCURY_32F', 3386.38, 'NIST SP 811'],
    ['PASCALS_PER_INCH_OF_MERCURY_60F', 3376.85, 'NIST SP 811'],
    ['CUBIC_METRES_PER_US_GALLON', 3.785411784e-3, '231 cubic inches, exact'],
    ['CUBIC_METRES_PER_IMPERIAL_GALLON', 4.54609e-3, 'NIST SP 811, exact'],
    ['STANDARD_GRAVITY_M_PER_S2', 9.80665, 'U.S. Standard Atmosphere, 1976'],
    ['ICE_POINT_K', 273.15, 'SI Brochure, definition of the degree Celsius'],
    ['SECONDS_PER_MINUTE', 60, 'SI Brochure'],
    ['SECONDS_PER_HOUR', 3600, 'SI Brochure'],
  ],
  'atmosphere.ts': [
    ['GAS_CONSTANT_J_PER_KMOL_K', 8314.32, 'U.S. Standard Atmosphere, 1976'],
    ['MOLAR_MASS_KG_PER_KMOL', 28.9644, 'U.S. Standard Atmosphere, 1976'],
    [
      'SPECIFIC_GAS_CONSTANT_J_PER_KG_K',
      287.0530720470647,
      '8314.32/28.9644; the standard prints 287.053',
    ],
    ['SEA_LEVEL_TEMPERATURE_K', 288.15, 'U.S. Standard Atmosphere, 1976'],
    ['SEA_LEVEL_PRESSURE_PA', 101_325, 'U.S. Standard Atmosphere, 1976'],
    ['EARTH_RADIUS_M', 6_356_766, 'U.S. Standard Atmosphere, 1976'],
    ['HEAT_CAPACITY_RATIO', 1.4, 'U.S. Standard Atmosphere, 1976'],
    ['SUTHERLAND_COEFFICIENT', 1.458e-6, 'U.S. Standard Atmosphere, 1976'],
    ['SUTHERLAND_TEMPERATURE_K', 110.4, 'U.S. Standard Atmosphere, 1976'],
    ['TROPOSPHERE_LAPSE_K_PER_M', -0.0065, 'U.S. Standard Atmosphere, 1976'],
    ['UPPER_LAPSE_K_PER_M', 0.001, 'U.S. Standard Atmosphere, 1976'],
    ['TROPOPAUSE_M', 11_000, 'U.S. Standard Atmosphere, 1976'],
    ['ISOTHERMAL_TOP_M', 20_000, 'U.S. Standard Atmosphere, 1976'],
    ['TOP_M', 32_000, 'U.S. Standard Atmosphere, 1976'],
    ['BOTTOM_M', -5004, 'U.S. Standard Atmosphere, 1976, Table I starts at geometric −5000 m'],
    ['LOWEST_PRESSURE_ALTITUDE_M', -304.8, 'product choice: −1000 ft'],
    ['HIGHEST_PRESSURE_ALTITUDE_M', 19_812, 'product choice: 65 000 ft'],
    ['TEMPERATURE_DEPARTURE_LIMIT_K', 35, 'product choice, from memory'],
  ],
  'fuelFlow.ts': [['LEVEL_CORRECTION_LIMIT_FRACTION', 0.03, 'product choice']],
  'baseline.ts': [
    ['UNKNOWN_WEIGHT_ELASTICITY.elasticity', 1, 'middle of 0 to 2'],
    [
      'UNKNOWN_WEIGHT_ELASTICITY.standardUncertainty',
      0.5773502691896258,
      '1/√3, half-range 1, GUM 4.3.7',
    ],
  ],
  'bracket.ts': [['BRACKET_DRIFT_DOUBTS', 2.8284271247461903, '2√2, product choice']],
  'machTerm.ts': [
    ['FEWEST_RUNS_FOR_MACH', 8, 'product choice'],
    ['LEAST_MACH_SPAN', 0.01, 'product choice'],
    ['MOST_MACH_INFLATION', 10, 'common practice, no source'],
  ],
  'baselineGates.ts': [
    ['BASELINE_LIMITS.fewestReadings', 5, 'product choice'],
    ['BASELINE_LIMITS.fewestToSpare', 3, 'product choice: t is 3.18 at three degrees of freedom'],
    ['BASELINE_LIMITS.machDifference', 0.005, 'common practice, no source'],
    ['BASELINE_LIMITS.altitudeDifferenceM', 1524, 'SFTE Reference Handbook (2013): about 5000 ft'],
  ],
  'friction.ts': [
    ['LAMINAR_COEFFICIENT', 1.328, 'SFTE Reference Handbook (2013), Blasius'],
    ['TURBULENT_COEFFICIENT', 0.455, 'SFTE Reference Handbook (2013), Prandtl and Schlichting'],
    ['TURBULENT_EXPONENT', 2.58, 'SFTE Reference Handbook (2013), misprint −258 repaired'],
    ['ITTC_COEFFICIENT', 0.075, 'Introduction to Naval Architecture, Table 8.3'],
    ['ITTC_OFFSET', 2, 'Introduction to Naval Architecture, Table 8.3'],
    ['LAMINAR_MACH_FACTOR', 0.1305, 'SFTE Reference Handbook (2013)'],
    ['LAMINAR_MACH_EXPONENT', -0.12, 'SFTE Reference Handbook (2013)'],
    ['TURBULENT_MACH_FACTOR', 0.144, 'SFTE Reference Handbook (2013)'],
    ['TURBULENT_MACH_EXPONENT', -0.65, 'SFTE Reference Handbook (2013)'],
    ['LAMINAR_THICKNESS_COEFFICIENT', 5.2, 'SFTE Reference Handbook (2013)'],
    ['TURBULENT_THICKNESS_COEFFICIENT', 0.37, 'SFTE Reference Handbook (2013)'],
    ['TURBULENT_THICKNESS_EXPONENT', 0.2, 'SFTE Reference Handbook (2013), misprint Re² repaired'],
    ['LOWEST_TURBULENT_REYNOLDS', 5e5, 'SFTE Reference Handbook (2013), roughly'],
    ['HIGHEST_TURBULENT_REYNOLDS', 1e9, 'SFTE Reference Handbook (2013), roughly'],
    [
      'HIGHEST_ITTC_REYNOLDS',
      1e10,
      'Introduction to Naval Architecture, Table 8.3, end of the table from memory',
    ],
  ],
  'laminarArea.ts': [
    ['INTERMITTENT_SHARE', 0.5, 'convention'],
    ['COVERAGE_DOUBT_FRACTION', 0.3, 'product choice'],
  ],
  'clocks.ts': [
    ['RATE_RESOLVED_DOUBTS', 2, 'product choice'],
    ['STEP_DEVIATIONS', 3, 'product choice'],
    ['STEP_S', 0.5, 'product choice'],
  ],
  'calendar.ts': [
    ['MS_PER_SECOND', 1000, 'definition'],
    ['MS_PER_DAY', 86_400_000, 'definition'],
  ],
  'timeScales.ts': [
    ['TAI_MINUS_GPS_S', 19, 'GPS time definition'],
    ['GPS_EPOCH_MS', 315_964_800_000, '1980-01-06T00:00:00Z, GPS time definition'],
    ['GPS_LIKENESS_S', 0.5, 'product choice'],
  ],
  'stability.ts': [
    ['STABILITY_LIMITS.windowS', 180, 'product choice'],
    ['STABILITY_LIMITS.fewestSamples', 3, 'product choice: a line and one to spare'],
    ['STABILITY_LIMITS.leastSpanFraction', 0.5, 'product choice'],
    ['STABILITY_LIMITS.machRange', 0.01, 'common practice, from memory: ± 0.005'],
    ['STABILITY_LIMITS.altitudeRangeM', 30.48, 'common practice, from memory: ± 50 ft'],
    ['STABILITY_LIMITS.temperatureRangeK', 1, 'common practice, from memory'],
    ['STABILITY_LIMITS.fuelFlowRangeFraction', 0.03, 'product choice'],
    ['STABILITY_LIMITS.climbMPerS', 0.07112, '14 ft/min: half a per cent of drag, see the test'],
    [
      'STABILITY_LIMITS.accelerationMPerS2',
      0.0030866666666666664,
      '0.36 kt/min: half a per cent of drag, see the test',
    ],
    ['STABILITY_LIMITS.correctionFraction', 0.03, 'product choice'],
  ],
  'statistics/descriptive.ts': [['FEWEST_FOR_AUTOCORRELATION', 10, 'product choice']],
  'statistics/fisherExact.ts': [['TIE_FACTOR', 1e-7, 'R manual, fisher.test']],
  'statistics/survival.ts': [['FEWEST_EVENTS_FOR_CURVE', 5, 'product choice']],
} as const;

const modules = import.meta.glob<Readonly<Record<string, unknown>>>('../../src/aero/**/*.ts', {
  eager: true,
});

/** Exported numbers, and numbers in exported plain objects as `NAME.field`. */
const exported = new Map(
  Object.entries(modules).flatMap(([path, contents]) =>
    Object.entries(contents).flatMap(([name, value]) =>
      numbersIn(name, value).map(
        ([key, number]) => [`${path.replace('../../src/aero/', '')} ${key}`, number] as const,
      ),
    ),
  ),
);

function numbersIn(name: string, value: unknown): readonly (readonly [string, number])[] {
  if (typeof value === 'number') return [[name, value]];
  if (typeof value !== 'object' || value === null || value === LEAP_SECONDS) return [];
  return Object.entries(value).flatMap(([field, inner]) => numbersIn(`${name}.${field}`, inner));
}

const pinned = Object.entries(PINNED).flatMap(([file, constants]) =>
  constants.map(([name, value, source]) => [`${file} ${name}`, value, source] as const),
);

describe('the constants of the room', () => {
  it('are all pinned here, and nothing is pinned that is gone', () => {
    expect(pinned.map(([name]) => name).toSorted()).toEqual([...exported.keys()].toSorted());
  });

  // No more slack than rounding of a product: a change of one part in ten thousand cannot hide.
  it.each(pinned)('%s is %d (%s)', (name, value) => {
    const found = exported.get(name) ?? Number.NaN;
    expect(Math.abs(found - value)).toBeLessThanOrEqual(2 * Number.EPSILON * Math.abs(value));
  });
});

describe('the leap second table', () => {
  // IERS Bulletin C 54 for the last row; the dates before it from memory, unverified.
  const dates = [
    ['1972-01-01', 10],
    ['1972-07-01', 11],
    ['1973-01-01', 12],
    ['1974-01-01', 13],
    ['1975-01-01', 14],
    ['1976-01-01', 15],
    ['1977-01-01', 16],
    ['1978-01-01', 17],
    ['1979-01-01', 18],
    ['1980-01-01', 19],
    ['1981-07-01', 20],
    ['1982-07-01', 21],
    ['1983-07-01', 22],
    ['1985-07-01', 23],
    ['1988-01-01', 24],
    ['1990-01-01', 25],
    ['1991-01-01', 26],
    ['1992-07-01', 27],
    ['1993-07-01', 28],
    ['1994-07-01', 29],
    ['1996-01-01', 30],
    ['1997-07-01', 31],
    ['1999-01-01', 32],
    ['2006-01-01', 33],
    ['2009-01-01', 34],
    ['2012-07-01', 35],
    ['2015-07-01', 36],
    ['2017-01-01', 37],
  ] as const;

  it('holds each step at its day', () => {
    expect(LEAP_SECONDS.rows).toEqual(
      dates.map(([date, taiMinusUtcS]) => ({ fromEpochMs: valueOf(parseIso(date)), taiMinusUtcS })),
    );
  });

  it('says how far its bulletins reach', () => {
    expect(LEAP_SECONDS.coversUntilEpochMs).toBe(valueOf(parseIso('2024-01-01')));
  });
});
