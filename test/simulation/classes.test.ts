import { describe, expect, it } from 'vitest';
import { tallyOf, type Tally } from './classes.ts';
import type { Outcome } from './outcome.ts';

/** `flights` of two outcomes each, `missed` of which hold neither. */
function flights(flights: number, missed: number): readonly (readonly Outcome[])[] {
  return Array.from({ length: flights }, (_, index) => {
    const outcome: Outcome = {
      result: 'fuel',
      held: index >= missed,
      errorOverU: index % 2 === 0 ? 1 : -1,
      readings: 3,
      baselineReadings: 6,
      method: 'fit',
      spoilt: 0,
    };
    return [outcome, outcome];
  });
}

function tally(count: number, missed: number, mayBeWide = false): Tally {
  const head = { result: 'fuel', name: 'some', declared: true } as const;
  return tallyOf(head, flights(count, missed), mayBeWide);
}

describe('a class of intervals', () => {
  it('counts flights as independent, and results of one flight as one', () => {
    // 5 % of 1000 flights: the root of 0.05 x 0.95 / 1000 is 0.00689, however many results each has.
    const { coverage, samplingDoubt, count } = tally(1000, 50);
    expect([coverage, count]).toEqual([0.95, 2000]);
    expect(samplingDoubt).toBeCloseTo(0.00689, 4);
  });

  it('has the spread of its errors in their doubts', () => {
    const { meanErrorOverU, spreadOfErrorOverU } = tally(100, 5);
    expect([meanErrorOverU, spreadOfErrorOverU]).toEqual([0, 1]);
  });

  it.each([
    [1000, 50, 'holds'],
    [1000, 70, 'holds'],
    [1000, 75, 'withinDoubt'],
    [1000, 120, 'tooLow'],
    [1000, 30, 'holds'],
    [1000, 25, 'withinDoubt'],
    [1000, 5, 'tooHigh'],
    [59, 30, 'tooFew'],
    [60, 30, 'tooLow'],
    [10_000, 0, 'tooHigh'],
  ] as const)('of %d flights, %d missed, is called %s', (count, missed, verdict) => {
    expect(tally(count, missed).verdict).toBe(verdict);
  });

  it('may be too wide where that is allowed, never too narrow', () => {
    expect(tally(1000, 0, true).verdict).toBe('holds');
    expect(tally(1000, 120, true).verdict).toBe('tooLow');
  });
});
