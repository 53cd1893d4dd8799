import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLinear, predict, type Weighting } from '../../src/aero/statistics/leastSquares.ts';
import { kaplanMeier } from '../../src/aero/statistics/survival.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
} from '../../src/aero/statistics/uncertainty.ts';
import { given, itemAt } from './referenceRow.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

function alike(found: number, expected: number, relative: number): void {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}

describe('a regression', () => {
  const anyPoints = fc.uniqueArray(
    fc.record({
      x: fc.integer({ min: -50, max: 50 }),
      y: within(-100, 100),
      u: within(0.1, 10),
    }),
    { minLength: 4, maxLength: 12, selector: ({ x }) => x },
  );
  type Point = { readonly x: number; readonly y: number; readonly u: number };

  function fitted(
    points: readonly Point[],
    kind: 'absolute' | 'relative',
    row: (x: number) => readonly number[] = (x) => [1, x],
  ) {
    const weighting: Weighting = { kind, uncertainties: points.map(({ u }) => u) };
    return given(
      fitLinear({
        rows: points.map(({ x }) => row(x)),
        observations: points.map(({ y }) => y),
        weighting,
      }),
    );
  }

  function close(found: number, expected: number, scale: number): void {
    expect(Math.abs(found - expected)).toBeLessThanOrEqual(1e-8 * (1 + scale));
  }

  it('forgets the order of its rows', () => {
    fc.assert(
      fc.property(
        anyPoints.chain((points) =>
          fc.tuple(fc.constant(points), fc.shuffledSubarray(points, { minLength: points.length })),
        ),
        ([points, shuffled]) => {
          const [a, b] = [fitted(points, 'relative'), fitted(shuffled, 'relative')];
          const [one, other] = [predict(a, [1, 7]), predict(b, [1, 7])];
          close(other.value, one.value, Math.abs(one.value));
          close(other.standardUncertainty, one.standardUncertainty, one.standardUncertainty);
        },
      ),
    );
  });

  it('scales with its observations, doubts and all', () => {
    fc.assert(
      fc.property(anyPoints, within(0.01, 100), (points, scale) => {
        const times = points.map(({ x, y, u }) => ({ x, y: y * scale, u: u * scale }));
        for (const kind of ['absolute', 'relative'] as const) {
          const one = predict(fitted(points, kind), [1, 7]);
          const other = predict(fitted(times, kind), [1, 7]);
          close(other.value / scale, one.value, Math.abs(one.value));
          close(other.standardUncertainty / scale, one.standardUncertainty, 1);
        }
      }),
    );
  });

  it('rises with its observations and leaves its doubts alone', () => {
    fc.assert(
      fc.property(anyPoints, within(-50, 50), within(-3, 3), (points, level, slope) => {
        const lifted = points.map(({ x, y, u }) => ({ x, y: y + level + slope * x, u }));
        const one = predict(fitted(points, 'relative'), [1, 7]);
        const other = predict(fitted(lifted, 'relative'), [1, 7]);
        close(other.value, one.value + level + 7 * slope, 300);
        close(other.standardUncertainty, one.standardUncertainty, 300);
      }),
    );
  });

  it('predicts the same from any two columns that span the same lines', () => {
    fc.assert(
      fc.property(anyPoints, within(-20, 20), within(0.1, 10), (points, origin, unit) => {
        const row = (x: number) => [2, (x - origin) / unit];
        const one = predict(fitted(points, 'absolute'), [1, 7]);
        const other = predict(fitted(points, 'absolute', row), row(7));
        close(other.value, one.value, Math.abs(one.value));
        close(other.standardUncertainty, one.standardUncertainty, one.standardUncertainty);
        close(other.leverage, one.leverage, one.leverage);
      }),
    );
  });

  it('takes a row twice for one row better known by √2', () => {
    fc.assert(
      fc.property(anyPoints, (points) => {
        const [first, ...rest] = points;
        fc.pre(first !== undefined);
        const twice = fitted([first, first, ...rest], 'absolute');
        const once = fitted([{ ...first, u: first.u / Math.SQRT2 }, ...rest], 'absolute');
        const [a, b] = [predict(twice, [1, 7]), predict(once, [1, 7])];
        close(a.value, b.value, Math.abs(b.value));
        close(a.standardUncertainty, b.standardUncertainty, b.standardUncertainty);
      }),
    );
  });
});

describe('doubts put together', () => {
  it('do not depend on their order, nor on a part that is certain', () => {
    const anyPart = fc.record({
      sensitivity: fc.integer({ min: -50, max: 50 }).map((tenths) => tenths / 10),
      standardUncertainty: within(0.001, 10),
      degreesOfFreedom: fc.oneof(fc.integer({ min: 1, max: 50 }), fc.constant(Infinity)),
    });
    const certain = { sensitivity: 3, standardUncertainty: 0, degreesOfFreedom: 1 };
    fc.assert(
      fc.property(fc.array(anyPart, { minLength: 1, maxLength: 8 }), (parts) => {
        fc.pre(combinedUncertainty(parts) > 0);
        const other = [certain, ...parts.toReversed()];
        alike(combinedUncertainty(other), combinedUncertainty(parts), 1e-12);
        const found = effectiveDegreesOfFreedom(parts);
        if (found === Infinity) expect(effectiveDegreesOfFreedom(other)).toBe(Infinity);
        else alike(effectiveDegreesOfFreedom(other), found, 1e-11);
        // Never fewer than the poorest part has, never more than all together.
        const degrees = parts.map((part) => part.degreesOfFreedom);
        expect(found).toBeGreaterThanOrEqual(Math.min(...degrees) * (1 - 1e-12));
        expect(found).toBeLessThanOrEqual(
          degrees.reduce((total, each) => total + each, 0) * (1 + 1e-12),
        );
      }),
    );
  });
});

describe('a survival curve', () => {
  it('is the same in seconds and in minutes', () => {
    const anyOutcomes = fc.array(
      fc.record({ duration: fc.integer({ min: 1, max: 20 }), observed: fc.boolean() }),
      { minLength: 1, maxLength: 20 },
    );
    fc.assert(
      fc.property(anyOutcomes, (outcomes) => {
        const longer = outcomes.map(({ duration, observed }) => ({
          duration: duration * 60,
          observed,
        }));
        const [minutes, seconds] = [kaplanMeier(outcomes), kaplanMeier(longer)];
        expect(seconds.steps.map((step) => step.survival)).toEqual(
          minutes.steps.map((step) => step.survival),
        );
        for (const [k, step] of seconds.steps.entries()) {
          expect(step.time).toBe(itemAt(minutes.steps, k).time * 60);
        }
      }),
    );
  });
});
