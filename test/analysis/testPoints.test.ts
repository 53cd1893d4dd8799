import { describe, expect, it } from 'vitest';
import { pointResults } from '../../src/analysis/testPoints.ts';
import type { PointNumber, PointResult } from '../../src/analysis/results.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { idOfLine } from '../flights/scriptToEntries.ts';
import {
  flightA,
  lineOfGlance,
  LB_PER_H_PER_KG_PER_S,
  LB_PER_N,
  rewritten,
  bodyOf,
  viewOfEntries,
  without,
} from './flights.ts';

/*
 * Expected values: the worked debrief of flight A (test/flights/scripts/flight-a-oracle.json), tolerances
 * its own `compareWithin`.
 */
const within = oracle.compareWithin;
const view = viewOfEntries(flightA.entries);
const results = pointResults(view);

function resultOf(point: string, run: number, of: readonly PointResult[] = results): PointResult {
  const found = of.find((result) => result.point === point && result.run === run);
  if (found === undefined) throw new RangeError(`${point} run ${run} must have a result`);
  return found;
}

function numberOf(result: PointResult): Extract<PointNumber, { kind: 'valid' | 'indicative' }> {
  const { result: number } = result;
  if (number.kind !== 'valid' && number.kind !== 'indicative') {
    throw new RangeError(`${result.point} must have a number, got ${number.kind}`);
  }
  return number;
}

function relative(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}

/** What is left out and why, in the words of the worked debrief. */
const WORDS: readonly (readonly [start: string, reason: string])[] = [
  ['Mach drift', 'machDrift'],
  ['before the first on-condition', 'beforeOnCondition'],
  ['climb', 'climb'],
];

describe('results of flight A after landing', () => {
  it('has a result for every run and a worked one to hold it against', () => {
    expect(oracle.points.length).toBe(8);
    expect(oracle.baseline.runs.length).toBe(2);
    expect(results.length).toBe(10);
  });

  it.each(oracle.points)('$testPoint run $run saves $fuelReduction_pct %', (row) => {
    const result = resultOf(row.testPoint, row.run);
    const number = numberOf(result);
    expect(number.kind).toBe(row.status === 'valid' ? 'valid' : 'indicative');
    expect(result.state).toBe(row.state);
    const { fuel, drag } = number;
    expect(Math.abs(fuel.fraction * 100 - row.fuelReduction_pct)).toBeLessThan(
      within.reductions_pct,
    );
    expect(relative(fuel.standardUncertainty * 100, row.u_1sigma_pct)).toBeLessThan(
      within.uncertainties_relative,
    );
    const [low = NaN, high = NaN] = row.interval95_pct;
    expect(Math.abs(fuel.interval95.low * 100 - low)).toBeLessThan(0.2);
    expect(Math.abs(fuel.interval95.high * 100 - high)).toBeLessThan(0.2);
    if ('because' in drag) throw new Error(drag.because);
    expect(Math.abs(drag.fraction * 100 - row.dragReduction_pct)).toBeLessThan(
      within.reductions_pct,
    );
    expect(relative(drag.standardUncertainty * 100, row.dragReduction_u_1sigma_pct)).toBeLessThan(
      within.uncertainties_relative,
    );
    const [dragLow = NaN, dragHigh = NaN] = row.dragReduction_interval95_pct;
    expect(Math.abs(drag.interval95.low * 100 - dragLow)).toBeLessThan(0.2);
    expect(Math.abs(drag.interval95.high * 100 - dragHigh)).toBeLessThan(0.2);
    expect(number.provisional).toEqual([]);
    expect(number.broken).toEqual([]);
  });

  it.each(oracle.points)('$testPoint run $run uses and leaves out the right readings', (row) => {
    const result = resultOf(row.testPoint, row.run);
    expect(result.readingsUsed.map((glance) => lineOfGlance(view, glance))).toEqual(
      row.readingsUsed,
    );
    expect(result.readingsLeftOut.map(({ glance }) => lineOfGlance(view, glance))).toEqual(
      row.readingsLeftOut.map(({ n }) => n),
    );
    row.readingsLeftOut.forEach(({ why }, index) => {
      const expected = why.map(
        (words) => WORDS.find(([start]) => words.startsWith(start))?.[1] ?? words,
      );
      expect(result.readingsLeftOut[index]?.broken).toEqual(expect.arrayContaining(expected));
    });
  });

  it.each(oracle.points)('$testPoint run $run is made of its flows and weights', (row) => {
    const number = numberOf(resultOf(row.testPoint, row.run));
    const { madeOf } = number;
    const flow = (kgPerS: number): number => kgPerS * LB_PER_H_PER_KG_PER_S;
    expect(relative(flow(madeOf.flowKgPerS), row.meanCorrectedFuelFlow_lb_per_h)).toBeLessThan(
      within.flows_relative,
    );
    expect(relative(flow(madeOf.flowAtCardKgPerS), row.levelFlowAtCard_lb_per_h)).toBeLessThan(
      within.flows_relative,
    );
    expect(
      relative(flow(madeOf.baselineAtThatWeightKgPerS), row.baselineAtThatWeight_lb_per_h),
    ).toBeLessThan(within.flows_relative);
    expect(relative(madeOf.weightN * LB_PER_N, row.weight_lb)).toBeLessThan(
      within.weights_relative,
    );
    expect(relative(madeOf.weightAtCardN * LB_PER_N, row.weightAtCard_lb)).toBeLessThan(
      within.weights_relative,
    );
    expect(madeOf.baselineRuns).toEqual(['TP01', 'TP09']);
    expect(madeOf.method).toBe('fit');
    expect(madeOf.borrowedFrom).toBeNull();
    const parts = madeOf.uncertaintyParts;
    expect(relative(parts.run * 100, row.uParts_pct.run)).toBeLessThan(
      within.uncertainties_relative,
    );
    expect(relative(parts.baseline * 100, row.uParts_pct.baseline)).toBeLessThan(
      within.uncertainties_relative,
    );
    expect(relative(parts.calibration * 100, row.uParts_pct.calibration)).toBeLessThan(
      within.uncertainties_relative,
    );
    // Half the last printed digit.
    expect(Math.abs(parts.weight * 100 - row.uParts_pct.weight)).toBeLessThan(0.0015);
    expect(Math.abs(flow(number.grossKgPerS ?? NaN) - row.gross_lb_per_h)).toBeLessThan(2.4);
    expect(relative(flow(number.suctionUnitKgPerS ?? NaN), row.unit_lb_per_h)).toBeLessThan(
      within.flows_relative,
    );
    expect(Math.abs(flow(number.netKgPerS ?? NaN) - row.net_lb_per_h)).toBeLessThan(2.4);
    expect(Math.abs((number.netFraction ?? NaN) * 100 - row.netReduction_pct)).toBeLessThan(
      within.reductions_pct,
    );
  });

  it.each(oracle.baseline.runs)('$testPoint makes the baseline', (row) => {
    const { result, readingsUsed } = resultOf(row.testPoint, row.run);
    if (result.kind !== 'baseline') throw new Error(result.kind);
    expect(
      relative(result.flowAtCardKgPerS * LB_PER_H_PER_KG_PER_S, row.levelFlowAtCard_lb_per_h),
    ).toBeLessThan(within.flows_relative);
    expect(relative(result.weightAtCardN * LB_PER_N, row.weightAtCard_lb)).toBeLessThan(
      within.weights_relative,
    );
    expect(
      relative(result.standardUncertaintyKgPerS * LB_PER_H_PER_KG_PER_S, row.u_ind_lb_per_h),
    ).toBeLessThan(within.uncertainties_relative);
    expect(readingsUsed.map((glance) => lineOfGlance(view, glance))).toEqual(row.readingsUsed);
    expect(result.provisional).toEqual([]);
    for (const n of row.readingsUsed) {
      expect(result.entries).toContain(idOfLine(flightA.idOf, n));
    }
  });
});

