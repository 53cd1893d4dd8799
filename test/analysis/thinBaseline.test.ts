import { describe, expect, it } from 'vitest';
import { comparisons } from '../../src/analysis/comparisons.ts';
import type { PointNumber, PointResult } from '../../src/analysis/results.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import type { Entry } from '../../src/record/entry.ts';
import type { FlightView } from '../../src/record/flight.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { idOfLine } from '../flights/scriptToEntries.ts';
import {
  bodyOf,
  flightA,
  rewritten,
  sheetA,
  viewOfEntries,
  without,
  withSheet,
} from './flights.ts';

/* Flight A's baseline is TP01 (lines 21, 23, 24) and TP09 (127, 128, 129); here fewer of them count. */

const { borrowedBaseline: _law, ...lawless } = sheetA;

function dropping(
  lines: readonly number[],
  of: readonly Entry[] = flightA.entries,
): readonly Entry[] {
  const ids = lines.map((n) => idOfLine(flightA.idOf, n));
  return without(of, ({ id }) => ids.includes(id));
}

/** One reading of the heavy baseline and one of the light one, and no weight law from elsewhere. */
const thin = viewOfEntries(withSheet(dropping([23, 24, 128, 129]), lawless));

type Valid = Extract<PointNumber, { kind: 'valid' | 'indicative' }>;

function of(view: FlightView, point: string, run = 1): PointResult {
  const found = pointResults(view).find((one) => one.point === point && one.run === run);
  if (found === undefined) throw new RangeError(`${point} must have a result`);
  return found;
}

function numberOf({ result }: PointResult): Valid {
  if (result.kind === 'valid' || result.kind === 'indicative') return result;
  throw new RangeError(`must be a number, got ${JSON.stringify(result)}`);
}

describe('a point between two single suction-off readings, with no weight law to borrow', () => {
  const bracketed = numberOf(of(thin, 'TP05'));

  it('is bracketed by them', () => {
    expect(bracketed.madeOf.method).toBe('bracket');
    expect(bracketed.madeOf.baselineRuns).toEqual(['TP01', 'TP09']);
    expect(bracketed.madeOf.borrowedFrom).toBeNull();
    expect(bracketed.provisional).toContain('noBorrowedElasticity');
    expect(bracketed.broken).toEqual([]);
  });

  it('takes the mean of both, each moved to its weight', () => {
    // Nothing is known of the law, so flow goes with weight, give or take 1/sqrt 3 in the exponent.
    const moved = ['TP01', 'TP09'].map((point) => {
      const { result } = of(thin, point);
      if (result.kind !== 'baseline') throw new RangeError(result.kind);
      return (result.flowAtCardKgPerS * bracketed.madeOf.weightAtCardN) / result.weightAtCardN;
    });
    const [before = NaN, after = NaN] = moved;
    expect(bracketed.madeOf.baselineAtThatWeightKgPerS).toBeCloseTo((before + after) / 2, 12);
  });

  it('comes near what the whole baseline says, within its own interval', () => {
    const worked = oracle.points.find(({ testPoint }) => testPoint === 'TP05');
    const { interval95 } = bracketed.fuel;
    const fraction = (worked?.fuelReduction_pct ?? NaN) / 100;
    expect(fraction).toBeGreaterThan(interval95.low);
    expect(fraction).toBeLessThan(interval95.high);
    expect(interval95.high - interval95.low).toBeLessThan(0.1);
  });

  it('has no number where the two differ by more than their doubts allow', () => {
    const id = idOfLine(flightA.idOf, 127);
    const drifted = rewritten(withSheet(dropping([23, 24, 128, 129]), lawless), (entry) => {
      const own = entry.kind === 'fuelRead' && entry.body.readings?.[0];
      return own && entry.wall === wallOf(id)
        ? {
            ...entry.body,
            readings: entry.body.readings?.map((row) =>
              (row.instrument === 'FF1' || row.instrument === 'FF2') && 'value' in row
                ? { ...row, value: row.value + 400 }
                : row,
            ),
          }
        : bodyOf(entry);
    });
    const result = of(viewOfEntries(drifted), 'TP05').result;
    expect(result).toMatchObject({ kind: 'none', because: 'bracketDrifts' });
    expect(result.kind === 'none' && result.entries.length).toBeGreaterThan(0);
  });

  function wallOf(id: string): number {
    return flightA.entries.find((entry) => entry.id === id)?.wall ?? NaN;
  }
});

