import { describe, expect, it } from 'vitest';
import { comparisons } from '../../src/analysis/comparisons.ts';
import { startFlight } from '../../src/record/flight.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { flightA, LB_PER_H_PER_KG_PER_S, viewOfEntries } from './flights.ts';

/* Expected values: the worked debrief of flight A; tolerances its own `compareWithin`. */
const within = oracle.compareWithin;
const rows = comparisons(viewOfEntries(flightA.entries));

describe('settings of flight A against nominal', () => {
  it('compares every other finished run, and no unfinished one', () => {
    expect(oracle.comparisons.length).toBe(5);
    expect(rows.map(({ point, run }) => `${point} ${run}`)).toEqual(
      oracle.comparisons.map(({ testPoint, run }) => `${testPoint} ${run}`),
    );
  });

  it.each(oracle.comparisons)('$testPoint against $against', (expected) => {
    const row = rows.find(({ point }) => point === expected.testPoint);
    if (row === undefined) throw new RangeError(`${expected.testPoint} must be compared`);
    expect(row.against.point).toBe(expected.against);
    expect(Math.abs(row.differenceFraction * 100 - expected.difference_pct)).toBeLessThan(
      within.reductions_pct,
    );
    expect(Math.abs((row.twoUFraction * 100) / expected.twoU_pct - 1)).toBeLessThan(
      within.uncertainties_relative,
    );
    expect(row.fractionDiffers).toBe(expected.perCentDiffers);
    const saved = row.savedDifferenceKgPerS * LB_PER_H_PER_KG_PER_S;
    // Two flows, each within a thousandth of some 2 300 lb/h.
    expect(Math.abs(saved - expected.savingDifference_lb_per_h)).toBeLessThan(4.6);
    const twoU = row.savedTwoUKgPerS * LB_PER_H_PER_KG_PER_S;
    expect(Math.abs(twoU / expected.twoU_lb_per_h - 1)).toBeLessThan(within.uncertainties_relative);
    expect(row.savingDiffers).toBe(expected.savingDiffers);
  });

  it('has nothing to compare before there are two', () => {
    expect(comparisons(startFlight().view())).toEqual([]);
  });
});
