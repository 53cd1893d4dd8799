import { describe, expect, it } from 'vitest';
import { matchedReductions } from '../../src/analysis/matchedReduction.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { flightA, sheetA, viewOfEntries, without } from './flights.ts';
import { laterFlight } from './laterFlight.ts';

const first = viewOfEntries(flightA.entries);
const again = viewOfEntries(laterFlight(flightA.entries, { days: 7, hex: 'b' }));
const later = (sheet: typeof sheetA) =>
  viewOfEntries(laterFlight(flightA.entries, { days: 14, hex: 'c', sheet }));

describe('the reductions of several flights at one condition', () => {
  it('are of one setting, whatever the order of asking', () => {
    const found = matchedReductions([again, first]);
    expect(found).toEqual(matchedReductions([first, again]));
    const [{ matched } = { matched: null }] = found;
    if (matched?.kind !== 'answer') throw new Error('no reduction');
    // Most cards ask for nominal suction; TP02 is the first of them and its weight the earliest that both have flown.
    expect(matched.value).toMatchObject({ point: 'TP02', setting: 'nominal' });
    const worked = oracle.points.find(({ testPoint }) => testPoint === 'TP02');
    expect(100 * matched.value.reduction.fraction).toBeCloseTo(worked?.fuelReduction_pct ?? 0, 1);
    expect(matched.how.entries.length).toBeGreaterThan(0);
  });

  it('take the weight that most flights have flown, and never another one', () => {
    /** The flight again with one of the three points at nominal suction alone. */
    const only = (kept: string, hex: string) =>
      viewOfEntries(
        laterFlight(
          without(
            flightA.entries,
            (entry) =>
              entry.kind === 'testPointStarted' &&
              ['TP02', 'TP07', 'TP08'].includes(entry.body.point) &&
              entry.body.point !== kept,
          ),
          { days: 7, hex },
        ),
      );
    const told = matchedReductions([
      first,
      only('TP08', 'b'),
      only('TP08', 'c'),
      only('TP02', 'd'),
    ]);
    const weights = told.flatMap(({ matched }) =>
      matched.kind === 'answer' ? [matched.value.weightAtCardN] : [],
    );
    expect(weights).toHaveLength(3);
    expect(Math.max(...weights) / Math.min(...weights)).toBeLessThan(1.04);
    // TP02 was flown some 4,000 lb heavier than TP08: a number, and not the same one.
    expect(told.find(({ matched }) => matched.kind === 'noAnswer')?.matched).toMatchObject({
      because: 'otherWeight',
      entries: expect.arrayContaining([expect.any(String)]),
    });
  });

  it('are not given of another aircraft, another card or a flight with no valid point', () => {
    const newest = later(sheetA);
    const because = (view: typeof newest) => {
      const told = matchedReductions([view, newest])[0]?.matched;
      return told?.kind === 'noAnswer' ? told.because : told?.kind;
    };
    const flown = (sheet: typeof sheetA) =>
      viewOfEntries(laterFlight(flightA.entries, { days: 1, hex: 'd', sheet }));
    expect(because(flown({ ...sheetA, aircraft: { ...sheetA.aircraft, mark: 'QL-OTH' } }))).toBe(
      'otherAircraft',
    );
    expect(because(flown({ ...sheetA, condition: { ...sheetA.condition, mach: 0.75 } }))).toBe(
      'otherCard',
    );
    expect(because(viewOfEntries(flightA.entries.slice(0, 20)))).toBe('noNominalPoint');
    expect(because(viewOfEntries([]))).toBe('noFlightSheet');
  });

  it('rest on a point that the flight itself gives', () => {
    const [{ matched } = { matched: null }] = matchedReductions([first]);
    if (matched?.kind !== 'answer') throw new Error('no reduction');
    const own = pointResults(first).find(({ point }) => point === matched.value.point);
    expect(own?.result).toMatchObject({ kind: 'valid', fuel: matched.value.reduction });
  });
});
