import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  normalCdf,
  normalQuantile,
  studentTCdf,
  studentTQuantile,
} from '../../src/aero/statistics/distributions.ts';

/** Degrees of freedom, probability, quantile: mpmath 1.3.0 at 40 digits, incomplete beta function. */
const STUDENT = [
  [0.5, 0.6, 0.3979754267847907],
  [0.5, 0.9, 10.27032441023451],
  [0.5, 0.975, 164.5576734804885],
  [0.5, 0.995, 4113.964588804181],
  [0.5, 0.99999, 1028491156.31634],
  [1, 0.6, 0.3249196962329063],
  [1, 0.9, 3.077683537175253],
  [1, 0.975, 12.7062047361747],
  [1, 0.995, 63.65674116287158],
  [1, 0.99999, 31830.98860790709],
  [1.5, 0.6, 0.3007453925697954],
  [1.5, 0.9, 2.196398417565537],
  [1.5, 0.975, 6.016663104427932],
  [1.5, 0.995, 17.82031051446281],
  [1.5, 0.99999, 1124.500123381208],
  [2, 0.6, 0.2886751345948129],
  [2, 0.9, 1.885618083164127],
  [2, 0.975, 4.302652729749464],
  [2, 0.995, 9.924843200918293],
  [2, 0.99999, 223.6034436340372],
  [3, 0.6, 0.2766706623326899],
  [3, 0.9, 1.63774435369621],
  [3, 0.975, 3.18244630528371],
  [3, 0.995, 5.840909309733357],
  [3, 0.99999, 47.92772837593392],
  [4.7, 0.6, 0.2680827195410319],
  [4.7, 0.9, 1.490155081516803],
  [4.7, 0.975, 2.62072607535317],
  [4.7, 0.995, 4.167892040119058],
  [4.7, 0.99999, 17.20583510486738],
  [6, 0.6, 0.2648345329335735],
  [6, 0.9, 1.439755747265148],
  [6, 0.975, 2.44691185114497],
  [6, 0.995, 3.70742802132478],
  [6, 0.99999, 12.03165317811816],
  [10, 0.6, 0.2601848294920802],
  [10, 0.9, 1.372183641110336],
  [10, 0.975, 2.228138851986275],
  [10, 0.995, 3.169272672616951],
  [10, 0.99999, 7.526954019339651],
  [16.7518557376, 0.6, 0.2574067543692262],
  [16.7518557376, 0.9, 1.33417843381188],
  [16.7518557376, 0.975, 2.112198794269352],
  [16.7518557376, 0.995, 2.903547630449733],
  [16.7518557376, 0.99999, 5.861907023330365],
  [30, 0.6, 0.2556053649519128],
  [30, 0.9, 1.310415025391396],
  [30, 0.975, 2.042272456301238],
  [30, 0.995, 2.749995653567225],
  [30, 0.99999, 5.054032421446494],
  [100.5, 0.6, 0.2540188186573502],
  [100.5, 0.9, 1.29003207221386],
  [100.5, 0.975, 1.9838506553358],
  [100.5, 0.995, 2.625636965379535],
  [100.5, 0.99999, 4.477318888232085],
  [1000, 0.6, 0.2534145158394988],
  [1000, 0.9, 1.282398721460924],
  [1000, 0.975, 1.962339080826408],
  [1000, 0.995, 2.580754698065951],
  [1000, 0.99999, 4.285437682652958],
  [20000, 0.6, 0.2533504732640627],
  [20000, 0.9, 1.281593896210215],
  [20000, 0.975, 1.960082605158135],
  [20000, 0.995, 2.576075153017255],
  [20000, 0.99999, 4.265914013356586],
  [20001, 0.6, 0.2533504730955634],
  [20001, 0.9, 1.281593894093717],
  [20001, 0.975, 1.960082599227048],
  [20001, 0.995, 2.576075140724292],
  [20001, 0.99999, 4.26591396218735],
  [1000000, 0.6, 0.2533471705378417],
  [1000000, 0.9, 1.281552412129938],
  [1000000, 0.975, 1.959966356814107],
  [1000000, 0.995, 2.575834220105334],
  [1000000, 0.99999, 4.26491125406966],
] as const;

