import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fitLinear,
  predict,
  predictionUncertainty,
  type Fit,
  type Weighting,
} from '../../src/aero/statistics/leastSquares.ts';
import { given, itemAt, valueOf } from './referenceRow.ts';

const anyCoordinate = fc.double({ min: -100, max: 100, noNaN: true });
const anyDoubt = fc.double({ min: 0.1, max: 10, noNaN: true });
const points = fc
  .uniqueArray(fc.integer({ min: -50, max: 50 }), { minLength: 4, maxLength: 12 })
  .chain((x) => fc.tuple(fc.constant(x), sameLength(x, anyCoordinate), sameLength(x, anyDoubt)));

function sameLength(
  like: readonly unknown[],
  of: fc.Arbitrary<number>,
): fc.Arbitrary<readonly number[]> {
  return fc.array(of, { minLength: like.length, maxLength: like.length });
}

function line(x: readonly number[], y: readonly number[], weighting: Weighting): Fit {
  const rows = x.map((value) => [1, value]);
  return given(fitLinear({ rows, observations: y, weighting }));
}

/** The textbook's normal equations, which a fit of well-spread points may be held against. */
function normalEquations(x: readonly number[], y: readonly number[], u: readonly number[]) {
  const sums = x.reduce(
    (total, value, k) => {
      const w = 1 / itemAt(u, k) ** 2;
      const of = itemAt(y, k);
      return {
        s: total.s + w,
        x: total.x + w * value,
        y: total.y + w * of,
        xx: total.xx + w * value * value,
        xy: total.xy + w * value * of,
      };
    },
    { s: 0, x: 0, y: 0, xx: 0, xy: 0 },
  );
  const determinant = sums.s * sums.xx - sums.x ** 2;
  return {
    slope: (sums.s * sums.xy - sums.x * sums.y) / determinant,
    intercept: (sums.xx * sums.y - sums.x * sums.xy) / determinant,
    slopeVariance: sums.s / determinant,
    covariance: -sums.x / determinant,
  };
}

describe('a least-squares fit', () => {
  it('recovers a line exactly, whatever the doubts', () => {
    fc.assert(
      fc.property(points, anyCoordinate, anyCoordinate, ([x, , u], a, b) => {
        const y = x.map((value) => a + b * value);
        const fit = line(x, y, { kind: 'absolute', uncertainties: u });
        expect(Math.abs(itemAt(fit.coefficients, 0) - a)).toBeLessThan(1e-9);
        expect(Math.abs(itemAt(fit.coefficients, 1) - b)).toBeLessThan(1e-10);
        expect(fit.residualSumOfSquares).toBeLessThan(1e-15);
      }),
    );
  });

  it('agrees with the normal equations', () => {
    fc.assert(
      fc.property(points, ([x, y, u]) => {
        const fit = line(x, y, { kind: 'absolute', uncertainties: u });
        const expected = normalEquations(x, y, u);
        const scale = 1 + Math.abs(expected.intercept) + Math.abs(expected.slope);
        expect(Math.abs(itemAt(fit.coefficients, 0) - expected.intercept)).toBeLessThan(
          1e-8 * scale,
        );
        expect(Math.abs(itemAt(fit.coefficients, 1) - expected.slope)).toBeLessThan(1e-8 * scale);
        const variance = itemAt(itemAt(fit.covariance, 1), 1);
        expect(Math.abs(variance / expected.slopeVariance - 1)).toBeLessThan(1e-8);
        const covariance = itemAt(itemAt(fit.covariance, 0), 1);
        expect(Math.abs(covariance - expected.covariance)).toBeLessThan(
          1e-8 * (Math.abs(expected.covariance) + expected.slopeVariance),
        );
      }),
    );
  });

  it('spreads one leverage a coefficient over the data', () => {
    fc.assert(
      fc.property(points, ([x, y, u]) => {
        const fit = line(x, y, { kind: 'relative', uncertainties: u });
        expect(fit.leverages.reduce((total, h) => total + h, 0)).toBeCloseTo(2, 9);
        for (const h of fit.leverages) expect(h).toBeLessThanOrEqual(1 + 1e-9);
      }),
    );
  });

  it('predicts by shares of the observations that carry its whole doubt', () => {
    fc.assert(
      fc.property(points, anyCoordinate, ([x, y, u], at) => {
        const fit = line(x, y, { kind: 'absolute', uncertainties: u });
        const { value, shares, standardUncertainty } = predict(fit, [1, at]);
        const byShares = shares.reduce((total, share, k) => total + share * itemAt(y, k), 0);
        expect(Math.abs(byShares - value)).toBeLessThan(1e-7 * (1 + Math.abs(value)));
        expect(shares.reduce((total, share) => total + share, 0)).toBeCloseTo(1, 8);
        const propagated = Math.hypot(...shares.map((share, k) => share * itemAt(u, k)));
        expect(Math.abs(propagated / standardUncertainty - 1)).toBeLessThan(1e-7);
      }),
    );
  });

  it('lets only the ratios of relative doubts count', () => {
    fc.assert(
      fc.property(points, fc.double({ min: 0.01, max: 100, noNaN: true }), ([x, y, u], k) => {
        const once = line(x, y, { kind: 'relative', uncertainties: u });
        const scaled = u.map((value) => value * k);
        const again = line(x, y, { kind: 'relative', uncertainties: scaled });
        const of = (fit: Fit) => predict(fit, [1, 7]);
        expect(of(again).value).toBeCloseTo(of(once).value, 8);
        expect(of(again).standardUncertainty).toBeCloseTo(of(once).standardUncertainty, 8);
      }),
    );
  });

  it('does not mind the units of a column', () => {
    const x = [330, 345, 360, 372, 385];
    const y = [17_630, 18_010, 18_480, 18_930, 19_290];
    const rows = (scale: number) => x.map((value) => [1, (value * scale) ** 2]);
    const at = (scale: number) =>
      predict(
        given(fitLinear({ rows: rows(scale), observations: y, weighting: { kind: 'equal' } })),
        [1, (350 * scale) ** 2],
      );
    expect(at(1e6).value).toBeCloseTo(at(1).value, 7);
    expect(at(1e6).leverage).toBeCloseTo(at(1).leverage, 9);
  });

  it('gives a new reading its own doubt beside that of the mean', () => {
    const fit = line([0, 1, 2, 3], [0, 1.1, 1.9, 3.1], { kind: 'equal' });
    const mean = predict(fit, [1, 1.5]).standardUncertainty;
    const s = valueOf(fit.residualStandardDeviation);
    expect(valueOf(predictionUncertainty(fit, [1, 1.5]))).toBeCloseTo(Math.hypot(s, mean), 14);
    expect(valueOf(predictionUncertainty(fit, [1, 1.5], 3))).toBeCloseTo(Math.hypot(3, mean), 14);
  });
});

