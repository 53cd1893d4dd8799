import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { associations } from '../../../src/analysis/encounters/associations.ts';
import { chronicPanels } from '../../../src/analysis/encounters/chronicPanels.ts';
import { encounters } from '../../../src/analysis/encounters/encounters.ts';
import { losses } from '../../../src/analysis/encounters/losses.ts';
import { probeHistory } from '../../../src/analysis/encounters/probeHistory.ts';
import { recoveryTimes } from '../../../src/analysis/encounters/recovery.ts';
import { sampleResults } from '../../../src/analysis/encounters/samples.ts';
import { startFlight, type FlightView } from '../../../src/record/flight.ts';
import { WINGS } from '../../../src/record/sheet.ts';
import { flightA, viewOfEntries } from '../flights.ts';
import { ALL, flightOf, say, turbulent, type Line } from './smallFlight.ts';

const everything = (view: FlightView): unknown => ({
  encounters: encounters(view),
  samples: sampleResults(view),
  losses: losses(view, [view]),
  associations: associations(view),
  times: recoveryTimes([view]),
  probes: probeHistory(view),
  chronic: chronicPanels([view]),
});

/** Whatever a crew may touch, in any order: some of it makes no sense, and it must still have an answer. */
const anyLine = fc.constantFrom<(afterS: number) => Line>(
  (at) => say(at, 'moistureEntered', { encounter: 'M1' }),
  (at) => say(at, 'moistureEntered'),
  (at) => say(at, 'moistureExited'),
  (at) => say(at, 'laminarLost', turbulent(ALL)),
  (at) => say(at, 'laminarLost', turbulent([1, 2], ['L'])),
  (at) => say(at, 'laminarLost', { panels: ['L1', 'Z9'] }),
  (at) => say(at, 'laminarGained', turbulent([])),
  (at) => say(at, 'laminarGained', { wings: { R: { of: 12, laminarCount: 7 } } }),
  (at) => say(at, 'probesRead', turbulent([3], ['R'])),
  (at) => say(at, 'panelStateCalled', { panel: 'L2', state: 'intermittent' }),
  (at) => say(at, 'suctionTurnedOn', { wing: 'both', setting: 'nominal' }),
  (at) => say(at, 'suctionChanged', { wing: 'L', region: 'nose' }),
  (at) => say(at, 'suctionTurnedOff', { wing: 'R' }),
  (at) => say(at, 'samplerOpened', { sample: 'S1' }),
  (at) => say(at, 'samplerClosed', { sample: 'S1' }),
  (at) => say(at, 'labResultReceived', { sample: 'S1', meanSizeMicrometre: 20 }),
  (at) => say(at, 'testPointStarted', { point: 'TP02', run: 1 }),
  (at) => say(at, 'testPointEnded', { point: 'TP02', run: 1 }),
  (at) => say(at, 'descentBegun'),
  (at) => say(at, 'touchedDown'),
);

const anyFlight = fc
  .array(fc.tuple(anyLine, fc.integer({ min: 0, max: 400 })), { maxLength: 30 })
  .map((steps) => {
    let at = 100;
    return steps.map(([line, gapS]) => line((at += gapS)));
  });

describe('results of encounters', () => {
  it('do not depend on the order in which the entries arrive', () => {
    const expected = everything(viewOfEntries(flightA.entries));
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...flightA.entries], { minLength: flightA.entries.length }),
        fc.integer({ min: 1, max: flightA.entries.length - 1 }),
        (shuffled, cut) => {
          const flight = startFlight();
          flight.add(shuffled.slice(0, cut));
          expect(everything(flight.add(shuffled.slice(cut)))).toEqual(expected);
        },
      ),
      { numRuns: 10 },
    );
  });

  it('do not depend on the order in which flights are given', () => {
    const [one, other] = [viewOfEntries(flightA.entries), flightOf([say(9, 'touchedDown')])];
    expect(recoveryTimes([one, other])).toEqual(recoveryTimes([other, one]));
    expect(chronicPanels([one, other])).toEqual(chronicPanels([other, one]));
  });

  it('have an answer or a reason for whatever was touched, and no number that is none', () => {
    fc.assert(
      fc.property(anyFlight, (lines) => {
        const view = flightOf(lines);
        // Numbers that are not finite become null in a file, which would be a blank.
        const text = JSON.stringify(everything(view), (_, value: unknown) => {
          if (typeof value === 'number' && !Number.isFinite(value)) throw new Error('not finite');
          return value;
        });
        expect(text.length).toBeGreaterThan(0);
        for (const { wings, exit } of encounters(view)) {
          for (const wing of WINGS) {
            const { loss, recovery } = wings[wing];
            expect(loss.watched?.watchedS ?? 0).toBeGreaterThanOrEqual(0);
            if (loss.first.kind === 'answer' && loss.lowest.kind === 'answer') {
              expect(loss.lowest.value.lagS).toBeGreaterThanOrEqual(loss.first.value.lagS);
            }
            if (exit === null) expect(recovery.toCount.kind).toBe('noAnswer');
            if (recovery.toCount.kind === 'answer') {
              expect(recovery.toCount.value.lagS).toBeGreaterThanOrEqual(0);
            }
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});
