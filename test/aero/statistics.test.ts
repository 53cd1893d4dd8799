import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fisherExact, type TwoByTwo } from '../../src/aero/statistics/fisherExact.ts';
import { kaplanMeier, survivalAt } from '../../src/aero/statistics/survival.ts';
import { itemAt, valueOf } from './referenceRow.ts';

/** Table; two-sided, less, greater; conditional odds ratio; its exact 95 % interval: mpmath 1.3.0, 40 digits. */
const EXACT: readonly (readonly [
  TwoByTwo,
  p: readonly [number, number, number],
  odds: number,
  interval: readonly [number, number],
])[] = [
  [
    [
      [3, 1],
      [1, 3],
    ],
    [0.485714285714286, 0.985714285714286, 0.242857142857143],
    6.4083196582,
    [0.211735595447, 626.243530589],
  ],
  [
    [
      [2, 10],
      [15, 3],
    ],
    [0.000536724119143436, 0.000465180943362905, 0.999984519018686],
    0.0469366390497,
    [0.00331716395066, 0.363189602357],
  ],
  [
    [
      [3, 1],
      [3, 41],
    ],
    [0.0043940795559667, 0.999922910884983, 0.0043940795559667],
    33.9283769843,
    [2.09627292549, 2199.30505712],
  ],
  [
    [
      [10, 20],
      [30, 15],
    ],
    [0.00882476027267599, 0.00449985455643551, 0.999021344628604],
    0.255049785684,
    [0.0830968091653, 0.736909213684],
  ],
];

const anyTable = fc.tuple(
  fc.tuple(fc.nat(30), fc.nat(30)),
  fc.tuple(fc.nat(30), fc.nat(30)),
) satisfies fc.Arbitrary<TwoByTwo>;

describe('the exact test', () => {
  it.each(EXACT)(
    'of %j agrees with many-digit arithmetic',
    (table, [two, less, greater], odds, interval) => {
      const found = valueOf(fisherExact(table));
      expect(Math.abs(found.pTwoSided / two - 1)).toBeLessThan(1e-12);
      expect(Math.abs(found.pLess / less - 1)).toBeLessThan(1e-12);
      expect(Math.abs(found.pGreater / greater - 1)).toBeLessThan(1e-12);
      expect(Math.abs(found.oddsRatio / odds - 1)).toBeLessThan(1e-9);
      for (const [k, bound] of interval.entries()) {
        expect(Math.abs(itemAt(found.oddsRatioInterval95, k) / bound - 1)).toBeLessThan(1e-9);
      }
    },
  );

  it('has open ends where a cell is empty', () => {
    // All three losses among the exposed: 1/84 of the tables; the low bound from mpmath 1.3.0.
    const found = valueOf(
      fisherExact([
        [3, 0],
        [0, 6],
      ]),
    );
    expect(found.pTwoSided).toBeCloseTo(1 / 84, 14);
    expect(found.oddsRatio).toBe(Infinity);
    expect(found.oddsRatioInterval95[0]).toBeCloseTo(1.47744488287, 9);
    expect(found.oddsRatioInterval95[1]).toBe(Infinity);
    const turned = valueOf(
      fisherExact([
        [0, 3],
        [6, 0],
      ]),
    );
    expect(turned.oddsRatio).toBe(0);
    expect(turned.oddsRatioInterval95[0]).toBe(0);
    expect(turned.oddsRatioInterval95[1]).toBeCloseTo(1 / 1.47744488287, 9);
  });

  it('says the same of a table and of its mirror', () => {
    fc.assert(
      fc.property(anyTable, ([[a, b], [c, d]]) => {
        const one = fisherExact([
          [a, b],
          [c, d],
        ]);
        const mirror = fisherExact([
          [c, d],
          [a, b],
        ]);
        expect(mirror.kind).toBe(one.kind);
        if (one.kind === 'unavailable') return;
        const { pTwoSided, pLess } = one.value;
        expect(Math.abs(valueOf(mirror).pTwoSided - pTwoSided)).toBeLessThan(1e-12);
        expect(Math.abs(valueOf(mirror).pGreater - pLess)).toBeLessThan(1e-12);
      }),
    );
  });

  it('needs something in every row and column', () => {
    const nothing = { kind: 'unavailable', because: 'zeroMargin' };
    expect(
      fisherExact([
        [0, 0],
        [3, 4],
      ]),
    ).toEqual(nothing);
    expect(
      fisherExact([
        [3, 4],
        [0, 0],
      ]),
    ).toEqual(nothing);
    expect(
      fisherExact([
        [0, 3],
        [0, 4],
      ]),
    ).toEqual(nothing);
    expect(
      fisherExact([
        [3, 0],
        [4, 0],
      ]),
    ).toEqual(nothing);
  });

  it.each([-1, 0.5, Number.NaN])('refuses a count of %d', (count) => {
    expect(() =>
      fisherExact([
        [count, 1],
        [1, 1],
      ]),
    ).toThrow(RangeError);
  });
});

