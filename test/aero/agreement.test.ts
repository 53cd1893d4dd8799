import { describe, expect, it } from 'vitest';
import {
  lag1Autocorrelation,
  mean,
  sampleStandardDeviation,
} from '../../src/aero/statistics/descriptive.ts';
import { studentTCdf, studentTQuantile } from '../../src/aero/statistics/distributions.ts';
import { fisherExact, type TwoByTwo } from '../../src/aero/statistics/fisherExact.ts';
import {
  fitLinear,
  predict,
  predictionUncertainty,
} from '../../src/aero/statistics/leastSquares.ts';
import { kaplanMeier } from '../../src/aero/statistics/survival.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  expandedUncertainty,
} from '../../src/aero/statistics/uncertainty.ts';
import recorded from '../reference/independent/agreement.json';
import { given, itemAt, valueOf } from './referenceRow.ts';

/*
 * The same random cases answered by R, recorded with its version: test/reference/independent. R prints 15
 * digits; what both sides lose to rounding on the way is allowed for in each tolerance.
 */

function near(found: number, expected: number, relative: number, scale = Math.abs(expected)): void {
  expect(Math.abs(found - expected), `${found} for ${expected}`).toBeLessThanOrEqual(
    relative * scale,
  );
}

function nearAll(found: readonly number[], expected: readonly number[], relative: number): void {
  expect(found).toHaveLength(expected.length);
  const scale = Math.max(...expected.map(Math.abs));
  for (const [k, value] of found.entries()) near(value, itemAt(expected, k), relative, scale);
}

const numbered = <Case>(cases: readonly Case[]) => cases.map((each, k) => [k, each] as const);

describe('the record of a second implementation', () => {
  it('names its version and holds every kind of case', () => {
    expect(recorded.by).toMatch(/^R version \d+\.\d+\.\d+/);
    expect(recorded.survivalPackage).toMatch(/^\d+\.\d+/);
    const { regressions, quantiles, tables, survivals, pairs, bursts } = recorded;
    const counts = [regressions, quantiles, tables, survivals, pairs, bursts].map(
      (of) => of.length,
    );
    expect(counts).toEqual([30, 90, 42, 24, 20, 12]);
  });

  it('holds the hard cases: three columns, few degrees of freedom, open ends, ties, halves', () => {
    expect(recorded.regressions.some(({ input }) => input.at.length === 3)).toBe(true);
    expect(recorded.regressions.some(({ output }) => output.degreesOfFreedom <= 2)).toBe(true);
    expect(recorded.quantiles.some(({ input }) => input.degreesOfFreedom < 1)).toBe(true);
    expect(recorded.tables.some(({ output }) => output.odds === 'Inf')).toBe(true);
    expect(recorded.tables.some(({ output }) => output.odds === 0)).toBe(true);
    expect(recorded.survivals.some(({ output }) => output.events.some((d) => d > 1))).toBe(true);
    expect(recorded.survivals.some(({ output }) => output.median === 'notReached')).toBe(true);
    const left = recorded.survivals.flatMap(({ output }) => output.survival);
    expect(left).toContain(0);
    expect(left.some((share) => Math.abs(share - 0.5) < 1e-9)).toBe(true);
  });
});

describe('regression agrees with lm', () => {
  it.each(numbered(recorded.regressions))('in case %d', (_, { input, output }) => {
    const { rows, observations, uncertainties, at, readingUncertainty } = input;
    const of = (kind: 'absolute' | 'relative') =>
      given(fitLinear({ rows, observations, weighting: { kind, uncertainties } }));
    const relative = of('relative');
    const absolute = of('absolute');
    nearAll(relative.coefficients, output.coefficients, 1e-11);
    expect(absolute.coefficients).toEqual(relative.coefficients);
    nearAll(relative.covariance.flat(), output.covarianceRelative.flat(), 1e-10);
    nearAll(absolute.covariance.flat(), output.covarianceAbsolute.flat(), 1e-10);
    near(relative.residualSumOfSquares, output.residualSumOfSquares, 1e-9);
    expect(relative.degreesOfFreedom).toBe(output.degreesOfFreedom);
    near(valueOf(relative.residualStandardDeviation), output.sigma, 1e-9);
    nearAll(relative.leverages, output.leverages, 1e-11);
    const there = predict(relative, at);
    near(there.value, output.fitted, 1e-11);
    near(there.standardUncertainty, output.standardError, 1e-10);
    const t = studentTQuantile({
      probability: 0.975,
      degreesOfFreedom: relative.degreesOfFreedom,
    });
    const [low, high] = [itemAt(output.meanInterval95, 0), itemAt(output.meanInterval95, 1)];
    near(there.value - t * there.standardUncertainty, low, 1e-10, there.value);
    near(there.value + t * there.standardUncertainty, high, 1e-10, there.value);
    // R takes the weight of the new reading on the scale of the fit.
    const scaled = readingUncertainty * valueOf(relative.residualStandardDeviation);
    const u = valueOf(predictionUncertainty(relative, at, scaled));
    near(there.value - t * u, itemAt(output.readingInterval95, 0), 1e-10, there.value);
    near(there.value + t * u, itemAt(output.readingInterval95, 1), 1e-10, there.value);
  });
});