/** Probability, quantile: mpmath 1.3.0, inverse error function. */
const NORMAL_QUANTILES = [
  [0.500001, 2.506628274633625e-6],
  [0.6, 0.2533471031357998],
  [0.9, 1.2815515655446],
  [0.975, 1.959963984540054],
  [0.995, 2.575829303548901],
  [0.99999, 4.264890793922825],
  [1e-9, -5.997807015007687],
] as const;

/** z, P(Z ≤ z): mpmath 1.3.0, complementary error function. */
const NORMAL_TAILS = [
  [-0.1, 0.460172162722971],
  [-1, 0.1586552539314571],
  [-1.96, 0.02499789514822043],
  [-2.5, 0.006209665325776135],
  [-2.4999, 0.006211418374944586],
  [-4, 3.167124183311992e-5],
  [-8, 6.220960574271784e-16],
] as const;

function relative(found: number, expected: number): number {
  return Math.abs(found / expected - 1);
}

describe('the t distribution', () => {
  it.each(STUDENT)('with %d degrees of freedom has its %d quantile at %d', (nu, p, t) => {
    expect(relative(studentTQuantile({ probability: p, degreesOfFreedom: nu }), t)).toBeLessThan(
      1e-10,
    );
    expect(Math.abs(studentTCdf(t, nu) - p)).toBeLessThan(1e-11);
  });

  it('is symmetric', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.499, noNaN: true }),
        fc.double({ min: 0.5, max: 500, noNaN: true }),
        (probability, degreesOfFreedom) => {
          const low = studentTQuantile({ probability, degreesOfFreedom });
          const high = studentTQuantile({ probability: 1 - probability, degreesOfFreedom });
          expect(Math.abs(low + high)).toBeLessThan(1e-9 * high);
        },
      ),
    );
  });

  it('leads back from quantile to probability', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }),
        fc.double({ min: 0.5, max: 1e6, noNaN: true }),
        (probability, degreesOfFreedom) => {
          const t = studentTQuantile({ probability, degreesOfFreedom });
          expect(Math.abs(studentTCdf(t, degreesOfFreedom) - probability)).toBeLessThan(1e-11);
        },
      ),
    );
  });

  it('is the normal distribution with endless degrees of freedom', () => {
    const probability = 0.975;
    expect(studentTQuantile({ probability, degreesOfFreedom: Infinity })).toBe(
      normalQuantile(probability),
    );
    expect(studentTCdf(1.5, Infinity)).toBe(normalCdf(1.5));
  });

  it.each([
    [0, 5],
    [1, 5],
    [Number.NaN, 5],
    [0.5, 0],
    [0.5, -1],
    [0.5, Number.NaN],
  ])('refuses probability %d with %d degrees of freedom', (probability, degreesOfFreedom) => {
    expect(() => studentTQuantile({ probability, degreesOfFreedom })).toThrow(RangeError);
  });
});

describe('the normal distribution', () => {
  it.each(NORMAL_QUANTILES)('has its %d quantile at %d', (p, z) => {
    expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(1e-10);
  });

  it.each(NORMAL_TAILS)('has below %d the share %d', (z, p) => {
    expect(relative(normalCdf(z), p)).toBeLessThan(1e-12);
    expect(relative(1 - normalCdf(-z), p)).toBeLessThan(1e-15 / p + 1e-12);
  });

  it('reaches far into the tail', () => {
    // Φ(−30) = 4.906713927148187e-198, mpmath 1.3.0.
    expect(normalQuantile(4.906713927148187e-198)).toBeCloseTo(-30, 10);
  });

  it('refuses what is no number', () => {
    expect(() => normalCdf(Number.NaN)).toThrow(RangeError);
    expect(() => studentTCdf(Number.NaN, 3)).toThrow(RangeError);
  });
});
