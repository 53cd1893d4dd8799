import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareWithBaseline, type Comparison, type Doubt } from '../../src/aero/reduction.ts';
import {
  effectiveSampleSize,
  lag1Autocorrelation,
  mean,
  median,
  sampleStandardDeviation,
} from '../../src/aero/statistics/descriptive.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  expandedUncertainty,
  halfRangeUncertainty,
  meanUncertainty,
  resolutionUncertainty,
  totaliserFlowUncertainty,
  type Component,
} from '../../src/aero/statistics/uncertainty.ts';
import { valueOf } from './referenceRow.ts';

const stated = (sensitivity: number, standardUncertainty: number): Component => ({
  sensitivity,
  standardUncertainty,
  degreesOfFreedom: Infinity,
});

describe('combined uncertainty', () => {
  it('adds independent parts as the sides of a right angle', () => {
    expect(combinedUncertainty([stated(3, 1), stated(-1, 4)])).toBe(5);
  });

  it('adds parts that move together, and cancels those that move apart', () => {
    const parts = [stated(3, 1), stated(1, 4)];
    const together = (coefficient: number) =>
      combinedUncertainty(parts, [{ first: 0, second: 1, coefficient }]);
    expect(together(1)).toBeCloseTo(7, 14);
    expect(together(-1)).toBeCloseTo(1, 14);
    expect(together(0)).toBe(5);
  });

  it('is zero where equal parts cancel fully', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (u) => {
        const parts = [stated(1, u), stated(-1, u)];
        expect(combinedUncertainty(parts, [{ first: 0, second: 1, coefficient: 1 }])).toBe(0);
      }),
    );
  });

  it.each([
    ['a negative doubt', [stated(1, -1)], []],
    ['a correlation with itself', [stated(1, 1)], [{ first: 0, second: 0, coefficient: 0.5 }]],
    ['a correlation with nothing', [stated(1, 1)], [{ first: 0, second: 1, coefficient: 0.5 }]],
    [
      'a correlation above one',
      [stated(1, 1), stated(1, 1)],
      [{ first: 0, second: 1, coefficient: 1.1 }],
    ],
    [
      'three parts that all move apart',
      [stated(1, 1), stated(1, 1), stated(1, 1)],
      [
        { first: 0, second: 1, coefficient: -1 },
        { first: 0, second: 2, coefficient: -1 },
        { first: 1, second: 2, coefficient: -1 },
      ],
    ],
  ])('refuses %s', (_, components, correlations) => {
    expect(() => combinedUncertainty(components, correlations)).toThrow(RangeError);
  });
});

describe('effective degrees of freedom', () => {
  it('are those of a lone component, and endless where none is estimated', () => {
    expect(effectiveDegreesOfFreedom([{ ...stated(2, 3), degreesOfFreedom: 7 }])).toBeCloseTo(
      7,
      12,
    );
    expect(effectiveDegreesOfFreedom([stated(2, 3)])).toBe(Infinity);
  });

  it('do not depend on the unit', () => {
    const parts = (scale: number) => [
      { ...stated(scale, 3), degreesOfFreedom: 4 },
      { ...stated(scale, 2), degreesOfFreedom: 9 },
    ];
    // By hand: 13²/(81/4 + 16/9) = 7.672…
    expect(effectiveDegreesOfFreedom(parts(1))).toBeCloseTo(169 / (81 / 4 + 16 / 9), 10);
    expect(effectiveDegreesOfFreedom(parts(1e-90))).toBeCloseTo(169 / (81 / 4 + 16 / 9), 10);
  });
});

describe('doubts of a gauge', () => {
  it('are rectangular for a display step and a half-range', () => {
    // JCGM 100:2008 F.2.2.1: 0.29 of the step; 4.3.7: a/√3.
    expect(resolutionUncertainty(1)).toBeCloseTo(0.2886751346, 10);
    expect(halfRangeUncertainty(1)).toBeCloseTo(0.5773502692, 10);
    expect(meanUncertainty({ standardDeviation: 6, count: 9 })).toBe(2);
  });

  it('of a totaliser shrink with the time between the looks', () => {
    // Two looks at 1 lb steps an hour apart: √2/√12 = 0.408 lb/h.
    const anHour = totaliserFlowUncertainty({ step: 1, durationS: 3600 }) * 3600;
    expect(anHour).toBeCloseTo(0.4082482905, 10);
  });

  it('widen by t for few degrees of freedom', () => {
    // NIST/SEMATECH t table: 12.706 at one.
    expect(expandedUncertainty({ standardUncertainty: 1, degreesOfFreedom: 1 })).toBeCloseTo(
      12.706,
      3,
    );
    expect(expandedUncertainty({ standardUncertainty: 2, degreesOfFreedom: Infinity })).toBeCloseTo(
      3.919928,
      6,
    );
  });
});