describe('amendments of flight A', () => {
  const ignored = oracle.ifAnAmendmentIsIgnored.flatMap(({ amendment, changes }) =>
    changes.map((change) => ({ amendment, ...change })),
  );

  it.each(ignored)(
    'without amendment $amendment $testPoint would say $fuelReduction_pct %',
    ({ amendment, testPoint, run, fuelReduction_pct }) => {
      const dropped = idOfLine(flightA.idOf, amendment);
      const entries = without(flightA.entries, ({ id }) => id === dropped);
      const number = numberOf(resultOf(testPoint, run, pointResults(viewOfEntries(entries))));
      expect(Math.abs(number.fuel.fraction * 100 - fuelReduction_pct)).toBeLessThan(
        within.reductions_pct,
      );
    },
  );
});

describe('traps of the day', () => {
  const naive = oracle.points.filter(({ testPoint }) =>
    ['TP05', 'TP07', 'TP08'].includes(testPoint),
  );

  it.each(naive)('$testPoint is not compared with the heavy baseline alone', (row) => {
    const number = numberOf(resultOf(row.testPoint, row.run));
    expect(number.fuel.fraction * 100).toBeLessThan(29.5);
    expect(Math.abs(number.fuel.fraction * 100 - row.naiveReduction_pct)).toBeGreaterThan(2);
  });

  it('TP08 is corrected for its falling Mach number', () => {
    const row = oracle.points.find(({ testPoint }) => testPoint === 'TP08');
    const number = numberOf(resultOf('TP08', 1));
    expect(
      Math.abs(number.fuel.fraction * 100 - (row?.ifGatedButNotCorrected_pct ?? NaN)),
    ).toBeGreaterThan(0.5);
  });

  it('sorts TP06 and the interrupted run of TP04 as indicative, never as a result', () => {
    expect(resultOf('TP06', 1).result.kind).toBe('indicative');
    expect(resultOf('TP04', 1).result.kind).toBe('indicative');
    expect(resultOf('TP04', 2).result.kind).toBe('valid');
  });
});

describe('what stands in when the baseline is thin', () => {
  const noLight = without(
    flightA.entries,
    (entry) => entry.kind === 'fuelRead' && entry.wall >= tabletStartOf('TP09'),
  );

  it('carries one run with the borrowed elasticity and says so', () => {
    const number = numberOf(resultOf('TP08', 1, pointResults(viewOfEntries(noLight))));
    expect(number.madeOf.method).toBe('pair');
    expect(number.madeOf.borrowedFrom).not.toBeNull();
    expect(number.provisional).toContain('borrowedElasticity');
    // The pair of the live example: its own reading 121 lies at 28.60 +/- 0.59.
    expect(Math.abs(number.fuel.fraction * 100 - 28.6)).toBeLessThan(0.3);
  });

  it('widens and says provisional where nothing can be borrowed', () => {
    const bare = rewritten(noLight, (entry) => {
      if (entry.kind !== 'flightOpened') return bodyOf(entry);
      const { borrowedBaseline: _, ...sheet } = entry.body.sheet;
      return { ...entry.body, sheet };
    });
    const number = numberOf(resultOf('TP08', 1, pointResults(viewOfEntries(bare))));
    expect(number.provisional).toContain('noBorrowedElasticity');
    expect(number.fuel.standardUncertainty).toBeGreaterThan(0.03);
  });

  function tabletStartOf(point: string): number {
    const start = flightA.entries.find(
      (entry) => entry.kind === 'testPointStarted' && entry.body.point === point,
    );
    return start?.wall ?? Infinity;
  }
});
