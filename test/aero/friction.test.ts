import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as friction from '../../src/aero/friction.ts';
import {
  coverageDragReduction,
  coverageVerdict,
  laminarAreaFraction,
} from '../../src/aero/laminarArea.ts';
import { valueOf } from './referenceRow.ts';

const anyReynolds = fc.double({ min: 2.5e7, max: 1e8, noNaN: true });
const anyTransition = fc.double({ min: 0.3, max: 0.99, noNaN: true });

describe('plate friction', () => {
  it('falls steadily as transition moves aft, never below the all-laminar plate', () => {
    fc.assert(
      fc.property(anyReynolds, anyTransition, anyTransition, (reynolds, a, b) => {
        const of = (transitionFraction: number) =>
          valueOf(friction.virtualOriginCoefficient({ reynolds, transitionFraction }));
        fc.pre(Math.abs(a - b) > 1e-6);
        expect(of(Math.max(a, b))).toBeLessThan(of(Math.min(a, b)));
        expect(of(a)).toBeGreaterThan(of(1));
        expect(of(a)).toBeLessThan(of(0));
      }),
    );
  });

  it('saves more by the older correction than by virtual origin', () => {
    fc.assert(
      fc.property(anyReynolds, anyTransition, (reynolds, transitionFraction) => {
        const plate = { reynolds, transitionFraction };
        expect(valueOf(friction.transitionConstantCoefficient(plate))).toBeLessThan(
          valueOf(friction.virtualOriginCoefficient(plate)),
        );
      }),
    );
  });

  // SFTE Reference Handbook (2013) prints 1700 at 5e5; White, Fluid Mechanics, Eq. 7.49 prints 8700 at 3e6.
  // Both are round numbers from an older turbulent line: two digits and no more.
  it.each([
    [5e5, 1700, 100],
    [3e6, 8700, 100],
  ])('has at transition %d the printed constant %d', (reynolds, printed, allowed) => {
    expect(Math.abs(friction.transitionConstant(reynolds) - printed)).toBeLessThan(allowed);
  });

  it('is turbulent throughout without transition and laminar throughout at the trailing edge', () => {
    const reynolds = 24e6;
    expect(valueOf(friction.virtualOriginCoefficient({ reynolds, transitionFraction: 0 }))).toBe(
      friction.turbulentPlateCoefficient(reynolds),
    );
    expect(
      valueOf(friction.transitionConstantCoefficient({ reynolds, transitionFraction: 0 })),
    ).toBe(friction.turbulentPlateCoefficient(reynolds));
    expect(valueOf(friction.virtualOriginCoefficient({ reynolds, transitionFraction: 1 }))).toBe(
      friction.laminarPlateCoefficient(reynolds),
    );
  });

  it('gives a reason where the turbulent line ends', () => {
    const outside = { kind: 'unavailable', because: 'reynoldsOutsideFormula' };
    for (const plate of [
      { reynolds: 4e5, transitionFraction: 0.5 },
      { reynolds: 2e9, transitionFraction: 0.5 },
      { reynolds: 6e5, transitionFraction: 0.5 },
    ]) {
      expect(friction.virtualOriginCoefficient(plate)).toEqual(outside);
      expect(friction.transitionConstantCoefficient(plate)).toEqual(outside);
    }
    // The inherited layer is thinner than the line knows.
    const early = { reynolds: 1e7, transitionFraction: 0.06 };
    expect(friction.virtualOriginCoefficient(early)).toEqual(outside);
  });

  it('is lower in compressible flow', () => {
    // By hand at M 0.75: 1.07340625^−0.12 and 1.081^−0.65.
    expect(friction.laminarCompressibility(0.75)).toBeCloseTo(0.991536, 6);
    expect(friction.turbulentCompressibility(0.75)).toBeCloseTo(0.950634, 6);
    expect(friction.laminarCompressibility(0)).toBe(1);
    expect(friction.turbulentCompressibility(0)).toBe(1);
  });

  it.each([4.9e5, 1.1e9, Number.NaN])('refuses the turbulent line at %d', (reynolds) => {
    expect(() => friction.turbulentPlateCoefficient(reynolds)).toThrow(RangeError);
  });

  it.each([4.9e5, 1.1e10, Number.NaN])('refuses the ship line at %d', (reynolds) => {
    expect(() => friction.ittc1957Coefficient(reynolds)).toThrow(RangeError);
  });

  it('refuses transition off the chord and Mach above one', () => {
    const off = { reynolds: 2e7, transitionFraction: 1.00001 };
    expect(() => friction.virtualOriginCoefficient(off)).toThrow(RangeError);
    expect(() => friction.transitionConstantCoefficient(off)).toThrow(RangeError);
    expect(() => friction.laminarCompressibility(1.00001)).toThrow(RangeError);
    expect(() => friction.turbulentCompressibility(Number.NaN)).toThrow(RangeError);
  });
});

describe('laminar area', () => {
  it('is a share of what was looked at', () => {
    expect(laminarAreaFraction([])).toEqual({ kind: 'unavailable', because: 'noArea' });
    expect(laminarAreaFraction([{ areaM2: 0, state: 'laminar' }])).toEqual({
      kind: 'unavailable',
      because: 'noArea',
    });
    expect(valueOf(laminarAreaFraction([{ areaM2: 3, state: 'laminar' }]))).toBe(1);
    expect(valueOf(laminarAreaFraction([{ areaM2: 3, state: 'turbulent' }]))).toBe(0);
    expect(() => laminarAreaFraction([{ areaM2: -1, state: 'laminar' }])).toThrow(RangeError);
  });

  it('agrees with the fuel within its interval and 30 % of the estimate', () => {
    // Estimate 0.20 ± 0.06, fuel ± 0.02: apart by less than 0.08.
    const of = (dragReductionFraction: number) =>
      coverageVerdict({ dragReductionFraction, expanded95: 0.02, coverageEstimate: 0.2 });
    expect(of(0.121)).toBe('consistent');
    expect(of(0.119)).toBe('differs');
    expect(of(0.279)).toBe('consistent');
    expect(of(0.281)).toBe('differs');
  });

  it('refuses a share above one', () => {
    const shares = { laminarFraction: 0.5, coefficientRatio: 0.1, treatedShare: 1.00001 };
    expect(() => coverageDragReduction(shares)).toThrow(RangeError);
  });
});
