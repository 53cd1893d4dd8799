import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitClock, offsetAt, type ClockModel, type TimeHack } from '../../src/aero/clocks.ts';
import { given, valueOf } from './referenceRow.ts';

function hack(tabletS: number, offsetS: number, standardUncertaintyS = 0.3): TimeHack {
  return { tabletS, offsetS, standardUncertaintyS };
}

function clock(...hacks: readonly TimeHack[]): ClockModel {
  return given(fitClock(hacks));
}

describe('a clock from one hack', () => {
  it('has an offset and no rate', () => {
    const model = clock(hack(100, 2.5));
    expect(model.rate).toEqual({ kind: 'unavailable', because: 'oneHack' });
    expect(offsetAt(model, 100)).toMatchObject({ offsetS: 2.5, extrapolated: false });
    expect(offsetAt(model, 5000)).toMatchObject({ offsetS: 2.5, extrapolated: true });
  });
});

describe('a clock from two hacks', () => {
  // An invented flight worked with an independent program: 0.135 ± 0.115 s/h is not resolved, −1.351 ± 0.159 is.
  it('keeps the mean offset while the rate is not resolved', () => {
    const model = clock(hack(0, 0.6), hack(13_333, 1.1));
    const rate = valueOf(model.rate);
    expect(rate.value * 3600).toBeCloseTo(0.135, 3);
    expect(rate.standardUncertainty * 3600).toBeCloseTo(0.1146, 3);
    expect(rate.resolved).toBe(false);
    const at = (tabletS: number) => offsetAt(model, tabletS);
    expect(at(0).offsetS).toBeCloseTo(0.85, 12);
    expect(at(13_333).offsetS).toBeCloseTo(0.85, 12);
    expect(at(13_333 / 2).standardUncertaintyS).toBeCloseTo(0.3 / Math.SQRT2, 12);
    // What the rate might be still counts away from the middle.
    expect(at(0).standardUncertaintyS).toBeGreaterThan(at(13_333 / 2).standardUncertaintyS);
  });

  it('uses a rate beyond twice its doubt', () => {
    const model = clock(hack(0, -4), hack(13_323, -9));
    expect(valueOf(model.rate).value * 3600).toBeCloseTo(-1.351, 3);
    expect(valueOf(model.rate).resolved).toBe(true);
    expect(offsetAt(model, 0).offsetS).toBeCloseTo(-4, 12);
    expect(offsetAt(model, 13_323).offsetS).toBeCloseTo(-9, 12);
    expect(offsetAt(model, 13_324).extrapolated).toBe(true);
    expect(offsetAt(model, -1).extrapolated).toBe(true);
  });

  it('does not depend on their order', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20_000 }),
        fc.integer({ min: -50, max: 50 }),
        (s, o) => {
          const forth = clock(hack(0, 0), hack(s, o));
          const back = clock(hack(s, o), hack(0, 0));
          expect(offsetAt(back, 777)).toEqual(offsetAt(forth, 777));
        },
      ),
    );
  });

  it('has no rate at one moment', () => {
    expect(fitClock([hack(5, 1), hack(5, 1.2)])).toEqual({
      kind: 'unavailable',
      because: 'hacksCoincide',
    });
  });
});

describe('a clock from three hacks or more', () => {
  it('is read exactly where it runs evenly', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1000, max: 1000 }).map((ppm) => ppm * 1e-6),
        fc.integer({ min: -10_000, max: 10_000 }).map((hundredths) => hundredths / 100),
        (rate, start) => {
          const hacks = [0, 1000, 4000, 9000].map((s) => hack(s, start + rate * s, 0));
          const model = given(fitClock(hacks));
          expect(offsetAt(model, 6000).offsetS).toBeCloseTo(start + rate * 6000, 9);
          expect(valueOf(model.rate).value).toBeCloseTo(rate, 12);
          expect(model.suspectedStepsAtS).toEqual([]);
        },
      ),
    );
  });

  it('is not surer than its hacks were stated to be', () => {
    const agreeing = [0, 3600, 7200].map((s) => hack(s, 1.2));
    const model = given(fitClock(agreeing));
    expect(offsetAt(model, 3600).standardUncertaintyS).toBeCloseTo(0.3 / Math.sqrt(3), 12);
    expect(model.degreesOfFreedom).toBe(Infinity);
  });

  it('suspects a step at a hack off the line', () => {
    const hacks = [0, 1000, 2000, 3000, 4000, 5000].map((s) =>
      hack(s, s === 3000 ? 3.2 : 2.4, 0.1),
    );
    expect(given(fitClock(hacks)).suspectedStepsAtS).toEqual([3000]);
  });

  it('suspects one of many by the scatter of the others', () => {
    // Residual of one in twelve at 0.4 s: below half a second, above three of the fit's deviations.
    const hacks = Array.from({ length: 12 }, (_, k) => hack(k * 600, k === 6 ? 0.4 : 0, 0));
    expect(given(fitClock(hacks)).suspectedStepsAtS).toEqual([3600]);
  });
});

describe('no clock', () => {
  it('comes from no hack', () => {
    expect(fitClock([])).toEqual({ kind: 'unavailable', because: 'noHacks' });
  });

  it('comes from a hack without a number', () => {
    expect(() => fitClock([hack(Number.NaN, 0)])).toThrow(RangeError);
    expect(() => fitClock([hack(0, 0, -1)])).toThrow(RangeError);
    expect(() => offsetAt(clock(hack(0, 0)), Number.NaN)).toThrow(RangeError);
  });
});
