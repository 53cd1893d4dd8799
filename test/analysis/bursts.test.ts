import { describe, expect, it } from 'vitest';
import { contextOf, readingAt } from '../../src/analysis/reading/context.ts';
import { runMean, type RunMean } from '../../src/analysis/reading/runMean.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { sealed, sheetA, viewOfEntries } from './flights.ts';
import { CRUISE, runOfLooks } from './steadyRun.ts';

/* Gauges of flight A: step 10 lb/h, repeatability 5 lb/h, two engines. */

const LB_PER_H = 0.45359237 / 3600;

function meanOf(afterS: readonly number[], sheet: FlightSheet = sheetA): RunMean {
  const looks = afterS.map((s) => ({ afterS: s, ...CRUISE }));
  const context = contextOf(viewOfEntries(sealed(runOfLooks(looks, sheet))));
  if (context === null) throw new RangeError('a sheet must have terms');
  // The counters before the run are a look of their own.
  const readings = looks.map((_, index) => {
    const outcome = readingAt(context, index + 1, 'afterLanding');
    if (outcome.kind === 'missing') throw new RangeError(outcome.because);
    return outcome.reading;
  });
  return runMean(context.terms, readings, null);
}

/** Both gauges' step and repeatability, averaged over so many looks. */
function gauges(looks: number): number {
  return Math.hypot(10 / Math.sqrt(12), 5) * Math.sqrt(2 / looks) * LB_PER_H;
}

describe('readings of one run', () => {
  it('average out when they are apart', () => {
    expect(meanOf([0, 60, 120]).parts.gauges).toBeCloseTo(gauges(3), 12);
  });

  it('within half a minute count as one look', () => {
    expect(meanOf([0, 10, 20]).parts.gauges).toBeCloseTo(gauges(1), 12);
    expect(meanOf([0, 10, 60, 70]).parts.gauges).toBeCloseTo(gauges(2), 12);
  });

  it('in a burst show no scatter of their own', () => {
    const undeclared: FlightSheet = {
      ...sheetA,
      instruments: sheetA.instruments.map((gauge) => {
        const { repeatability: _stated, ...rest } = gauge;
        return gauge.quantity === 'fuelFlow' ? rest : gauge;
      }),
    };
    // One burst: nothing to see scatter in, so a whole step of each gauge stands in beside its rounding.
    const step = Math.hypot(10 / Math.sqrt(12), 10) * Math.SQRT2 * LB_PER_H;
    expect(meanOf([0, 10, 20], undeclared).parts.gauges).toBeCloseTo(step, 12);
  });
});
