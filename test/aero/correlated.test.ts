import { describe, expect, it } from 'vitest';
import { burstMeans, correlatedMean } from '../../src/aero/statistics/correlated.ts';
import { valueOf } from './referenceRow.ts';

/** A steady stream of numbers from −1 to 1 (Park and Miller's generator). */
function stream(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return (2 * state) / 2_147_483_647 - 1;
  };
}

/** First-order correlated series about zero. */
function series(next: () => number, count: number, lag1: number): readonly number[] {
  let last = next() / Math.sqrt(1 - lag1 ** 2);
  return Array.from({ length: count }, () => {
    const value = last;
    last = lag1 * last + next();
    return value;
  });
}

describe('the mean of readings that hang together', () => {
  it('of readings that take turns claims no more than their number', () => {
    const turning = [1, -1, 1, -1, 1, -1, 1, -1, 1, -1];
    const found = valueOf(correlatedMean(turning));
    expect(found.effectiveCount).toBe(10);
    // Squares 10 over 10 · 0.9, over ten readings.
    expect(found.standardUncertainty).toBeCloseTo(Math.sqrt(10 / 9 / 10), 14);
    expect(found.degreesOfFreedom).toBe(9);
  });

  it('of two levels is worth fewer', () => {
    // Six low, six high: neighbours agree ten times of eleven, r1 = (10 − 1)/12 = 0.75; 12 · 0.25/1.75 = 1.714.
    const levels = [0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1];
    expect(correlatedMean(levels)).toEqual({ kind: 'unavailable', because: 'tooCorrelated' });
    // Neighbours agree 8 times and differ 3 times: r1 = 5/12, worth 12 · (7/12)/(17/12) = 84/17.
    const four = [0, 0, 0, 1, 1, 1, 0, 0, 0, 1, 1, 1];
    const found = valueOf(correlatedMean(four));
    expect(found.effectiveCount).toBeCloseTo(84 / 17, 12);
    expect(found.standardUncertainty).toBeCloseTo(
      Math.sqrt(3 / (12 * (1 - 17 / 84)) / (84 / 17)),
      12,
    );
  });

  it('covers the truth as often as it says, where s/√n does not', () => {
    const next = stream(20_260_101);
    const lag1 = 0.6;
    let [squares, claimed, naive] = [0, 0, 0];
    const rounds = 400;
    for (let round = 0; round < rounds; round += 1) {
      const values = series(next, 200, lag1);
      const found = valueOf(correlatedMean(values));
      squares += found.mean ** 2;
      claimed += found.standardUncertainty ** 2;
      const scatter = values.reduce((total, value) => total + (value - found.mean) ** 2, 0) / 199;
      naive += scatter / 200;
    }
    // 400 squares of means know their variance to 7 %; (1 + 0.6)/(1 − 0.6) = 4.
    expect(claimed / squares).toBeGreaterThan(0.8);
    expect(claimed / squares).toBeLessThan(1.2);
    expect(naive / squares).toBeLessThan(0.3);
  });

  it('is not given where the correlation cannot be seen', () => {
    expect(correlatedMean([1, 2, 3, 4, 5, 6, 7, 8, 9])).toEqual({
      kind: 'unavailable',
      because: 'tooFewReadings',
    });
    expect(correlatedMean(Array.from({ length: 12 }, () => 7))).toEqual({
      kind: 'unavailable',
      because: 'noScatter',
    });
    expect(() => correlatedMean([1, 2, 3, 4, 5, 6, 7, 8, 9, Number.NaN])).toThrow(RangeError);
  });
});

describe('bursts of readings', () => {
  it('count once each, whatever order they were handed in', () => {
    const timesS = [0, 10, 20, 200, 215, 400];
    const values = [1, 2, 3, 10, 20, 7];
    expect(burstMeans({ timesS, values, apartS: 100 })).toEqual([2, 15, 7]);
    expect(
      burstMeans({ timesS: timesS.toReversed(), values: values.toReversed(), apartS: 100 }),
    ).toEqual([2, 15, 7]);
    expect(burstMeans({ timesS: [0, 100], values: [1, 2], apartS: 100 })).toEqual([1, 2]);
  });

  it('need readings and an interval', () => {
    expect(() => burstMeans({ timesS: [], values: [], apartS: 1 })).toThrow(RangeError);
    expect(() => burstMeans({ timesS: [1], values: [], apartS: 1 })).toThrow(RangeError);
    expect(() => burstMeans({ timesS: [1], values: [1], apartS: 0 })).toThrow(RangeError);
  });
});
