import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { baselineAt, fitBaseline, type BaselineRun } from '../../src/aero/baseline.ts';
import { BASELINE_LIMITS, baselineGates } from '../../src/aero/baselineGates.ts';
import { fitBaselineWithMach, machSpanOf } from '../../src/aero/machTerm.ts';
import { given, itemAt, valueOf } from './referenceRow.ts';

const WREF = 380_000;
const MREF = 0.75;
const TRUE = { a: 1.2, b: 0.9, m: 3 };

/** A bank of runs: weight falls as fuel burns while the Mach number goes up and down. */
const MACHS = [0.744, 0.752, 0.747, 0.756, 0.745, 0.753, 0.749, 0.755];
const WEIGHTS = MACHS.map((_, k) => 420_000 - 11_000 * k);

function flowAt(weightN: number, mach: number): number {
  return TRUE.a + TRUE.b * (weightN / WREF) ** 2 + TRUE.m * (mach - MREF);
}

function runsOf(
  machs: readonly number[] = MACHS,
  error: (k: number) => number = () => 0,
): readonly BaselineRun[] {
  return machs.map((mach, k) => {
    const weightN = 420_000 - 11_000 * k;
    return {
      fuelFlowKgPerS: flowAt(weightN, mach) + error(k),
      weightN,
      standardUncertaintyKgPerS: 0.004,
      readingCount: 3,
      mach,
    };
  });
}

function withoutMach({
  fuelFlowKgPerS,
  weightN,
  standardUncertaintyKgPerS,
}: BaselineRun): BaselineRun {
  return { fuelFlowKgPerS, weightN, standardUncertaintyKgPerS, readingCount: 3 };
}

const asked = { trust: 'absolute', referenceWeightN: WREF, referenceMach: MREF } as const;

describe('a baseline with a Mach term', () => {
  it('is found exactly where it was put', () => {
    const baseline = given(fitBaselineWithMach({ runs: runsOf(), ...asked }));
    expect(baseline.machTerm).toMatchObject({
      kind: 'fitted',
      lowestMach: 0.744,
      highestMach: 0.756,
    });
    expect(baseline.machTerm?.slopeKgPerSPerMach).toBeCloseTo(3, 9);
    const at = baselineAt(baseline, 400_000, 0.748);
    expect(at.fuelFlowKgPerS).toBeCloseTo(flowAt(400_000, 0.748), 12);
    expect(at.machSlopeKgPerSPerMach).toBeCloseTo(3, 9);
    expect(at.weightElasticity).toBeCloseTo(
      (2 * TRUE.b * (400 / 380) ** 2) / flowAt(400_000, 0.748),
      10,
    );
    // Without a Mach number the card's is meant.
    expect(baselineAt(baseline, 400_000)).toEqual(baselineAt(baseline, 400_000, MREF));
  });

  it('carries the doubts of the runs by their shares', () => {
    const baseline = given(fitBaselineWithMach({ runs: runsOf(), ...asked }));
    fc.assert(
      fc.property(
        fc.integer({ min: 330_000, max: 430_000 }),
        fc.integer({ min: 740, max: 760 }),
        (weightN, thousandths) => {
          const at = baselineAt(baseline, weightN, thousandths / 1000);
          expect(at.runShares.reduce((total, share) => total + share, 0)).toBeCloseTo(1, 9);
          const byShares = 0.004 * Math.hypot(...at.runShares);
          expect(at.standardUncertaintyKgPerS).toBeCloseTo(byShares, 12);
        },
      ),
    );
  });

  it('sees through Mach numbers that a line in weight alone takes for scatter', () => {
    const free = given(fitBaseline({ runs: runsOf(), trust: 'relative', referenceWeightN: WREF }));
    const held = given(fitBaselineWithMach({ runs: runsOf(), ...asked, trust: 'relative' }));
    expect(valueOf(free.fit.residualStandardDeviation)).toBeGreaterThan(1);
    expect(valueOf(held.fit.residualStandardDeviation)).toBeLessThan(1e-9);
  });

  it('does not depend on the reference Mach number or weight', () => {
    const runs = runsOf(MACHS, (k) => 0.003 * Math.sin(k * 5));
    const one = given(fitBaselineWithMach({ runs, trust: 'absolute' }));
    const other = given(fitBaselineWithMach({ runs, ...asked, referenceMach: 0.7 }));
    const [a, b] = [one, other].map((of) => baselineAt(of, 390_000, 0.751));
    expect(a?.fuelFlowKgPerS).toBeCloseTo(b?.fuelFlowKgPerS ?? 0, 10);
    expect(a?.standardUncertaintyKgPerS).toBeCloseTo(b?.standardUncertaintyKgPerS ?? 0, 10);
  });
});

