import { describe, expect, it } from 'vitest';
import { expectedDrag } from '../../../src/analysis/coverage/expectedDrag.ts';
import { expectedLive } from '../../../src/analysis/coverage/expectedLive.ts';
import { liveEstimate } from '../../../src/analysis/liveEstimate.ts';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import { entriesUntil } from '../../flights/scriptToEntries.ts';
import { answerOf, reasonOf } from '../encounters/reading.ts';
import { flightA, sheetA, viewOfEntries, withSheet } from '../flights.ts';

/** Flight A at the second reading of its fifth test point, with a drag share that somebody stated. */
function inCruise(treatedDragShare?: FlightSheet['aircraft']['treatedDragShare']) {
  const aircraft =
    treatedDragShare === undefined ? sheetA.aircraft : { ...sheetA.aircraft, treatedDragShare };
  return viewOfEntries(withSheet(entriesUntil(flightA, 81), { ...sheetA, aircraft }));
}

describe('what the laminar area predicts at the newest reading', () => {
  it('is what it predicts for the run, whose readings lie a few minutes apart in the same air', () => {
    const view = inCruise({ fraction: 0.4, standardUncertainty: 0.04, from: 'polar' });
    const { glance, kind } = liveEstimate(view);
    expect(kind).toBe('value');
    const live = answerOf(expectedLive(view, glance ?? -1));
    const run = expectedDrag(view).find(({ point }) => point === 'TP05');
    if (run === undefined) throw new RangeError('TP05 must be flown');
    const whole = answerOf(run.expected);
    // A tenth of a per cent of drag: the air changes less than that between the readings of a run.
    expect(Math.abs(live.estimateFraction - whole.estimateFraction)).toBeLessThan(0.001);
    expect(live.laminarAreaFraction).toBeCloseTo(whole.laminarAreaFraction, 9);
    expect(live.estimateStandardUncertainty).toBeCloseTo(0.1 * live.estimateFraction, 9);
  });

  it('says why where it cannot be given', () => {
    const view = inCruise();
    expect(reasonOf(expectedLive(view, liveEstimate(view).glance ?? -1))).toBe(
      'treatedDragShareNotStated',
    );
    expect(reasonOf(expectedLive(viewOfEntries([]), 0))).toBe('noUsableReading');
  });
});