describe('the survival curve', () => {
  const anyOutcomes = fc.array(
    fc.record({ duration: fc.integer({ min: 1, max: 20 }), observed: fc.boolean() }),
    { minLength: 1, maxLength: 30 },
  );

  it('never rises and stays between 0 and 1', () => {
    fc.assert(
      fc.property(anyOutcomes, (outcomes) => {
        let last = 1;
        for (const { survival, standardError } of kaplanMeier(outcomes).steps) {
          expect(survival).toBeLessThan(last);
          expect(survival).toBeGreaterThanOrEqual(0);
          expect(standardError).toBeGreaterThanOrEqual(0);
          last = survival;
        }
      }),
    );
  });

  it('without censoring is the share left, with the binomial error', () => {
    fc.assert(
      fc.property(anyOutcomes, fc.integer({ min: 0, max: 21 }), (outcomes, time) => {
        const all = outcomes.map(({ duration }) => ({ duration, observed: true }));
        const { survival, standardError } = survivalAt(kaplanMeier(all), time);
        const share = all.filter(({ duration }) => duration > time).length / all.length;
        expect(survival).toBeCloseTo(share, 12);
        expect(standardError).toBeCloseTo(Math.sqrt((share * (1 - share)) / all.length), 12);
      }),
    );
  });

  it('counts the censored at a tie as still at risk', () => {
    const curve = kaplanMeier([
      { duration: 5, observed: true },
      { duration: 5, observed: false },
      { duration: 9, observed: true },
    ]);
    expect(curve.steps.map(({ atRisk }) => atRisk)).toEqual([3, 1]);
    expect(curve.censoredCount).toBe(1);
  });

  it('does not depend on the order of the encounters', () => {
    fc.assert(
      fc.property(anyOutcomes, (outcomes) => {
        expect(kaplanMeier(outcomes.toReversed())).toEqual(kaplanMeier(outcomes));
      }),
    );
  });

  it('has its median where exactly half are left, for any number of encounters', () => {
    for (let pairs = 1; pairs <= 100; pairs += 1) {
      const outcomes = Array.from({ length: 2 * pairs }, (_, k) => ({
        duration: k + 1,
        observed: true,
      }));
      expect(valueOf(kaplanMeier(outcomes).median), `${2 * pairs} encounters`).toBe(pairs);
    }
  });

  it('says when half are never reached, and when there are too few for a curve', () => {
    const few = kaplanMeier([
      { duration: 4, observed: true },
      { duration: 30, observed: false },
      { duration: 30, observed: false },
    ]);
    expect(few.median).toEqual({ kind: 'unavailable', because: 'notReached' });
    expect(few.enoughEvents).toBe(false);
    const five = [1, 2, 3, 4, 5].map((duration) => ({ duration, observed: true }));
    expect(kaplanMeier(five).enoughEvents).toBe(true);
    expect(kaplanMeier(five.slice(1)).enoughEvents).toBe(false);
  });

  it('of nothing is whole', () => {
    const empty = kaplanMeier([]);
    expect(empty.steps).toEqual([]);
    expect(survivalAt(empty, 100)).toEqual({ survival: 1, standardError: 0 });
  });

  it('refuses a negative duration', () => {
    expect(() => kaplanMeier([{ duration: -1, observed: true }])).toThrow(RangeError);
    expect(() => survivalAt(kaplanMeier([]), Number.NaN)).toThrow(RangeError);
  });
});
