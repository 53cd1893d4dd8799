import { describe, expect, it } from 'vitest';
import { archivedPointsOf, archiveFit } from '../../src/analysis/baselineArchive.ts';
import type { ArchivedPoint, FlightSheet } from '../../src/record/sheet.ts';
import { soundSheet } from '../record/soundSheet.ts';
import { flightA, viewOfEntries } from './flights.ts';

/** On the line F = 4000 + 8000 (W/100 000)² exactly, lb/h and lb. */
const onLine = (weight: number, off = 0): ArchivedPoint => ({
  id: String(weight),
  flight: 'flight 3',
  configuration: 'clean',
  mach: 0.71,
  weightOverDelta: { value: weight, unit: 'lb' },
  referredFlow: { value: 4000 + 8000 * (weight / 100_000) ** 2 + off, unit: 'lb/h' },
  standardUncertainty: { value: 50, unit: 'lb/h' },
  readings: 4,
  source: 'typed',
});
const withPoints = (...points: ArchivedPoint[]): FlightSheet => ({
  ...soundSheet(),
  baselineArchive: points,
});

describe('an archive of suction-off points', () => {
  it('is fitted exactly where its points lie on a line in the square of weight', () => {
    const fit = archiveFit(withPoints(onLine(90_000), onLine(100_000), onLine(110_000)));
    if (fit.kind !== 'fit') throw new Error('no fit');
    // In the middle 8000 of 12 000 lb/h go with the square of weight: E = 2 × 8000/12 000.
    expect(fit.elasticity).toBeCloseTo(4 / 3, 9);
    expect(fit.used).toHaveLength(3);
  });

  it('leaves out a point at another Mach, and says which', () => {
    const other = { ...onLine(95_000, 900), id: 'other', mach: 0.76 };
    const fit = archiveFit(withPoints(onLine(90_000), onLine(110_000), other));
    expect(fit).toMatchObject({ kind: 'fit', left: [{ id: 'other' }] });
    expect(fit.kind === 'fit' ? fit.elasticity : 0).toBeCloseTo(4 / 3, 9);
  });

  it('is surer of nothing when its points scatter more than they admit', () => {
    const calm = archiveFit(withPoints(...[90, 95, 100, 105, 110].map((k) => onLine(k * 1000))));
    const rough = archiveFit(
      withPoints(...[90, 95, 100, 105, 110].map((k, i) => onLine(k * 1000, i % 2 ? 300 : -300))),
    );
    if (calm.kind !== 'fit' || rough.kind !== 'fit') throw new Error('no fit');
    expect(rough.elasticityStandardUncertainty).toBeGreaterThan(
      3 * calm.elasticityStandardUncertainty,
    );
  });

  it.each([
    ['noPoint', []],
    ['tooFewPoints', [onLine(90_000)]],
    ['oneWeight', [onLine(90_000), { ...onLine(90_000), id: 'again' }]],
  ] as const)('says %s where there is no line', (because, points) => {
    expect(archiveFit(withPoints(...points))).toEqual({ kind: 'noFit', because });
  });

  it('takes the finished suction-off runs of a flight, referred to sea level', () => {
    const points = archivedPointsOf(viewOfEntries(flightA.entries), []);
    expect(points.map(({ id }) => id)).toEqual(['32-06-02 TP01', '32-06-02 TP09']);
    // Standard air at 37 000 ft: δ 0.2138, θ 0.7519 (ICAO Doc 7488/3). TP01: 39,741 lb, 2,357 lb/h at the card.
    const [first] = points;
    expect(first?.weightOverDelta.unit).toBe('lb');
    expect(first?.weightOverDelta.value).toBeCloseTo(39_741 / 0.2138, -3);
    expect(first?.referredFlow.value).toBeCloseTo(2357 / (0.2138 * Math.sqrt(0.7519)), -2.3);
  });
});
