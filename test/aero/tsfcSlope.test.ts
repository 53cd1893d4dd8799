import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BaselineRun } from '../../src/aero/baseline.ts';
import { dragReductionFromSlope } from '../../src/aero/engineMap.ts';
import { polarDrag } from '../../src/aero/polar.ts';
import { fuelFlowOfThrust } from '../../src/aero/thrustMap.ts';
import { tsfcSlopeFromBaseline, type CardPolar } from '../../src/aero/tsfcSlope.ts';
import { itemAt, valueOf } from './referenceRow.ts';

/** Invented. */
const polar: CardPolar = {
  dynamicPressurePa: 7400,
  wingAreaM2: 57,
  zeroLiftCoefficient: 0.018,
  liftFactor: 0.06,
};
const WEIGHTS_N = [180_000, 170_000, 160_000, 150_000];

function runsOf(
  flowOf: (dragN: number, k: number) => number,
  standardUncertaintyKgPerS = 0.001,
): readonly BaselineRun[] {
  return WEIGHTS_N.map((weightN, k) => ({
    fuelFlowKgPerS: flowOf(polarDrag({ ...polar, weightN }).dragN, k),
    weightN,
    standardUncertaintyKgPerS,
    readingCount: 3,
  }));
}

describe('the slope of specific consumption', () => {
  it('is found in a baseline that was made with it', () => {
    fc.assert(
      fc.property(fc.integer({ min: -50, max: 50 }), (parts) => {
        const s = parts / 100;
        const runs = runsOf((dragN) => 0.3 * (dragN / 10_000) ** (1 + s));
        for (const trust of ['absolute', 'relative'] as const) {
          expect(valueOf(tsfcSlopeFromBaseline({ runs, polar, trust })).slope).toBeCloseTo(s, 10);
        }
      }),
    );
  });

  it('is that of a straight map at the thrust of the runs', () => {
    // F = c0 + c1 T has s = c1 T/F − 1.
    const map = { kind: 'line', idleKgPerS: 0.05, slopeKgPerSPerN: 2e-5 } as const;
    const runs = runsOf((dragN) => valueOf(fuelFlowOfThrust(map, dragN)));
    const { slope } = valueOf(tsfcSlopeFromBaseline({ runs, polar, trust: 'absolute' }));
    const dragN = polarDrag({ ...polar, weightN: 165_000 }).dragN;
    expect(slope).toBeCloseTo((2e-5 * dragN) / (0.05 + 2e-5 * dragN) - 1, 3);
    // And it gives nearly the drag reduction that the map gives.
    const base = valueOf(fuelFlowOfThrust(map, dragN));
    const reduced = valueOf(fuelFlowOfThrust(map, dragN * 0.9));
    const found = dragReductionFromSlope({ fuelReductionFraction: 1 - reduced / base, slope });
    expect(valueOf(found).dragReductionFraction).toBeCloseTo(0.1, 2);
  });

  it('has the doubt of the runs by absolute trust', () => {
    // Equal relative doubts u: u/√Σ(ln D − mean)².
    const runs = runsOf((dragN) => 0.3 * (dragN / 10_000)).map((run) => ({
      ...run,
      standardUncertaintyKgPerS: 0.002 * run.fuelFlowKgPerS,
    }));
    const logs = WEIGHTS_N.map((weightN) => Math.log(polarDrag({ ...polar, weightN }).dragN));
    const middle = logs.reduce((total, log) => total + log, 0) / 4;
    const spread = Math.hypot(...logs.map((log) => log - middle));
    const found = valueOf(tsfcSlopeFromBaseline({ runs, polar, trust: 'absolute' }));
    expect(found.standardUncertainty).toBeCloseTo(0.002 / spread, 10);
    expect(found.degreesOfFreedom).toBe(Infinity);
  });

  it('has the doubt of the scatter by relative trust, whatever was stated', () => {
    const bent = (u: number) =>
      valueOf(
        tsfcSlopeFromBaseline({
          runs: runsOf((dragN, k) => 0.3 * (dragN / 10_000) * (k % 2 === 0 ? 1.003 : 0.997), u),
          polar,
          trust: 'relative',
        }),
      );
    expect(bent(0.001).degreesOfFreedom).toBeCloseTo(2, 12);
    expect(bent(0.001).standardUncertainty).toBeGreaterThan(0.01);
    expect(bent(0.01).standardUncertainty).toBeCloseTo(bent(0.001).standardUncertainty, 10);
  });

  it('is no better known than the polar', () => {
    const runs = runsOf((dragN) => 0.3 * (dragN / 10_000) ** 0.8, 1e-6);
    const doubted = valueOf(
      tsfcSlopeFromBaseline({
        runs,
        polar: { ...polar, liftShareRelativeUncertainty: 0.05 },
        trust: 'absolute',
      }),
    );
    expect(doubted.standardUncertainty).toBeCloseTo(0.8 * 0.05, 5);
    // A polar with a twentieth more drag due to lift finds nearly that much less slope of ln F with ln D.
    const more = valueOf(
      tsfcSlopeFromBaseline({
        runs,
        polar: { ...polar, liftFactor: polar.liftFactor * 1.01 },
        trust: 'absolute',
      }),
    );
    expect(more.slope).toBeLessThan(-0.2);
  });
});

describe('a slope of specific consumption that cannot be given', () => {
  const runs = runsOf((dragN) => 0.3 * (dragN / 10_000));
  const first = itemAt(runs, 0);

  it.each([
    ['tooFewRuns', 'absolute', [first]],
    ['tooFewRuns', 'relative', runs.slice(0, 2)],
    ['oneWeight', 'absolute', [first, first, first]],
    ['slopeNotUsable', 'absolute', runsOf((dragN) => 0.3 * (10_000 / dragN))],
  ] as const)('is %s with %s trust', (because, trust, of) => {
    expect(tsfcSlopeFromBaseline({ runs: of, polar, trust })).toEqual({
      kind: 'unavailable',
      because,
    });
  });

  it('refuses a run or a polar that is none', () => {
    const of = (run: BaselineRun, aircraft: CardPolar) => () =>
      tsfcSlopeFromBaseline({ runs: [...runs, run], polar: aircraft, trust: 'absolute' });
    expect(of({ ...first, fuelFlowKgPerS: 0 }, polar)).toThrow(RangeError);
    expect(of(first, { ...polar, wingAreaM2: 0 })).toThrow(RangeError);
    expect(of(first, { ...polar, liftShareRelativeUncertainty: -0.1 })).toThrow(RangeError);
  });
});
