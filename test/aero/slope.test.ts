import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slopeOf } from '../../src/aero/statistics/slope.ts';
import { valueOf } from './referenceRow.ts';

describe('a slope in time', () => {
  it('is that of the line the readings lie on, at any hour', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 600 }), { minLength: 3, maxLength: 12 }),
        fc.integer({ min: -1000, max: 1000 }).map((parts) => parts / 100),
        fc.constantFrom(0, 1.7e9),
        (seconds, perS, startS) => {
          const found = valueOf(
            slopeOf({
              timesS: seconds.map((s) => startS + s),
              values: seconds.map((s) => 5 + perS * s),
            }),
          );
          expect(found.perS).toBeCloseTo(perS, 9);
          expect(found.standardUncertainty).toBeLessThan(1e-9);
          expect(found.degreesOfFreedom).toBe(seconds.length - 2);
        },
      ),
    );
  });

  it('has the doubt of its scatter', () => {
    // By hand: 0, 1, 0, 1 at 0 to 3 s: Sxx = 5, Sxy = 1; residual squares 1 − 1/5 = 0.8, over 2 and over 5.
    const found = valueOf(slopeOf({ timesS: [0, 1, 2, 3], values: [0, 1, 0, 1] }));
    expect(found.perS).toBeCloseTo(0.2, 14);
    expect(found.standardUncertainty).toBeCloseTo(Math.sqrt(0.4 / 5), 14);
    expect(found.middle).toBeCloseTo(0.5, 14);
  });

  it('has the doubt stated of each reading, then from two on', () => {
    const found = valueOf(slopeOf({ timesS: [0, 60], values: [10, 16], readingUncertainty: 3 }));
    // √2 · 3/60.
    expect(found.perS).toBeCloseTo(0.1, 14);
    expect(found.standardUncertainty).toBeCloseTo((Math.SQRT2 * 3) / 60, 14);
    expect(found.degreesOfFreedom).toBe(Infinity);
  });

  it('turns with the sign and the unit of its readings, and forgets their order', () => {
    const timesS = [0, 20, 50, 90];
    const values = [1, 4, 3, 7];
    const found = valueOf(slopeOf({ timesS, values }));
    const turned = valueOf(slopeOf({ timesS, values: values.map((value) => -2 * value) }));
    expect(turned.perS).toBeCloseTo(-2 * found.perS, 14);
    expect(turned.standardUncertainty).toBeCloseTo(2 * found.standardUncertainty, 14);
    const back = valueOf(slopeOf({ timesS: timesS.toReversed(), values: values.toReversed() }));
    expect(back.perS).toBeCloseTo(found.perS, 14);
  });

  it('is not given by too few readings or at one time', () => {
    expect(slopeOf({ timesS: [0, 1], values: [0, 1] })).toEqual({
      kind: 'unavailable',
      because: 'tooFewSamples',
    });
    expect(slopeOf({ timesS: [1], values: [0], readingUncertainty: 1 })).toEqual({
      kind: 'unavailable',
      because: 'tooFewSamples',
    });
    expect(slopeOf({ timesS: [5, 5, 5], values: [0, 1, 2] })).toEqual({
      kind: 'unavailable',
      because: 'oneTime',
    });
  });

  it('refuses lists of two lengths, a hole and a doubt of nothing', () => {
    expect(() => slopeOf({ timesS: [0, 1, 2], values: [0, 1] })).toThrow(
      new RangeError('3 times must have as many values, got 2'),
    );
    expect(() => slopeOf({ timesS: [0, 1, 2], values: [0, Number.NaN, 1] })).toThrow(RangeError);
    expect(() => slopeOf({ timesS: [0, 1], values: [0, 1], readingUncertainty: 0 })).toThrow(
      RangeError,
    );
  });
});
