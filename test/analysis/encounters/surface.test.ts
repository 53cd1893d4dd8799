import { describe, expect, it } from 'vitest';
import { associations, type Association } from '../../../src/analysis/encounters/associations.ts';
import { probeHistory } from '../../../src/analysis/encounters/probeHistory.ts';
import { nominalSetting } from '../../../src/analysis/encounters/settings.ts';
import type { FlightView } from '../../../src/record/flight.ts';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import { sheetA } from '../flights.ts';
import { answerOf, reasonOf } from './reading.ts';
import {
  flightOf,
  laminarFlight,
  run,
  say,
  smallSheet,
  turbulent,
  withUnserviceable,
} from './smallFlight.ts';

function probeOf(view: FlightView, probe: string): ReturnType<typeof probeHistory>[number] {
  const found = probeHistory(view).find((one) => one.probe === probe);
  if (found === undefined) throw new RangeError(`${probe} must be found`);
  return found;
}

describe('the setting that flights are compared at', () => {
  const on = smallSheet.testCards.find(({ suction }) => suction === 'on');
  if (on === undefined) throw new RangeError('a suction-on card is needed');
  const cards = (...settings: readonly string[]): FlightSheet => ({
    ...smallSheet,
    testCards: settings.map((setting, order) => ({ ...on, id: `T${order}`, order, setting })),
  });

  it('is the one that most suction-on cards ask for, then the first flown', () => {
    expect(nominalSetting(sheetA)).toBe('nominal');
    expect(nominalSetting(cards('low', 'high', 'High '))).toBe('high');
    expect(nominalSetting(cards('low', 'high'))).toBe('low');
    expect(nominalSetting(cards())).toBeNull();
  });
});

describe('what a probe did in clear air', () => {
  it('goes by the time it was in each state', () => {
    const view = flightOf([
      ...laminarFlight(),
      say(400, 'probesRead', turbulent([5])),
      ...run(500, 900).slice(0, 1),
      say(600, 'laminarGained', turbulent([])),
      ...run(500, 900).slice(1),
    ]);
    // Turbulent for 100 s of 400.
    const { bySetting, clearRuns, notLaminarRuns } = answerOf(probeOf(view, 'L05').inClearRuns);
    expect({ clearRuns, notLaminarRuns }).toEqual({ clearRuns: 1, notLaminarRuns: 1 });
    expect(bySetting).toEqual([{ setting: 'nominal', runs: 1, laminarFraction: 0.75 }]);
    expect(answerOf(probeOf(view, 'L06').inClearRuns).notLaminarRuns).toBe(0);
  });

  it('leaves out runs that met moisture, and says when none is left', () => {
    const wet = flightOf([
      ...laminarFlight(),
      ...run(500, 900).slice(0, 1),
      say(600, 'moistureEntered'),
      say(650, 'moistureExited'),
      ...run(500, 900).slice(1),
    ]);
    expect(reasonOf(probeOf(wet, 'L05').inClearRuns)).toBe('noClearRun');
    const unseen = flightOf([say(200, 'suctionTurnedOn', { wing: 'both' }), ...run(500, 900)]);
    expect(reasonOf(probeOf(unseen, 'L05').inClearRuns)).toBe('notAssessed');
    const broken = flightOf([...laminarFlight(), ...run(500, 900)], withUnserviceable('L05'));
    expect(reasonOf(probeOf(broken, 'L05').inClearRuns)).toBe('unserviceable');
  });

  it('keeps what a probe did before it was found unserviceable', () => {
    const view = flightOf([
      ...laminarFlight(),
      ...run(500, 900),
      say(1000, 'flightSheetChanged', { sheet: withUnserviceable('L05'), reason: 'blocked' }),
      say(1100, 'testPointStarted', { point: 'TP02', run: 2 }),
      say(1300, 'testPointEnded', { point: 'TP02', run: 2 }),
    ]);
    expect(answerOf(probeOf(view, 'L05').inClearRuns).clearRuns).toBe(1);
    expect(answerOf(probeOf(view, 'L06').inClearRuns).clearRuns).toBe(2);
  });
});

