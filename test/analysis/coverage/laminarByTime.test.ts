import { describe, expect, it } from 'vitest';
import { laminarByTime } from '../../../src/analysis/coverage/laminarByTime.ts';
import { answerOf, reasonOf } from '../encounters/reading.ts';
import {
  ALL,
  atS,
  flightOf,
  run,
  say,
  smallSheet,
  turbulent,
  withUnserviceable,
  type Line,
} from '../encounters/smallFlight.ts';

/*
 * Three panels of 30 ft² and twelve probes of 7.5 ft² a wing. Suction is on for an hour from 1000 s; all of it is
 * laminar from 1300 s, so that the share by area and time is 3300/3600 in all air and 1 in clear air.
 */
const ON: readonly Line[] = [
  say(100, 'liftedOff'),
  say(500, 'levelledOff'),
  say(800, 'probesRead', turbulent(ALL)),
  say(1000, 'suctionTurnedOn', { wing: 'both' }),
  say(1300, 'laminarGained', turbulent([])),
];
const OFF = say(4600, 'suctionTurnedOff', { wing: 'both' });
const HOUR: readonly Line[] = [...ON, ...run(1400, 1700), OFF];

const shares = (lines: readonly Line[], sheet = smallSheet): ReturnType<typeof laminarByTime> =>
  laminarByTime(flightOf(lines, sheet));

function brokenIn(answer: ReturnType<typeof shares>['allAir']): readonly string[] {
  if (answer.kind === 'noAnswer') throw new Error(`no answer: ${answer.because}`);
  return answer.how.broken;
}

describe('laminar share by area and time', () => {
  it('counts from suction on in all air, and from the last gain in clear air', () => {
    const { allAir, clearAir, spans } = shares(HOUR);
    expect(answerOf(allAir)).toEqual({
      byAreaFraction: expect.closeTo(3300 / 3600, 12),
      observedFraction: expect.closeTo(1, 12),
      durationS: 3600,
      lessS: 0,
    });
    expect(answerOf(clearAir)).toMatchObject({ byAreaFraction: 1, durationS: 3300, lessS: 0 });
    expect(spans[0]).toMatchObject({ from: atS(1000), to: atS(4600), settledAt: atS(1300) });
    expect(brokenIn(clearAir)).toEqual([]);
  });

  it('weighs probes by their areas and an intermittent one as half', () => {
    const lines = [
      ...HOUR,
      say(2800, 'probesRead', {
        wings: {
          L: { of: 12, turbulentProbes: ['L01', 'L02'], intermittentProbes: ['L03'] },
          R: { of: 12, turbulentProbes: [] },
        },
      }),
    ];
    // For the last half of the clear 3300 s, 2.5 of 24 probes are not laminar.
    const lost = (2.5 / 24) * 1800;
    expect(answerOf(shares(lines).clearAir).byAreaFraction).toBeCloseTo(1 - lost / 3300, 12);
  });

  it('does not take what nobody saw for turbulent', () => {
    const left = [
      say(500, 'levelledOff'),
      say(1000, 'suctionTurnedOn', { wing: 'both' }),
      say(1300, 'laminarGained', turbulent([], ['L'])),
      OFF,
    ];
    const { allAir, wings } = shares(left);
    // Left wing from 1300 s on, of both wings from 1000 s.
    expect(answerOf(allAir)).toMatchObject({
      byAreaFraction: 1,
      observedFraction: expect.closeTo(3300 / 7200, 12),
    });
    expect(reasonOf(wings.R?.allAir ?? missing())).toBe('notAssessed');
  });

  it('leaves an unserviceable probe out', () => {
    const lines = [...ON, say(1310, 'laminarLost', turbulent([1])), OFF];
    const one = answerOf(shares(lines, withUnserviceable('L01')).wings.L?.allAir ?? missing());
    // Without L01 the left wing is whole from 1300 s on.
    expect(one.byAreaFraction).toBeCloseTo(3300 / 3600, 12);
    expect(one.observedFraction).toBeCloseTo(1, 12);
  });

  it('counts each wing for the time of its own suction', () => {
    const lines = [
      ...ON.filter(({ kind }) => kind !== 'suctionTurnedOn'),
      say(1000, 'suctionTurnedOn', { wing: 'L' }),
      say(2800, 'suctionTurnedOn', { wing: 'R' }),
      OFF,
    ];
    const { allAir, wings } = shares(lines);
    expect(answerOf(wings.L?.allAir ?? missing())).toMatchObject({
      byAreaFraction: expect.closeTo(3300 / 3600, 12),
      durationS: 3600,
    });
    expect(answerOf(wings.R?.allAir ?? missing())).toMatchObject({
      byAreaFraction: 1,
      durationS: 1800,
    });
    expect(answerOf(allAir).byAreaFraction).toBeCloseTo((3300 + 1800) / (3600 + 1800), 12);
  });

  it('has nothing for a wing that never had suction', () => {
    const lines = [...ON, OFF].map((line) =>
      line.kind.startsWith('suctionTurned') ? { ...line, body: { wing: 'L' } } : line,
    );
    expect(shares(lines).wings.R).toBeNull();
  });

  it('adds several spans up', () => {
    const again = [
      ...HOUR,
      say(4700, 'laminarLost', turbulent(ALL)),
      say(5000, 'suctionTurnedOn', { wing: 'both' }),
      say(6200, 'suctionTurnedOff', { wing: 'both' }),
    ];
    const { allAir, spans } = shares(again);
    expect(spans.length).toBe(2);
    expect(answerOf(allAir)).toMatchObject({
      byAreaFraction: expect.closeTo(3300 / (3600 + 1200), 12),
      durationS: 4800,
    });
  });

  it('keeps to level flight', () => {
    const early = [
      ...HOUR.filter(({ kind }) => kind !== 'levelledOff'),
      say(1600, 'levelledOff'),
      say(4000, 'descentBegun'),
    ];
    expect(answerOf(shares(early).allAir)).toMatchObject({ byAreaFraction: 1, durationS: 2400 });
  });
});