describe('the t distribution agrees with qt and pt', () => {
  it.each(numbered(recorded.quantiles))('in case %d', (_, { input, output }) => {
    const t = studentTQuantile(input);
    near(t, output.t, 1e-10, Math.max(Math.abs(output.t), 1e-3));
    const probability = studentTCdf(output.rounded, input.degreesOfFreedom);
    near(probability, output.probability, 1e-11, 1);
  });
});

function numberFrom(recordedValue: number | string): number {
  return typeof recordedValue === 'number' ? recordedValue : Infinity;
}

describe('the exact test agrees with fisher.test', () => {
  it.each(numbered(recorded.tables))('in case %d', (_, { input, output }) => {
    const cell = (row: number, column: number) => itemAt(itemAt(input, row), column);
    const table: TwoByTwo = [
      [cell(0, 0), cell(0, 1)],
      [cell(1, 0), cell(1, 1)],
    ];
    const found = valueOf(fisherExact(table));
    near(found.pTwoSided, output.twoSided, 1e-10);
    near(found.pLess, output.less, 1e-10);
    near(found.pGreater, output.greater, 1e-10);
    const odds = [found.oddsRatio, ...found.oddsRatioInterval95];
    const solved = [output.solved.odds, output.solved.low, output.solved.high].map(numberFrom);
    const printed = [output.odds, ...output.interval95].map(numberFrom);
    for (const [k, value] of odds.entries()) {
      const exact = itemAt(solved, k);
      if (exact === 0 || exact === Infinity) {
        expect(value).toBe(exact);
        expect(itemAt(printed, k)).toBe(exact);
        continue;
      }
      near(value, exact, 1e-9);
      // fisher.test stops at 1e-4 of the odds or of their inverse, whichever is below one.
      const coarse = itemAt(printed, k);
      const below = (odd: number) => (coarse < 1 ? odd : 1 / odd);
      near(below(value), below(coarse), 3e-4, 1);
    }
  });
});

describe('the survival curve agrees with survfit', () => {
  it.each(numbered(recorded.survivals))('in case %d', (_, { input, output }) => {
    const { steps, median } = kaplanMeier(input);
    expect(steps.map((step) => step.time)).toEqual(output.times);
    expect(steps.map((step) => step.atRisk)).toEqual(output.atRisk);
    expect(steps.map((step) => step.events)).toEqual(output.events);
    for (const [k, { survival, standardError }] of steps.entries()) {
      near(survival, itemAt(output.survival, k), 1e-13, 1);
      near(standardError, itemAt(output.standardError, k), 1e-12, 1);
    }
    if (typeof output.median !== 'number') {
      expect(median).toEqual({ kind: 'unavailable', because: 'notReached' });
      return;
    }
    // Where the curve lies at a half R takes the middle of that step; here its beginning is meant.
    const half = output.survival.findIndex((survival) => Math.abs(survival - 0.5) < 1e-9);
    if (half === -1) expect(valueOf(median)).toBe(output.median);
    else {
      expect(valueOf(median)).toBe(itemAt(output.times, half));
      expect(output.median).toBeGreaterThanOrEqual(itemAt(output.times, half));
    }
  });
});

describe('degrees of freedom of a difference agree with Welch’s t.test', () => {
  it.each(numbered(recorded.pairs))('in case %d', (_, { input, output }) => {
    const components = [input.first, input.second].map((values) => ({
      sensitivity: 1,
      standardUncertainty: sampleStandardDeviation(values) / Math.sqrt(values.length),
      degreesOfFreedom: values.length - 1,
    }));
    const standardUncertainty = combinedUncertainty(components);
    const degreesOfFreedom = effectiveDegreesOfFreedom(components);
    near(standardUncertainty, output.standardError, 1e-11);
    near(degreesOfFreedom, output.degreesOfFreedom, 1e-10);
    const difference = mean(input.first) - mean(input.second);
    const half = expandedUncertainty({ standardUncertainty, degreesOfFreedom });
    near(difference - half, itemAt(output.interval95, 0), 1e-9, Math.abs(difference) + half);
    near(difference + half, itemAt(output.interval95, 1), 1e-9, Math.abs(difference) + half);
  });
});

describe('readings in a row agree with acf', () => {
  it.each(numbered(recorded.bursts))('in case %d', (_, { input, output }) => {
    near(mean(input), output.mean, 1e-13);
    near(sampleStandardDeviation(input), output.deviation, 1e-10);
    near(valueOf(lag1Autocorrelation(input)), output.lag1, 1e-9, 1);
  });
});
