import { describe, expect, it } from 'vitest';
import { readingsToReview } from '../../src/analysis/review.ts';
import type { Draft, Reading } from '../../src/record/entry.ts';
import { idOfLine } from '../flights/scriptToEntries.ts';
import {
  flightA,
  glanceOfLine,
  sealed,
  sheetA,
  touchAt,
  viewOfEntries,
  without,
} from './flights.ts';

const START = Date.parse('2032-06-02T22:00:00Z');

function readAs(...values: readonly (readonly [ff1: number, ff2: number])[]): readonly Draft[] {
  const opening: Draft = {
    kind: 'flightOpened',
    body: {
      nature: 'practice',
      title: 'review',
      date: '2032-06-02',
      device: 'tablet',
      sheet: sheetA,
    },
    stamp: touchAt(START),
  };
  const reads = values.map(([ff1, ff2], index): Draft => {
    const readings: readonly Reading[] = [
      { instrument: 'FF1', value: ff1, unit: 'lb/h' },
      { instrument: 'FF2', value: ff2, unit: 'lb/h' },
    ];
    return { kind: 'fuelRead', body: { readings }, stamp: touchAt(START + (index + 1) * 60_000) };
  });
  return [opening, ...reads];
}

function review(...values: readonly (readonly [ff1: number, ff2: number])[]): readonly unknown[] {
  return readingsToReview(viewOfEntries(sealed(readAs(...values))));
}

describe('readings to look at after landing', () => {
  it('lists neighbours with the same digits in another order', () => {
    expect(review([1230, 1190], [1320, 1180])).toContainEqual({
      kind: 'sameDigits',
      instrument: 'FF1',
      glances: [0, 1],
    });
    expect(review([1230, 1190], [1240, 1180])).toEqual([]);
  });

  it('lists a value read four times in a row, not three', () => {
    expect(review([1230, 1190], [1230, 1180], [1230, 1170])).toEqual([]);
    expect(review([1230, 1190], [1230, 1180], [1230, 1170], [1230, 1160])).toEqual([
      { kind: 'repeated', instrument: 'FF1', value: 1230, glances: [0, 1, 2, 3] },
    ]);
  });

  it('finds the engines that were swapped in flight A, and nothing once they are amended', () => {
    const whole = viewOfEntries(flightA.entries);
    const glance = glanceOfLine(whole, 106);
    const swapped = { kind: 'enginesSwapped', glance, instruments: ['FF1', 'FF2'] };
    const amendment = idOfLine(flightA.idOf, 147);
    const raw = viewOfEntries(without(flightA.entries, ({ id }) => id === amendment));
    expect(readingsToReview(raw)).toContainEqual(swapped);
    expect(readingsToReview(whole)).not.toContainEqual(swapped);
  });
});