describe('clear air', () => {
  const cloud = [
    say(2000, 'moistureEntered', { encounter: 'M1' }),
    say(2060, 'laminarLost', turbulent(ALL)),
    say(2300, 'moistureExited', { encounter: 'M1' }),
    say(2400, 'laminarGained', turbulent([], ['L'])),
    say(2500, 'laminarGained', turbulent([], ['R'])),
  ];

  it('leaves out first loss to last gain of each cloud', () => {
    const { allAir, clearAir } = shares([...HOUR, ...cloud]);
    expect(answerOf(clearAir)).toMatchObject({
      byAreaFraction: 1,
      durationS: 3300 - 440,
      lessS: 440,
    });
    // Left wing lost for 340 s, right wing for 440 s.
    expect(answerOf(allAir).byAreaFraction).toBeCloseTo((3300 - 390) / 3600, 12);
  });

  it('leaves out a whole cloud in which nobody called a wing', () => {
    const unseen = cloud.filter(({ kind }) => kind.startsWith('moisture'));
    const { clearAir } = shares([...HOUR, ...unseen]);
    expect(answerOf(clearAir)).toMatchObject({ durationS: 3000, lessS: 300 });
    expect(brokenIn(clearAir)).toEqual(['moistureNotWatched']);
  });

  it('keeps a cloud that did nothing to a flow which was watched', () => {
    const kept = [
      say(2000, 'moistureEntered', { encounter: 'M1' }),
      say(2100, 'probesRead', turbulent([])),
      say(2300, 'moistureExited', { encounter: 'M1' }),
    ];
    expect(answerOf(shares([...HOUR, ...kept]).clearAir)).toMatchObject({
      durationS: 3300,
      lessS: 0,
    });
  });

  it('says where a wing never came back', () => {
    const { clearAir } = shares([...HOUR, ...cloud.slice(0, 3)]);
    expect(brokenIn(clearAir)).toEqual(['notRecovered']);
    expect(answerOf(clearAir).durationS).toBe(2060 - 1300);
  });

  it('begins with suction where nobody saw the flow take hold', () => {
    const lines = HOUR.filter(({ kind }) => kind !== 'laminarGained');
    const { clearAir } = shares(lines);
    expect(brokenIn(clearAir)).toEqual(['settlingNotSeen']);
    expect(answerOf(clearAir)).toMatchObject({ byAreaFraction: 0, durationS: 3600 });
  });

  it('begins before the first point: a gain in it is a finding, not the taking hold', () => {
    const lines = [
      ...HOUR.filter(({ kind }) => kind !== 'laminarGained'),
      say(1300, 'laminarGained', turbulent([1])),
      say(1500, 'laminarGained', turbulent([])),
    ];
    expect(shares(lines).spans[0]?.settledAt).toBe(atS(1300));
  });

  it('is none where suction was on in cloud alone, and nobody called', () => {
    const lines = [
      ...HOUR.filter(({ kind }) => kind !== 'laminarGained'),
      say(900, 'moistureEntered', {}),
    ];
    const { allAir, clearAir } = shares(lines);
    expect(answerOf(allAir).durationS).toBe(3600);
    expect(reasonOf(clearAir)).toBe('noClearAir');
  });
});

describe('a share that cannot be given', () => {
  it('says why', () => {
    const { instruments: _, ...rest } = smallSheet;
    const bare = { ...rest, instruments: [], probes: [], panels: [] };
    expect(reasonOf(shares(HOUR, bare).allAir)).toBe('noTappedArea');
    const uncalled = HOUR.filter(({ kind }) => !['probesRead', 'laminarGained'].includes(kind));
    expect(reasonOf(shares(uncalled).allAir)).toBe('notAssessed');
    expect(reasonOf(shares([say(500, 'levelledOff')]).allAir)).toBe('notLevel');
  });

  it('names suction that was never turned off', () => {
    const { allAir } = shares([...ON, say(4000, 'descentBegun')]);
    expect(brokenIn(allAir)).toEqual(['notTurnedOff']);
    expect(answerOf(allAir).durationS).toBe(3000);
  });
});

function missing(): never {
  throw new Error('the wing must have had suction');
}
