import { describe, expect, it } from 'vitest';
import type { BaselineRun, WeightElasticity } from '../../src/aero/baseline.ts';
import { bracketAt } from '../../src/aero/bracket.ts';
import { itemAt, valueOf } from './referenceRow.ts';

/* In lb/h and lb: the model has no unit of its own. */
const borrowed: WeightElasticity = { elasticity: 0.54, standardUncertainty: 0.05 };

function run(flow: number, weight: number, u: number): BaselineRun {
  return {
    fuelFlowKgPerS: flow,
    weightN: weight,
    standardUncertaintyKgPerS: u,
    readingCount: 3,
  };
}

describe('a bracket', () => {
  const before = run(2300, 38_000, 6);
  const steady = { before, weightN: 37_500, borrowed };

  it('means two off runs at the weight of the one between', () => {
    const after = run(2272, 37_000, 6);
    const at = valueOf(bracketAt({ ...steady, after }));
    const moved = [before, after].map(
      (each) => each.fuelFlowKgPerS * (37_500 / each.weightN) ** 0.54,
    );
    expect(at.fuelFlowKgPerS).toBeCloseTo((itemAt(moved, 0) + itemAt(moved, 1)) / 2, 9);
    expect(at.runShares).toEqual([38_000, 37_000].map((w) => (37_500 / w) ** 0.54 / 2));
    const perElasticity = moved.map((flow, k) => flow * Math.log(37_500 / (38_000 - 1000 * k)));
    const both = (itemAt(perElasticity, 0) + itemAt(perElasticity, 1)) / 2;
    expect(at.perElasticityKgPerS).toBeCloseTo(both, 9);
    // The way to either side nearly cancels: little beyond 6/√2 is left.
    const byHand = Math.hypot(
      6 * itemAt(at.runShares, 0),
      6 * itemAt(at.runShares, 1),
      both * 0.05,
    );
    expect(at.standardUncertaintyKgPerS).toBeCloseTo(byHand, 9);
    expect(at.standardUncertaintyKgPerS).toBeCloseTo(6 / Math.SQRT2, 1);
  });

  it('gives no value when the two differ by more than 2√2 of their doubt', () => {
    // Moved to one weight the first is 2283.59 lb/h; 2√2 · 6 = 16.97.
    const law = { ...borrowed, standardUncertainty: 0 };
    const at = (flow: number) =>
      bracketAt({ ...steady, borrowed: law, after: run(flow, 37_500, 6) }).kind;
    const [low, high] = [2300 * (37_500 / 38_000) ** 0.54, 6 * Math.SQRT2 * 2];
    expect(at(low - high * 0.99999)).toBe('ready');
    expect(at(low - high * 1.00001)).toBe('unavailable');
    expect(at(2283.6 - 16.9)).toBe('ready');
    expect(at(2283.6 - 17.1)).toBe('unavailable');
    expect(at(2283.6 + 16.9)).toBe('ready');
    expect(at(2283.6 + 17.1)).toBe('unavailable');
    expect(bracketAt({ ...steady, after: run(2400, 37_500, 6) })).toEqual({
      kind: 'unavailable',
      because: 'bracketDrifts',
    });
  });

  it('does not call a drift what the doubt of the weight law allows', () => {
    // Moved from 38 000 lb by 500 lb, a doubt of 0.5 in the exponent is 2283.6 ln(38/37.5) 0.5 = 15.1 lb/h: 2 hypot(6, 6, 15.1).
    const law = { ...borrowed, standardUncertainty: 0.5 };
    const at = (flow: number) =>
      bracketAt({ ...steady, borrowed: law, after: run(flow, 37_500, 6) }).kind;
    const limit = 2 * Math.hypot(6, 6, 2283.59 * Math.log(38 / 37.5) * 0.5);
    expect(at(2283.59 - limit + 0.1)).toBe('ready');
    expect(at(2283.59 - limit - 0.1)).toBe('unavailable');
  });

  it('judges the drift by the doubts of both', () => {
    // 2 √(3² + 4²) = 10 either way round.
    const at = (flow: number, u: readonly [number, number]) =>
      bracketAt({
        before: run(2300, 37_500, u[0]),
        after: run(flow, 37_500, u[1]),
        weightN: 37_500,
        borrowed,
      }).kind;
    for (const u of [
      [3, 4],
      [4, 3],
    ] as const) {
      expect(at(2309.9, u)).toBe('ready');
      expect(at(2310.1, u)).toBe('unavailable');
    }
  });
});
