import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  baselineAt,
  fitBaseline,
  liveBaseline,
  pairBaseline,
  UNKNOWN_WEIGHT_ELASTICITY,
  type BaselineRun,
  type WeightElasticity,
} from '../../src/aero/baseline.ts';
import { given, itemAt } from './referenceRow.ts';

/*
 * The model has no unit of its own: these runs are in lb/h and lb. An invented flight, worked with an
 * independent program: suction-off runs at 39 709 and 35 332 lb, each the mean of three readings.
 */
const first: BaselineRun = run(2344.7, 39_709, 5.87);
const last: BaselineRun = run(2204.0, 35_332, 5.73);
const borrowed: WeightElasticity = { elasticity: 0.54, standardUncertainty: 0.05 };

function run(flow: number, weight: number, u: number, readingCount = 3): BaselineRun {
  return {
    fuelFlowKgPerS: flow,
    weightN: weight,
    standardUncertaintyKgPerS: u,
    readingCount,
  };
}

const anyElasticity = fc.record({
  elasticity: fc.double({ min: 0.2, max: 1.8, noNaN: true }),
  standardUncertainty: fc.double({ min: 0.01, max: 0.6, noNaN: true }),
});
const anyWeight = fc.double({ min: 30_000, max: 45_000, noNaN: true });

