import { describe, expect, it } from 'vitest';
import { encounters, type Encounter } from '../../../src/analysis/encounters/encounters.ts';
import { answerOf, reasonOf } from './reading.ts';
import { ALL, flightOf, laminarFlight, say, turbulent } from './smallFlight.ts';
import { of, USUAL } from './usual.ts';

describe('time to recovery', () => {
  it('is told both ways: the first of it back, and as many as before', () => {
    const { recovery } = of(
      ...USUAL.slice(0, 3),
      say(1150, 'laminarGained', turbulent([1, 2, 3, 4, 5, 6])),
      say(1190, 'laminarGained', turbulent([])),
    ).wings.L;
    expect(answerOf(recovery.sustained)).toMatchObject({ lagS: 50, count: { laminar: 6 } });
    expect(answerOf(recovery.toCount)).toMatchObject({ lagS: 90, count: { laminar: 12 } });
  });

  it('passes over a flicker of less than ten seconds', () => {
    const flicker = (lostAgainS: number): Encounter =>
      of(
        ...USUAL.slice(0, 3),
        say(1120, 'laminarGained', turbulent([2])),
        say(lostAgainS, 'laminarLost', turbulent(ALL)),
        say(1160, 'laminarGained', turbulent([])),
        say(1300, 'noted', { words: 'level' }),
      );
    expect(answerOf(flicker(1129).wings.L.recovery.sustained).lagS).toBe(60);
    expect(answerOf(flicker(1130).wings.L.recovery.sustained).lagS).toBe(20);
  });

  it.each([
    ['reentry', say(1140, 'moistureEntered', { encounter: 'M2' })],
    ['suctionChange', say(1140, 'suctionChanged', { wing: 'both', setting: 'more' })],
    ['descent', say(1140, 'descentBegun')],
    ['landing', say(1140, 'touchedDown')],
    ['endOfRecord', say(1140, 'noted', { words: 'last words' })],
  ])('is censored by %s', (why, line) => {
    const lines = why === 'endOfRecord' ? [...USUAL.slice(0, 3), line] : [...USUAL, line];
    const inOrder = lines.toSorted((a, b) => a.afterS - b.afterS);
    const [first] = encounters(flightOf([...laminarFlight(), ...inOrder]));
    if (first === undefined) throw new RangeError('an encounter is expected');
    const { recovery } = first.wings.L;
    expect(reasonOf(recovery.toCount)).toBe(why);
    expect(reasonOf(recovery.sustained)).toBe(why);
    expect(recovery.toCountWatch).toMatchObject({ watchedS: 40, ended: why });
    // It was lost for at least so long, which is said and not hidden.
    if (first.lost.kind === 'noAnswer') throw new Error(first.lost.because);
    expect(first.lost.value.lostForS).toBe(110);
    expect(first.lost.how.broken).toEqual(['notRecovered']);
  });

  it('counts a change of suction on the other wing for that wing alone', () => {
    const { wings } = of(
      ...USUAL.slice(0, 3),
      say(1140, 'suctionChanged', { wing: 'R', setting: 'more' }),
      say(1160, 'laminarGained', turbulent([])),
    );
    expect(answerOf(wings.L.recovery.toCount).lagS).toBe(60);
    expect(reasonOf(wings.R.recovery.toCount)).toBe('suctionChange');
  });

  it('has none for moisture that was still open at landing', () => {
    const { inMoisture, exit, wings, lost } = of(
      ...USUAL.slice(0, 2),
      say(1500, 'touchedDown'),
      say(9000, 'labResultReceived', { sample: 'S-9' }),
    );
    expect(exit).toBeNull();
    expect(reasonOf(inMoisture)).toBe('stillOpen');
    expect(answerOf(wings.L.loss.first).lagS).toBe(30);
    expect(reasonOf(wings.L.recovery.toCount)).toBe('moistureStillOpen');
    expect(answerOf(lost).lostForS).toBe(470);
  });

  it('says when a wing was whole again while still inside', () => {
    const { wings, lost } = of(
      ...USUAL.slice(0, 2),
      say(1060, 'laminarGained', turbulent([])),
      say(1100, 'moistureExited', { encounter: 'M1' }),
    );
    expect(reasonOf(wings.L.recovery.toCount)).toBe('backBeforeExit');
    expect(answerOf(lost).lostForS).toBe(30);
  });
});
