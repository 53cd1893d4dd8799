import { describe, expect, it } from 'vitest';
import { expectedDrag } from '../../../src/analysis/coverage/expectedDrag.ts';
import { laminarByTime } from '../../../src/analysis/coverage/laminarByTime.ts';
import { pointResults } from '../../../src/analysis/testPoints.ts';
import oracle from '../../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { answerOf, reasonOf } from '../encounters/reading.ts';
import { flightA, sheetA, viewOfEntries, withSheet } from '../flights.ts';

/*
 * Expected values: the worked debrief of flight A (test/flights/scripts/flight-a-oracle.json), tolerances its own
 * `compareWithin`. Its all-air share counts the right wing from the left wing's switch, 25 s before its own.
 */
const within = oracle.compareWithin;
const { allAir, clearAir, allAirShare, clearAirShare } = oracle.laminarFraction;
const found = laminarByTime(viewOfEntries(flightA.entries));

describe('laminar share of flight A', () => {
  it('has one span', () => {
    expect(allAir.length).toBe(1);
    expect(found.spans.length).toBe(1);
  });

  it.each(allAir)('in all air from $from', (row) => {
    const span = found.spans[0];
    if (span === undefined) throw new Error('the span must be found');
    expect(Math.abs(span.from - Date.parse(row.from))).toBeLessThan(1200);
    expect(Math.abs(span.to - Date.parse(row.to))).toBeLessThan(1200);
    const value = answerOf(span.allAir);
    expect(Math.abs(value.byAreaFraction - row.share)).toBeLessThan(within.laminarShare);
    expect(value.observedFraction).toBeCloseTo(row.observed, 9);
    expect(value.durationS / 60).toBeCloseTo(row.minutes, 1);
  });

  it.each(clearAir)('in clear air from $from', (row) => {
    const span = found.spans[0];
    if (span === undefined) throw new Error('the span must be found');
    expect(Math.abs(span.settledAt - Date.parse(row.from))).toBeLessThan(1200);
    const value = answerOf(span.clearAir);
    expect(Math.abs(value.byAreaFraction - row.share)).toBeLessThan(within.laminarShare);
    expect(value.durationS / 60).toBeCloseTo(row.minutes, 1);
    expect(value.lessS / 60).toBeCloseTo(row.lessMinutes, 1);
  });

  it('over the whole flight', () => {
    expect(Math.abs(answerOf(found.allAir).byAreaFraction - allAirShare)).toBeLessThan(
      within.laminarShare,
    );
    expect(Math.abs(answerOf(found.clearAir).byAreaFraction - clearAirShare)).toBeLessThan(
      within.laminarShare,
    );
  });

  it('is less on the right wing, where a cover hung', () => {
    const { L, R } = found.wings;
    if (L === null || R === null) throw new Error('both wings had suction');
    expect(answerOf(R.clearAir).byAreaFraction).toBeLessThan(answerOf(L.clearAir).byAreaFraction);
  });
});

describe('expected drag of flight A', () => {
  it('is not given: nobody stated which share of the drag the treated strips carry', () => {
    const runs = expectedDrag(viewOfEntries(flightA.entries));
    expect(runs.length).toBe(8);
    for (const { expected, beside } of runs) {
      expect(reasonOf(expected)).toBe('treatedDragShareNotStated');
      expect(reasonOf(beside)).toBe('treatedDragShareNotStated');
    }
  });

  it('stands beside what the fuel says once it is stated', () => {
    const sheet = {
      ...sheetA,
      aircraft: { ...sheetA.aircraft, treatedDragShare: { fraction: 0.7, from: 'invented' } },
    };
    const view = viewOfEntries(withSheet(flightA.entries, sheet));
    const points = pointResults(view);
    for (const { point, run, expected, beside } of expectedDrag(view)) {
      const { upperBoundFraction, stripsFraction, laminarAreaFraction } = answerOf(expected);
      expect(stripsFraction).toBeLessThan(upperBoundFraction);
      expect(upperBoundFraction).toBeLessThan(0.7 * laminarAreaFraction);
      const { measured } = answerOf(beside);
      const result = points.find((one) => one.point === point && one.run === run)?.result;
      expect(result !== undefined && 'drag' in result && result.drag).toEqual(measured);
    }
  });
});