describe('a baseline of two runs', () => {
  const baseline = given(fitBaseline({ runs: [first, last], trust: 'absolute' }));

  // Half a digit of the printed inputs moves the results by up to a tenth.
  it.each([
    [39_239, 2328.8, [0.887, 0.113]],
    [38_663, 2309.6, [0.751, 0.249]],
    [38_463, 2303.0, [0.703, 0.297]],
  ])('at %d lb gives %d lb/h, by shares', (weight, flow, shares) => {
    const at = baselineAt(baseline, weight);
    expect(Math.abs(at.fuelFlowKgPerS - flow)).toBeLessThan(0.1);
    for (const [k, share] of shares.entries()) {
      expect(Math.abs(itemAt(at.runShares, k) - share)).toBeLessThan(0.0015);
    }
    expect(at.perElasticityKgPerS).toBe(0);
  });

  it('passes through both, with their doubts', () => {
    for (const each of [first, last]) {
      const at = baselineAt(baseline, each.weightN);
      expect(at.fuelFlowKgPerS).toBeCloseTo(each.fuelFlowKgPerS, 8);
      expect(at.standardUncertaintyKgPerS).toBeCloseTo(each.standardUncertaintyKgPerS, 8);
      expect(at.leverage).toBeCloseTo(each.standardUncertaintyKgPerS ** 2, 6);
    }
  });

  it('has the intercept of the worked flight', () => {
    // 1669.11 ± 35.42 lb/h; the printed inputs fix it to about one.
    expect(Math.abs(itemAt(baseline.fit.coefficients, 0) - 1669.11)).toBeLessThan(1);
    const u = Math.sqrt(itemAt(itemAt(baseline.fit.covariance, 0), 0));
    expect(Math.abs(u - 35.42)).toBeLessThan(0.05);
  });

  it('carries its doubt by the shares', () => {
    fc.assert(
      fc.property(anyWeight, (weight) => {
        const { runShares, standardUncertaintyKgPerS } = baselineAt(baseline, weight);
        const byShares = Math.hypot(itemAt(runShares, 0) * 5.87, itemAt(runShares, 1) * 5.73);
        expect(byShares).toBeCloseTo(standardUncertaintyKgPerS, 7);
        expect(itemAt(runShares, 0) + itemAt(runShares, 1)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('states the elasticity its own curve has', () => {
    fc.assert(
      fc.property(anyWeight, (weight) => {
        const flow = (at: number) => baselineAt(baseline, at).fuelFlowKgPerS;
        const slope =
          Math.log(flow(weight * 1.0001) / flow(weight / 1.0001)) / (2 * Math.log(1.0001));
        expect(baselineAt(baseline, weight).weightElasticity).toBeCloseTo(slope, 6);
      }),
    );
  });

  it('does not depend on the reference weight', () => {
    const other = given(
      fitBaseline({ runs: [first, last], trust: 'absolute', referenceWeightN: 20_000 }),
    );
    expect(baselineAt(other, 37_000).fuelFlowKgPerS).toBeCloseTo(
      baselineAt(baseline, 37_000).fuelFlowKgPerS,
      7,
    );
  });
});

describe('a baseline of one run', () => {
  it('is moved along by the borrowed elasticity, and its doubt grows with the way', () => {
    // 2344.7 (36 000/39 709)^0.54 = 2223.774; u = 2223.774 √((5.87/2344.7)² + (0.05 ln(36 000/39 709))²) = 12.24.
    const at = baselineAt(pairBaseline(first, borrowed), 36_000);
    expect(at.fuelFlowKgPerS).toBeCloseTo(2344.7 * Math.exp(0.54 * Math.log(36_000 / 39_709)), 9);
    expect(at.fuelFlowKgPerS).toBeCloseTo(2223.774, 3);
    expect(at.standardUncertaintyKgPerS).toBeCloseTo(12.24, 1);
    expect(at.weightElasticity).toBe(0.54);
  });

  it('is the run itself at its own weight', () => {
    const at = baselineAt(pairBaseline(first, borrowed), first.weightN);
    expect(at.fuelFlowKgPerS).toBe(first.fuelFlowKgPerS);
    expect(at.standardUncertaintyKgPerS).toBe(first.standardUncertaintyKgPerS);
    expect(at.runShares).toEqual([1]);
  });
});

describe('the live baseline', () => {
  it('waits for a run, pairs one, fits two', () => {
    expect(liveBaseline([], borrowed)).toEqual({ kind: 'unavailable', because: 'noRuns' });
    expect(liveBaseline([first], borrowed).kind).toBe('pair');
    expect(liveBaseline([first, last], borrowed).kind).toBe('fit');
  });

  it('has an elasticity between what was borrowed and what was flown', () => {
    const flown = baselineAt(
      given(fitBaseline({ runs: [first, last], trust: 'absolute' })),
      37_520.5,
    ).weightElasticity;
    const live = given(liveBaseline([first, last], borrowed));
    const found = baselineAt(live, 37_520.5).weightElasticity;
    expect(found).toBeGreaterThan(Math.min(flown, 0.54));
    expect(found).toBeLessThan(Math.max(flown, 0.54));
  });

  it('takes a certain elasticity at its word and ignores a worthless one', () => {
    const runs = [first, last];
    const of = (standardUncertainty: number) =>
      baselineAt(
        given(liveBaseline(runs, { elasticity: 0.9, standardUncertainty })),
        (first.weightN + last.weightN) / 2,
      );
    expect(of(1e-6).weightElasticity).toBeCloseTo(0.9, 6);
    const free = baselineAt(given(fitBaseline({ runs, trust: 'absolute' })), 30_000);
    const loose = given(liveBaseline(runs, { elasticity: 0.9, standardUncertainty: 1e6 }));
    expect(baselineAt(loose, 30_000).fuelFlowKgPerS).toBeCloseTo(free.fuelFlowKgPerS, 4);
  });

  it('is never surer without the borrowed row than with it', () => {
    const free = given(fitBaseline({ runs: [first, last], trust: 'absolute' }));
    fc.assert(
      fc.property(anyElasticity, anyWeight, (of, weight) => {
        const held = given(liveBaseline([first, last], of));
        expect(baselineAt(held, weight).standardUncertaintyKgPerS).toBeLessThanOrEqual(
          baselineAt(free, weight).standardUncertaintyKgPerS * (1 + 1e-9),
        );
      }),
    );
  });

  it('accounts for its whole doubt by runs and elasticity', () => {
    // The row's doubt is u_E times the mean flow of the runs, the share's is the fitted flow: alike to a per cent.
    fc.assert(
      fc.property(anyElasticity, anyWeight, (of, weight) => {
        const at = baselineAt(given(liveBaseline([first, last], of)), weight);
        const parts = Math.hypot(
          itemAt(at.runShares, 0) * 5.87,
          itemAt(at.runShares, 1) * 5.73,
          at.perElasticityKgPerS * of.standardUncertainty,
        );
        expect(Math.abs(parts / at.standardUncertaintyKgPerS - 1)).toBeLessThan(0.01);
      }),
    );
  });

  it('without one to borrow spans no weight effect to all of it', () => {
    // A half-range of 1 about 1, rectangular.
    expect(UNKNOWN_WEIGHT_ELASTICITY.elasticity).toBe(1);
    expect(UNKNOWN_WEIGHT_ELASTICITY.standardUncertainty * Math.sqrt(3)).toBeCloseTo(1, 15);
  });
});

describe('a baseline that cannot be given', () => {
  it('has one run, or runs at one weight', () => {
    expect(fitBaseline({ runs: [first], trust: 'absolute' })).toEqual({
      kind: 'unavailable',
      because: 'tooFewObservations',
    });
    const again = run(2340, first.weightN, 6);
    expect(fitBaseline({ runs: [first, again], trust: 'absolute' })).toEqual({
      kind: 'unavailable',
      because: 'dependentColumns',
    });
  });

  it('refuses a run that is no run', () => {
    const runs = [first, run(0, 35_000, 5)];
    expect(() => fitBaseline({ runs, trust: 'absolute' })).toThrow(RangeError);
    expect(() => fitBaseline({ runs: [first, last], trust: 'relative', borrowed })).toThrow(
      RangeError,
    );
  });
});