describe('tables of two by two', () => {
  function associationOf(view: FlightView, question: Association['question']): Association {
    const found = associations(view).find((one) => one.question === question);
    if (found === undefined) throw new RangeError(`${question} must be asked`);
    return found;
  }

  it('have no test where a margin is empty, and say so', () => {
    const view = flightOf([...laminarFlight(), ...run(500, 900)]);
    const moisture = associationOf(view, 'lossInMoisture');
    expect(moisture.table).toEqual([
      [0, 0],
      [0, 1],
    ]);
    expect(reasonOf(moisture.test)).toBe('zeroMargin');
    expect(reasonOf(associationOf(view, 'turbulentBehindHungCover').test)).toBe('zeroMargin');
    const finding = associationOf(view, 'turbulentWithFinding');
    expect(finding.leftOut).toEqual([{ because: 'notInspected', count: 6 }]);
    expect(reasonOf(finding.test)).toBe('zeroMargin');
  });

  it('count no encounter in which no wing could be watched', () => {
    const view = flightOf([
      say(300, 'laminarLost', turbulent([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])),
      say(1000, 'moistureEntered'),
      say(1100, 'moistureExited'),
    ]);
    const moisture = associationOf(view, 'lossInMoisture');
    expect(moisture.table?.[0]).toEqual([0, 0]);
    expect(moisture.leftOut).toEqual([{ because: 'wingsNotSeen', count: 1 }]);
  });

  it('count no loss that left a good part of the wing, and none by command in a clear run', () => {
    const all = turbulent([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    const view = flightOf([
      ...laminarFlight(),
      say(400, 'moistureEntered'),
      say(420, 'laminarLost', turbulent([1, 2, 3])),
      say(450, 'moistureExited'),
      say(470, 'laminarGained', turbulent([])),
      ...run(900, 1200).slice(0, 1),
      say(1000, 'laminarLost', { ...all, byCommand: true }),
      ...run(900, 1200).slice(1),
    ]);
    expect(associationOf(view, 'lossInMoisture').table).toEqual([
      [0, 1],
      [0, 1],
    ]);
  });

  it('need seven joined samples before particle size is held against loss', () => {
    const encountersOf = (count: number): FlightView =>
      flightOf([
        ...laminarFlight(),
        ...Array.from({ length: count }, (_, index) => {
          const from = 1000 * (index + 1);
          const label = `M${index}`;
          return [
            say(from, 'moistureEntered', { encounter: label }),
            say(from + 1, 'samplerOpened', { sample: `S${index}` }),
            // The larger the particles, the sooner the loss.
            say(
              from + 60 - 5 * index,
              'laminarLost',
              turbulent([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]),
            ),
            say(from + 80, 'samplerClosed', { sample: `S${index}` }),
            say(from + 90, 'moistureExited', { encounter: label }),
            say(from + 200, 'laminarGained', turbulent([])),
          ];
        }).flat(),
        ...Array.from({ length: count }, (_, index) =>
          say(90_000 + index, 'labResultReceived', {
            sample: `S${index}`,
            meanSizeMicrometre: 10 + index,
          }),
        ),
      ]);
    const few = associationOf(encountersOf(6), 'particleSizeAndLoss');
    expect(few.table).toBeNull();
    expect(reasonOf(few.test)).toBe('tooFewJoinedSamples');
    const enough = associationOf(encountersOf(7), 'particleSizeAndLoss');
    expect(enough.table).toEqual([
      [3, 0],
      [0, 4],
    ]);
    // 3 of 7 chosen: one way in 35.
    expect(answerOf(enough.test).pTwoSided).toBeCloseTo(1 / 35, 9);
  });
});