describe('a Mach slope known beforehand', () => {
  const known = { slopeKgPerSPerMach: 3, standardUncertainty: 0.5 };

  it('serves where the runs span too little', () => {
    const narrow = runsOf([0.751, 0.752, 0.75, 0.749]);
    const baseline = given(fitBaselineWithMach({ runs: narrow, ...asked, known }));
    expect(baselineAt(baseline, 400_000, 0.754).fuelFlowKgPerS).toBeCloseTo(
      flowAt(400_000, 0.754),
      10,
    );
  });

  it('brings its doubt by the way from the Mach numbers of the runs', () => {
    const alike = runsOf([0.75, 0.75, 0.75, 0.75]);
    const baseline = given(fitBaselineWithMach({ runs: alike, ...asked, known }));
    const here = baselineAt(baseline, 400_000, 0.75);
    const there = baselineAt(baseline, 400_000, 0.754);
    expect(here.perKnownMachSlope).toBeCloseTo(0, 12);
    expect(there.perKnownMachSlope).toBeCloseTo(0.004, 12);
    expect(there.standardUncertaintyKgPerS).toBeCloseTo(
      Math.hypot(here.standardUncertaintyKgPerS, 0.004 * 0.5),
      12,
    );
  });

  it('moves the baseline as it says', () => {
    const runs = runsOf(MACHS, (k) => 0.003 * Math.sin(k * 5));
    const of = (slopeKgPerSPerMach: number) =>
      baselineAt(
        given(fitBaselineWithMach({ runs, ...asked, known: { ...known, slopeKgPerSPerMach } })),
        370_000,
        0.746,
      );
    const step = 1e-3;
    const seen = (of(3 + step).fuelFlowKgPerS - of(3 - step).fuelFlowKgPerS) / (2 * step);
    expect(of(3).perKnownMachSlope).toBeCloseTo(seen, 9);
  });
});

describe('a Mach term that cannot be given', () => {
  it.each([
    ['machUnknown', runsOf().map((run) => withoutMach(run))],
    ['machUnknown', runsOf().map((run, k) => (k === 3 ? withoutMach(run) : run))],
    ['tooFewForMach', runsOf(MACHS.slice(0, 7))],
    ['machSpanTooSmall', runsOf(MACHS.map((mach) => 0.75 + (mach - 0.75) * 0.8))],
    // Mach crept up as the aircraft became lighter.
    ['machFollowsWeight', runsOf(WEIGHTS.map((weight) => 0.74 + (420_000 - weight) * 2e-7))],
  ])('is %s', (because, runs) => {
    const reason = { kind: 'unavailable', because };
    expect(machSpanOf(runs)).toEqual(reason);
    expect(fitBaselineWithMach({ runs, ...asked })).toEqual(reason);
  });

  it('spans a hundredth of Mach and no less', () => {
    const of = (top: number) => runsOf(MACHS.map((_, k) => (k % 2 === 0 ? 0.74 : top)));
    expect(machSpanOf(of(0.75)).kind).toBe('ready');
    expect(machSpanOf(of(0.7499)).kind).toBe('unavailable');
  });

  it('has no runs enough, or runs at one weight', () => {
    const [first] = runsOf();
    const one = first === undefined ? [] : [first];
    expect(fitBaselineWithMach({ runs: one, ...asked })).toEqual({
      kind: 'unavailable',
      because: 'tooFewObservations',
    });
    const level = runsOf().map((run) => ({ ...run, weightN: 400_000 }));
    expect(fitBaselineWithMach({ runs: level, ...asked })).toEqual({
      kind: 'unavailable',
      because: 'dependentColumns',
    });
  });

  it('refuses a Mach number, a slope or a doubt that is none', () => {
    const bad = runsOf([...MACHS.slice(1), 0]);
    expect(() => fitBaselineWithMach({ runs: bad, ...asked })).toThrow(RangeError);
    const slope = (slopeKgPerSPerMach: number, standardUncertainty: number) => () =>
      fitBaselineWithMach({
        runs: runsOf(),
        ...asked,
        known: { slopeKgPerSPerMach, standardUncertainty },
      });
    expect(slope(Number.NaN, 1)).toThrow(RangeError);
    expect(slope(1, -1)).toThrow(RangeError);
    const baseline = given(fitBaselineWithMach({ runs: runsOf(), ...asked }));
    expect(() => baselineAt(baseline, 400_000, Number.NaN)).toThrow(RangeError);
    expect(() => fitBaselineWithMach({ runs: runsOf(), ...asked, referenceMach: 0 })).toThrow(
      RangeError,
    );
  });
});

describe('the gates of a baseline with a Mach term', () => {
  const baseline = given(fitBaselineWithMach({ runs: runsOf(), ...asked }));
  const at = (weightN: number, mach: number) =>
    baselineGates({
      baseline,
      weightN,
      mach,
      machDifference: mach - MREF,
      altitudeDifferenceM: 0,
    });

  it('let through every Mach number of the data', () => {
    expect(at(376_000, 0.744)).toEqual([]);
    expect(at(354_000, 0.7555)).toEqual([]);
    // 0.744 is more than 0.005 off the card, which a line in weight alone refuses.
    const plain = given(fitBaseline({ runs: runsOf(), trust: 'absolute' }));
    const condition = { weightN: 376_000, mach: 0.744, altitudeDifferenceM: 0 };
    expect(baselineGates({ baseline: plain, ...condition, machDifference: -0.006 })).toEqual([
      'mach',
    ]);
  });

  it('strike a Mach number outside them', () => {
    expect(at(376_000, 0.7435)).toContain('mach');
    expect(at(376_000, 0.7565)).toContain('mach');
  });

  it('strike a corner that neither range shows', () => {
    // Heaviest and fastest: each seen, never together.
    expect(itemAt(WEIGHTS, 0)).toBe(420_000);
    expect(at(420_000, 0.756)).toEqual(['leverage']);
  });

  it('count the third coefficient', () => {
    // Eight readings less three coefficients leave five.
    const thin = given(
      fitBaselineWithMach({ runs: runsOf().map((run) => ({ ...run, readingCount: 1 })), ...asked }),
    );
    const gates = (fewestToSpare: number) =>
      baselineGates({
        baseline: thin,
        weightN: 376_000,
        machDifference: 0,
        altitudeDifferenceM: 0,
        limits: { ...BASELINE_LIMITS, fewestToSpare },
      });
    expect(gates(5)).toEqual([]);
    expect(gates(6)).toEqual(['tooFewToSpare']);
  });
});
