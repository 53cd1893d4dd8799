import { describe, expect, it } from 'vitest';
import { fitBaseline, pairBaseline, type BaselineRun } from '../../src/aero/baseline.ts';
import { baselineGates } from '../../src/aero/baselineGates.ts';
import { given } from './referenceRow.ts';

/* In lb/h and lb: the gates ask for ratios and ranges only. */
const first = run(2344.7, 39_709, 5.87);
const last = run(2204, 35_332, 5.73);
const borrowed = { elasticity: 0.54, standardUncertainty: 0.05 };

function run(flow: number, weight: number, u: number, readingCount = 3): BaselineRun {
  return {
    fuelFlowKgPerS: flow,
    weightN: weight,
    standardUncertaintyKgPerS: u,
    readingCount,
  };
}

describe('the gates of a baseline', () => {
  const baseline = given(fitBaseline({ runs: [first, last], trust: 'absolute' }));
  const inside = { baseline, weightN: 37_000, machDifference: 0, altitudeDifferenceM: 0 };

  it('let through what lies inside', () => {
    expect(baselineGates(inside)).toEqual([]);
    expect(baselineGates({ ...inside, weightN: first.weightN })).toEqual([]);
    expect(baselineGates({ ...inside, weightN: last.weightN })).toEqual([]);
  });

  it.each([
    ['mach', { machDifference: -0.0051 }],
    ['mach', { machDifference: 0.0051 }],
    ['altitude', { altitudeDifferenceM: -1525 }],
    ['altitude', { altitudeDifferenceM: 1525 }],
  ])('name %s beyond its limit', (gate, change) => {
    expect(baselineGates({ ...inside, ...change })).toEqual([gate]);
  });

  it('let through the limits themselves', () => {
    expect(baselineGates({ ...inside, machDifference: 0.005, altitudeDifferenceM: -1524 })).toEqual(
      [],
    );
  });

  it('name the weights and the leverage outside the data', () => {
    for (const weightN of [35_300, 39_800]) {
      expect(baselineGates({ ...inside, weightN })).toContain('outsideWeights');
    }
    expect(baselineGates({ ...inside, weightN: 45_000 })).toEqual(['outsideWeights', 'leverage']);
  });

  it('count readings, not runs', () => {
    const thin = (a: number, b: number) =>
      given(
        fitBaseline({
          runs: [run(2344.7, 39_709, 5.87, a), run(2204, 35_332, 5.73, b)],
          trust: 'absolute',
        }),
      );
    expect(baselineGates({ ...inside, baseline: thin(3, 2) })).toEqual([]);
    expect(baselineGates({ ...inside, baseline: thin(2, 2) })).toEqual([
      'tooFewReadings',
      'tooFewToSpare',
    ]);
  });

  it('leave weight to the borrowed elasticity where there is one', () => {
    const pair = pairBaseline(first, borrowed);
    const far = { ...inside, baseline: pair, weightN: 30_000 };
    expect(baselineGates(far)).toEqual([]);
    expect(baselineGates({ ...far, machDifference: 0.01 })).toEqual(['mach']);
  });
});