describe('a fit that cannot be given', () => {
  const equal: Weighting = { kind: 'equal' };

  it('has fewer observations than coefficients', () => {
    expect(fitLinear({ rows: [[1, 2]], observations: [1], weighting: equal })).toEqual({
      kind: 'unavailable',
      because: 'tooFewObservations',
    });
  });

  it('has none to spare, unless the doubts are absolute', () => {
    const twoPoints = {
      rows: [
        [1, 1],
        [1, 3],
      ],
      observations: [10, 14],
    };
    expect(fitLinear({ ...twoPoints, weighting: equal })).toEqual({
      kind: 'unavailable',
      because: 'noDegreesOfFreedom',
    });
    const fit = given(
      fitLinear({ ...twoPoints, weighting: { kind: 'absolute', uncertainties: [1, 1] } }),
    );
    // Half way between two points of doubt 1 the mean has 1/√2; a step beyond the end it has √(4 + 1)... by shares 2 and −1.
    expect(predict(fit, [1, 2]).standardUncertainty).toBeCloseTo(Math.SQRT1_2, 12);
    expect(predict(fit, [1, 5]).standardUncertainty).toBeCloseTo(Math.sqrt(5), 12);
    const unknown = { kind: 'unavailable', because: 'noDegreesOfFreedom' };
    expect(fit.residualStandardDeviation).toEqual(unknown);
    expect(predictionUncertainty(fit, [1, 2])).toEqual(unknown);
  });

  it.each([
    ['the same column twice', [1, 2, 3].map((x) => [x, x])],
    ['one weight only', [1, 2, 3].map(() => [1, 0.7])],
    ['an empty column', [1, 2, 3].map((x) => [x, 0])],
    ['a column that is a sum', [1, 2, 3, 4].map((x) => [1, x, 2 + 3 * x])],
  ])('has dependent columns: %s', (_, rows) => {
    const observations = rows.map((__, k) => k);
    expect(fitLinear({ rows, observations, weighting: equal })).toEqual({
      kind: 'unavailable',
      because: 'dependentColumns',
    });
  });

  it.each([
    ['no rows', [], [], equal, 'at least one row'],
    ['ragged rows', [[1, 2], [1]], [1, 2], equal, 'every row'],
    ['too few observations given', [[1], [1]], [1], equal, 'as many observations'],
    ['a hole', [[1], [1]], [1, Number.NaN], equal, 'fit input'],
    [
      'a doubt of zero',
      [[1], [1]],
      [1, 2],
      { kind: 'absolute', uncertainties: [1, 0] },
      'uncertainty',
    ],
    [
      'too few doubts',
      [[1], [1]],
      [1, 2],
      { kind: 'relative', uncertainties: [1] },
      'as many uncertainties',
    ],
  ] as const)('was asked with %s', (_, rows, observations, weighting, named) => {
    const asked = () => fitLinear({ rows, observations, weighting });
    expect(asked).toThrow(RangeError);
    expect(asked).toThrow(named);
  });
});
