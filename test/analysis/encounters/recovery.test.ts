import { describe, expect, it } from 'vitest';
import { recoveryTimes } from '../../../src/analysis/encounters/recovery.ts';
import type { FlightView } from '../../../src/record/flight.ts';
import { answerOf, reasonOf } from './reading.ts';
import { ALL, flightOf, laminarFlight, say, turbulent } from './smallFlight.ts';

/** Lost 30 s after entry; back so many seconds after exit, or never before the next entry 500 s after this exit. */
function flight(backAfterS: readonly (number | null)[]): FlightView {
  const lines = backAfterS.flatMap((backS, index) => {
    const from = 1000 * (index + 1);
    const back = backS === null ? 700 : 100 + backS;
    return [
      say(from, 'moistureEntered', { encounter: `M${index}` }),
      say(from + 30, 'laminarLost', turbulent(ALL)),
      say(from + 100, 'moistureExited', { encounter: `M${index}` }),
      ...(backS === null
        ? [
            say(from + 600, 'moistureEntered', { encounter: `again${index}` }),
            say(from + 650, 'moistureExited', { encounter: `again${index}` }),
          ]
        : []),
      say(from + back, 'laminarGained', turbulent([])),
    ];
  });
  return flightOf([...laminarFlight(), ...lines, say(90_000, 'touchedDown')]);
}

describe('times over several encounters', () => {
  it('draw the curve with those that were not back in time as censored', () => {
    const { outcomes, leftOut, curve } = recoveryTimes([flight([50, 60, 70, 80, null, 90])])
      .recoveryToCount.L;
    expect(outcomes.filter(({ observed }) => !observed)).toMatchObject([
      { label: 'M4', durationS: 500, ended: 'reentry' },
    ]);
    // The second entry of M4 found the wing turbulent, so nothing was lost that could come back.
    expect(leftOut).toEqual([{ because: 'nothingLost', encounters: 1 }]);
    // Six watched, five back one by one at 50 to 90 s, the sixth only watched: 5/6, 4/6 ... 1/6.
    const { steps, median } = answerOf(curve);
    expect(steps.map(({ time }) => time)).toEqual([50, 60, 70, 80, 90]);
    expect(steps.map(({ survival }) => survival)).toEqual(
      [5, 4, 3, 2, 1].map((left) => expect.closeTo(left / 6, 9)),
    );
    expect(median).toMatchObject({ kind: 'ready', value: 70 });
  });

  it('pool encounters of several flights, each encounter once', () => {
    const few = recoveryTimes([flight([50, 60, 70, 80])]).recoverySustained.R;
    expect(reasonOf(few.curve)).toBe('fewEvents');
    expect(few.outcomes.map(({ durationS }) => durationS)).toEqual([50, 60, 70, 80]);
    const pooled = recoveryTimes([flight([50, 60]), flight([70, 80, 90])]).recoverySustained.R;
    expect(answerOf(pooled.curve).eventCount).toBe(5);
    expect(reasonOf(recoveryTimes([]).loss.L.curve)).toBe('noEncounter');
  });

  it('leave out a lag that is struck', () => {
    const view = flightOf([
      ...laminarFlight(),
      say(1000, 'moistureEntered'),
      say(1050, 'probesRead', turbulent(ALL)),
      say(1100, 'moistureExited'),
    ]);
    const { outcomes, leftOut } = recoveryTimes([view]).loss.R;
    expect(outcomes).toEqual([]);
    expect(leftOut).toEqual([{ because: 'readingIsABound', encounters: 1 }]);
  });
});