describe('a comparison with the baseline', () => {
  const none: Doubt = { standardUncertainty: 0, degreesOfFreedom: Infinity };
  const exact: Comparison = {
    levelFuelFlowKgPerS: 0.36,
    referredFuelFlowKgPerS: 1.8,
    baselineFuelFlowKgPerS: 2,
    weightElasticity: 0.7,
    machSensitivity: 1.5,
    slopeKgPerSPerN: 2e-5,
    weightN: 300_000,
    trueAirspeedMPerS: 220,
    temperatureK: 216.65,
    fuelFlowDoubtsKgPerS: [],
    climbRateDoubtMPerS: none,
    accelerationDoubtMPerS2: none,
    pressureRatioRelativeDoubt: none,
    temperatureDoubtK: none,
    weightDoubtN: none,
    machDoubt: none,
    baselineDoubtKgPerS: none,
  };
  const u = (standardUncertainty: number): Doubt => ({ ...none, standardUncertainty });

  // Each alone, by hand from u(R) = (1 − R) times the relative doubt, R = 0.1.
  it.each([
    ['flow', { fuelFlowDoubtsKgPerS: [u(0.0036)] }, 0.9 * 0.01],
    ['climb', { climbRateDoubtMPerS: u(0.022) }, 0.9 * ((2e-5 * 300_000 * 0.022) / (220 * 0.36))],
    [
      'acceleration',
      { accelerationDoubtMPerS2: u(0.00980665) },
      0.9 * ((2e-5 * 300_000 * 0.001) / 0.36),
    ],
    ['pressure', { pressureRatioRelativeDoubt: u(0.01) }, 0.9 * 0.3 * 0.01],
    ['temperature', { temperatureDoubtK: u(2.1665) }, 0.9 * 0.005],
    ['weight', { weightDoubtN: u(3000) }, 0.9 * 0.7 * 0.01],
    ['Mach', { machDoubt: u(0.002) }, 0.9 * 0.003],
    ['baseline', { baselineDoubtKgPerS: u(0.02) }, 0.9 * 0.01],
  ])('carries the doubt of %s by its own sensitivity', (_, doubt, expected) => {
    const reduction = compareWithBaseline({ ...exact, ...doubt });
    expect(reduction.reductionFraction).toBeCloseTo(0.1, 14);
    expect(reduction.standardUncertainty).toBeCloseTo(expected, 14);
    expect(reduction.expanded95).toBeCloseTo(1.959963985 * expected, 10);
  });

  it('is certain when nothing is in doubt, and may be negative', () => {
    const worse = compareWithBaseline({ ...exact, referredFuelFlowKgPerS: 2.2 });
    expect(worse.reductionFraction).toBeCloseTo(-0.1, 14);
    expect(worse.standardUncertainty).toBe(0);
    expect(worse.expanded95).toBe(0);
  });
});

describe('descriptive numbers', () => {
  it('of a short list are those by hand', () => {
    expect(mean([2, 4, 9])).toBe(5);
    expect(sampleStandardDeviation([2, 4, 9])).toBeCloseTo(Math.sqrt(13), 14);
    expect(median([9, 2, 4])).toBe(4);
    expect(median([9, 2, 4, 5])).toBe(4.5);
    expect(median([3])).toBe(3);
  });

  it('refuse an empty list and a hole', () => {
    expect(() => mean([])).toThrow(RangeError);
    expect(() => median([])).toThrow(RangeError);
    expect(() => sampleStandardDeviation([1])).toThrow(RangeError);
    expect(() => mean([1, Number.NaN])).toThrow(RangeError);
  });

  it('of readings in a row tell how they hang together', () => {
    // Up and down in turn: nine products of −1 over ten squares of 1.
    const turning = [1, -1, 1, -1, 1, -1, 1, -1, 1, -1];
    expect(valueOf(lag1Autocorrelation(turning))).toBeCloseTo(-0.9, 14);
    expect(lag1Autocorrelation(turning.slice(1))).toEqual({
      kind: 'unavailable',
      because: 'tooFewReadings',
    });
    expect(lag1Autocorrelation(turning.map(() => 7))).toEqual({
      kind: 'unavailable',
      because: 'noScatter',
    });
    expect(effectiveSampleSize({ count: 12, lag1: 0 })).toBe(12);
    expect(() => effectiveSampleSize({ count: 12, lag1: 1 })).toThrow(RangeError);
    expect(() => effectiveSampleSize({ count: 1.5, lag1: 0 })).toThrow(RangeError);
  });
});