describe('where a bracket is not what serves', () => {
  it('a weight law from elsewhere carries the two', () => {
    const view = viewOfEntries(dropping([23, 24, 128, 129]));
    const { madeOf, provisional } = numberOf(of(view, 'TP05'));
    expect(madeOf.method).toBe('fit');
    expect(madeOf.borrowedFrom).not.toBeNull();
    expect(provisional).toContain('borrowedElasticity');
  });

  it('five readings or more carry a fit', () => {
    const view = viewOfEntries(withSheet(dropping([129]), lawless));
    const { madeOf, broken } = numberOf(of(view, 'TP05'));
    expect(madeOf.method).toBe('fit');
    expect(broken).toEqual([]);
  });

  it('a point with nothing on one side moves the other run, wide and said', () => {
    const view = viewOfEntries(withSheet(dropping([23, 24, 127, 128, 129]), lawless));
    const { madeOf, provisional, fuel } = numberOf(of(view, 'TP05'));
    expect(madeOf.method).toBe('pair');
    expect(provisional).toEqual(
      expect.arrayContaining(['noBorrowedElasticity', 'oneBaselineReading']),
    );
    // The exponent is known to 1/sqrt 3 over the whole way from TP01's weight.
    const heavy = of(view, 'TP01').result;
    const way = Math.log(
      (heavy.kind === 'baseline' ? heavy.weightAtCardN : NaN) / madeOf.weightAtCardN,
    );
    expect(fuel.standardUncertainty).toBeGreaterThan(((1 - fuel.fraction) * way) / Math.sqrt(3));
  });
});

describe('settings against each other on a thin baseline', () => {
  it('cancel what they share: the difference is surer than either', () => {
    const rows = comparisons(viewOfEntries(dropping([127, 128, 129])));
    expect(rows.length).toBe(5);
    const view = viewOfEntries(dropping([127, 128, 129]));
    const nominal = numberOf(of(view, 'TP02'));
    const more = rows.find(({ point }) => point === 'TP03');
    // Both moved from one run with one borrowed law: what is left is their own readings and the way between them.
    expect(nominal.madeOf.method).toBe('pair');
    expect((more?.twoUFraction ?? NaN) / 2).toBeLessThan(
      Math.hypot(nominal.fuel.standardUncertainty, nominal.fuel.standardUncertainty),
    );
    const apart = numberOf(of(view, 'TP03')).fuel.fraction - nominal.fuel.fraction;
    expect(more?.differenceFraction).toBeCloseTo(apart, 12);
    expect(more?.fractionDiffers).toBe(Math.abs(apart) > (more?.twoUFraction ?? NaN));
  });

  it('name the entries of both', () => {
    const [row] = comparisons(viewOfEntries(flightA.entries));
    for (const n of [39, 50, 21, 127]) {
      expect(row?.entries).toContain(idOfLine(flightA.idOf, n));
    }
  });

  it('carry the doubt of an unknown weight law by the way between the two', () => {
    const rows = comparisons(thin);
    expect(rows.length).toBe(5);
    for (const row of rows) {
      expect(row.savedTwoUKgPerS).toBeGreaterThan(0);
      expect(row.savingDiffers).toBe(Math.abs(row.savedDifferenceKgPerS) > row.savedTwoUKgPerS);
    }
    // TP08 lies far from TP02 in weight, TP03 beside it.
    const near = rows.find(({ point }) => point === 'TP03');
    const far = rows.find(({ point }) => point === 'TP08');
    expect(far?.savedTwoUKgPerS ?? 0).toBeGreaterThan(3 * (near?.savedTwoUKgPerS ?? 0));
  });
});
