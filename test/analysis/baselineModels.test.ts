import { describe, expect, it } from 'vitest';
import type { BaselineRun } from '../../src/aero/baseline.ts';
import { bracketModel, carriedModel, fittedModel } from '../../src/analysis/baselineModels.ts';

/* F = 0.2 + 0.1 z + 0.5 (M - 0.72) kg/s, z = (W/170 kN)², exactly: a fit gives it back. */
const WREF = 170_000;
const flow = (weightN: number, mach: number): number =>
  0.2 + 0.1 * (weightN / WREF) ** 2 + 0.5 * (mach - 0.72);

function run(weightN: number, mach: number): BaselineRun {
  return {
    fuelFlowKgPerS: flow(weightN, mach),
    weightN,
    standardUncertaintyKgPerS: 0.001,
    readingCount: 3,
    mach,
  };
}

const MACHS = [0.714, 0.726, 0.718, 0.722, 0.726, 0.714, 0.724, 0.716];
const eight = MACHS.map((mach, index) => run(180_000 - 4000 * index, mach));

describe('how baseline runs become a model', () => {
  it('eight over more than a hundredth of Mach carry a term for it', () => {
    const model = fittedModel(eight, 0.72);
    expect(model?.method).toBe('fitWithMach');
    const at = { weightN: 165_000, mach: 0.723 };
    const value = model?.valueThrough(eight, at);
    expect(value?.fuelFlowKgPerS).toBeCloseTo(flow(at.weightN, at.mach), 9);
    expect(value?.machSlopeKgPerSPerMach).toBeCloseTo(0.5, 6);
  });

  it.each([
    ['seven', eight.slice(0, 7)],
    ['eight at one Mach number', eight.map((one) => run(one.weightN, 0.72))],
    // From the slowest and heaviest to the fastest and lightest: what either does cannot be told.
    [
      'eight whose Mach followed the weight',
      eight.map((one, k) => run(one.weightN, 0.714 + 0.002 * k)),
    ],
  ] as const)('%s do not', (_, runs) => {
    expect(fittedModel(runs, 0.72)?.method).toBe('fit');
  });

  it('one makes a pair, two a line, and none nothing', () => {
    const law = { elasticity: 0.5, standardUncertainty: 0.1 };
    expect(carriedModel(eight.slice(0, 1), law)?.method).toBe('pair');
    expect(carriedModel(eight.slice(0, 2), law)?.method).toBe('fit');
    expect(carriedModel([], law)).toBeNull();
    expect(fittedModel(eight.slice(0, 1), 0.72)).toBeNull();
  });

  it('two of many bracket a weight between them, and the rest has no share', () => {
    const three = [run(180_000, 0.72), run(170_000, 0.72), run(160_000, 0.72)];
    const model = bracketModel(three, [0, 2]);
    const value = model?.valueThrough(three, { weightN: 170_000, mach: 0.72 });
    // Flow goes with weight while nothing is known: each moved to 170 kN, then their mean.
    const [first, , last] = three.map((one) => (one.fuelFlowKgPerS * 170_000) / one.weightN);
    expect(value?.fuelFlowKgPerS).toBeCloseTo(((first ?? NaN) + (last ?? NaN)) / 2, 12);
    expect(value?.runShares[1]).toBe(0);
    expect(model?.method).toBe('bracket');
  });
});
