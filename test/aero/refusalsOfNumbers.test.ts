import { describe, expect, it } from 'vitest';
import * as calendar from '../../src/aero/calendar.ts';
import { fitClock } from '../../src/aero/clocks.ts';
import { lag1Autocorrelation } from '../../src/aero/statistics/descriptive.ts';
import { normalQuantile, studentTCdf } from '../../src/aero/statistics/distributions.ts';
import {
  fitLinear,
  predict,
  predictionUncertainty,
} from '../../src/aero/statistics/leastSquares.ts';
import * as uncertainty from '../../src/aero/statistics/uncertainty.ts';
import { gpsMinusUtc, gpsSeconds, taiMinusUtc } from '../../src/aero/timeScales.ts';
import { differenceFromSi, differenceToSi, fromSi, toSi } from '../../src/aero/units.ts';
import { given } from './referenceRow.ts';
import { BAD, refusalsOf } from './refusals.ts';

const { negative, none, notFinite } = BAD;

describe('a reading that is no number is refused', () => {
  const reading = { value: 400, unit: 'USgal/h', fuelDensityKgPerM3: 800 } as const;
  for (const [name, call] of [
    ['into SI', toSi],
    ['out of SI', fromSi],
    ['a difference into SI', differenceToSi],
    ['a difference out of SI', differenceFromSi],
  ] as const) {
    refusalsOf(name, call, reading, [
      ['value', 'value', notFinite],
      ['fuelDensityKgPerM3', 'fuel density', none],
    ]);
  }
});

describe('a doubt that is none is refused', () => {
  const part = { sensitivity: 1, standardUncertainty: 1, degreesOfFreedom: 5 };
  const combined = (of: typeof part) => uncertainty.combinedUncertainty([of]);
  refusalsOf('combined', combined, part, [
    ['sensitivity', 'sensitivity', notFinite],
    ['standardUncertainty', 'standard uncertainty', negative],
  ]);
  const effective = (of: typeof part) => uncertainty.effectiveDegreesOfFreedom([of]);
  refusalsOf('effective', effective, part, [
    ['degreesOfFreedom', 'degrees of freedom', [0, -1, Number.NaN]],
  ]);
  const expanded = { standardUncertainty: 1, degreesOfFreedom: 5, confidence: 0.95 };
  refusalsOf('expanded', uncertainty.expandedUncertainty, expanded, [
    ['standardUncertainty', 'standard uncertainty', negative],
    ['degreesOfFreedom', 'degrees of freedom', [0, Number.NaN]],
    ['confidence', 'probability', [1, -1.5, Number.NaN]],
  ]);
  const step = ({ n }: { n: number }) => uncertainty.resolutionUncertainty(n);
  refusalsOf('resolution', step, { n: 1 }, [['n', 'display step', negative]]);
  const half = ({ n }: { n: number }) => uncertainty.halfRangeUncertainty(n);
  refusalsOf('half-range', half, { n: 1 }, [['n', 'half-range', negative]]);
  refusalsOf('mean', uncertainty.meanUncertainty, { standardDeviation: 1, count: 4 }, [
    ['standardDeviation', 'standard deviation', negative],
    ['count', 'count', none],
  ]);
  refusalsOf('totaliser', uncertainty.totaliserFlowUncertainty, { step: 1, durationS: 60 }, [
    ['step', 'display step', negative],
    ['durationS', 'duration', none],
  ]);
  const fit = given(
    fitLinear({ rows: [[1], [1], [1]], observations: [1, 2, 4], weighting: { kind: 'equal' } }),
  );
  const reading = { x: 1, u: 1 };
  refusalsOf(
    'a new reading',
    ({ x, u }: typeof reading) => predictionUncertainty(fit, [x], u),
    reading,
    [
      ['x', 'row entry', notFinite],
      ['u', 'reading uncertainty', none],
    ],
  );
  it('a row of another length', () => {
    expect(() => predict(fit, [1, 2])).toThrow(/^a row must have 1 numbers, got 2/);
  });
  const quantile = ({ p }: { p: number }) => normalQuantile(p);
  refusalsOf('normal quantile', quantile, { p: 0.5 }, [['p', 'probability', [0, 1, Number.NaN]]]);
  const share = { t: 1, degreesOfFreedom: 5 };
  refusalsOf('probability', (of: typeof share) => studentTCdf(of.t, of.degreesOfFreedom), share, [
    ['t', 't must be', [Number.NaN]],
    ['degreesOfFreedom', 'degrees of freedom', [0, -1, Number.NaN]],
  ]);
  const gap = ({ n }: { n: number }) => lag1Autocorrelation([1, 2, 3, 4, 5, 6, 7, 8, 9, n]);
  refusalsOf('autocorrelation', gap, { n: 3 }, [['n', 'value', notFinite]]);
});

describe('a time that is none is refused', () => {
  const hack = { tabletS: 5, offsetS: 1, standardUncertaintyS: 0.1 };
  refusalsOf('hack', (of: typeof hack) => fitClock([of]), hack, [
    ['tabletS', 'tablet time', notFinite],
    ['offsetS', 'offset', notFinite],
    ['standardUncertaintyS', 'uncertainty of a hack', negative],
  ]);
  const part = [0.5, Number.NaN, Infinity];
  const civil = ({ ms }: { ms: number }) => calendar.civilFromEpochMs(ms);
  refusalsOf('civil time', civil, { ms: 0 }, [['ms', 'an instant', part]]);
  const tai = ({ ms }: { ms: number }) => taiMinusUtc(ms);
  refusalsOf('TAI', tai, { ms: 1.5e12 }, [['ms', 'an instant', part]]);
  it('GPS time before it began, in either form', () => {
    const before = { kind: 'unavailable', because: 'beforeTable' };
    for (const early of [0, 315_964_799_999]) {
      expect(gpsMinusUtc(early)).toEqual(before);
      expect(gpsSeconds(early)).toEqual(before);
    }
    expect(gpsSeconds(315_964_800_000)).toEqual({ kind: 'ready', value: 0 });
    expect(taiMinusUtc(63_071_999_999)).toEqual(before);
  });
  const time = { year: 2024, month: 2, day: 29, hour: 7, minute: 5, second: 9, millisecond: 40 };
  refusalsOf('instant', calendar.epochMsFromCivil, time, [
    ['year', '(year|no such date)', [0, 10_000, 2024.5, 2023]],
    ['month', 'no such date', [0, 13, 2.5]],
    ['day', 'no such date', [0, 30, 1.5]],
    ['hour', 'hour', [-1, 24, 1.5]],
    ['minute', 'minute', [-1, 60, 1.5]],
    ['second', 'second', [-1, 60, 1.5]],
    ['millisecond', 'millisecond', [-1, 1000, 1.5]],
  ]);
  const leap = ({ year }: { year: number }) => calendar.isLeapYear(year);
  refusalsOf('leap year', leap, { year: 2024 }, [['year', 'year', [0, 10_000, 1.5]]]);
  const day = ({ year }: { year: number }) => calendar.parseDayTime('not a day', year);
  refusalsOf('day time', day, { year: 2024 }, [['year', 'year', [0, 10_000, 1.5]]]);
});
