import { describe, expect, it } from 'vitest';
import { encounters } from '../../../src/analysis/encounters/encounters.ts';
import { WINGS } from '../../../src/record/sheet.ts';
import { answerOf, reasonOf } from './reading.ts';
import { of, only, USUAL } from './usual.ts';
import {
  ALL,
  atS,
  entriesOf,
  flightOf,
  laminarFlight,
  say,
  smallSheet,
  turbulent,
} from './smallFlight.ts';
import { startFlight } from '../../../src/record/flight.ts';

describe('time to loss', () => {
  it('is the first loss less the entry, its doubt that of both touches', () => {
    const { loss } = of(...USUAL).wings.L;
    // Two touches of 2 s each by the flight sheet: the root of 8.
    expect(answerOf(loss.first)).toMatchObject({
      lagS: 30,
      lagStandardUncertaintyS: Math.hypot(2, 2),
      from: { laminar: 12 },
      to: { laminar: 0 },
    });
  });

  it('keeps the first loss apart from the lowest count', () => {
    const { loss } = of(
      say(1000, 'moistureEntered'),
      say(1010, 'laminarLost', turbulent([12])),
      say(1040, 'laminarLost', turbulent(ALL)),
      say(1100, 'moistureExited'),
    ).wings.L;
    expect(answerOf(loss.first)).toMatchObject({ lagS: 10, to: { laminar: 11 } });
    expect(answerOf(loss.lowest)).toMatchObject({
      lagS: 40,
      from: { laminar: 12 },
      to: { laminar: 0 },
    });
  });

  it('leaves out a wing that was turbulent already', () => {
    const { wings } = of(say(900, 'laminarLost', turbulent(ALL, ['L'])), ...USUAL);
    expect(reasonOf(wings.L.loss.first)).toBe('turbulentAtEntry');
    expect(wings.L.loss.watched).toBeNull();
    expect(answerOf(wings.R.loss.first).lagS).toBe(30);
  });

  it('says when suction was off or nobody had called the wing', () => {
    const moisture = [say(1000, 'moistureEntered'), say(1100, 'moistureExited')];
    const off = only(flightOf(moisture));
    expect(reasonOf(off.wings.L.loss.first)).toBe('suctionOff');
    const unseen = only(
      flightOf([
        say(200, 'suctionTurnedOn', { wing: 'both', setting: 'nominal' }),
        say(300, 'laminarGained', turbulent([], ['R'])),
        ...USUAL.map((line) =>
          line.kind === 'laminarLost' ? say(1030, 'laminarLost', turbulent(ALL, ['R'])) : line,
        ),
      ]),
    );
    expect(reasonOf(unseen.wings.L.loss.first)).toBe('notAssessedAtEntry');
    expect(answerOf(unseen.wings.R.loss.first).lagS).toBe(30);
    // Of the area only the right wing was called.
    expect(answerOf(unseen.area).before.observedFraction).toBeCloseTo(0.5, 9);
  });

  it('believes a loss on a wing that nobody had counted before', () => {
    const { loss } = only(flightOf([say(200, 'suctionTurnedOn', { wing: 'both' }), ...USUAL])).wings
      .L;
    expect(answerOf(loss.first)).toMatchObject({ lagS: 30, from: null, to: { laminar: 0 } });
  });

  it('does not count a loss by command, and stops watching there', () => {
    const { wings } = of(
      say(1000, 'moistureEntered'),
      say(1020, 'suctionChanged', { wing: 'both', setting: 'half' }),
      say(1030, 'laminarLost', { ...turbulent(ALL), byCommand: true }),
      say(1100, 'moistureExited'),
    );
    for (const wing of WINGS) {
      expect(reasonOf(wings[wing].loss.first)).toBe('suctionChange');
      expect(wings[wing].loss.watched).toMatchObject({ watchedS: 20, ended: 'suctionChange' });
      expect(wings[wing].lostByCommand.length).toBe(1);
    }
  });

  it('marks a loss found in a reading of probes as a bound', () => {
    const { loss } = of(
      say(1000, 'moistureEntered'),
      say(1050, 'probesRead', turbulent(ALL)),
      say(1100, 'moistureExited'),
    ).wings.R;
    if (loss.first.kind === 'noAnswer') throw new Error(loss.first.because);
    expect(loss.first.how.broken).toEqual(['readingIsABound']);
    // A reading is 5 s in doubt by the flight sheet, a touch 2 s.
    expect(loss.first.value.lagStandardUncertaintyS).toBeCloseTo(Math.hypot(5, 2), 9);
  });

  it('takes a loss shortly before a doubtful entry as this one, struck', () => {
    const { loss } = of(
      say(1000, 'laminarLost', turbulent(ALL)),
      say(1100, 'moistureEntered', { at: atS(1008), doubtS: 20 }),
      say(1110, 'moistureExited'),
    ).wings.L;
    if (loss.first.kind === 'noAnswer') throw new Error(loss.first.because);
    expect(loss.first.value.lagS).toBe(-8);
    expect(loss.first.how.broken).toEqual(['lostBeforeEntryWithinDoubt']);
  });

  it('watches a wing that keeps its flow for five minutes after moisture', () => {
    const { wings, lost, fuelForgone, area } = of(
      say(1000, 'moistureEntered'),
      say(1100, 'moistureExited'),
      say(5000, 'noted', { words: 'nothing seen' }),
    );
    expect(reasonOf(wings.L.loss.first)).toBe('moistureOver');
    expect(wings.L.loss.watched).toMatchObject({ watchedS: 400, ended: 'moistureOver' });
    expect([lost, area, fuelForgone].map(reasonOf)).toEqual(Array(3).fill('nothingLost'));
    expect(reasonOf(wings.L.recovery.toCount)).toBe('nothingLost');
  });
});

describe('what was lost', () => {
  it('weighs the area over the time from the first loss to the last gain', () => {
    const { area, lost } = of(
      ...USUAL.slice(0, 3),
      say(1160, 'laminarGained', turbulent([], ['L'])),
      say(1230, 'laminarGained', turbulent([], ['R'])),
    );
    expect(answerOf(lost).lostForS).toBe(200);
    // Nothing for 130 s, then half of the area for 70 s.
    expect(answerOf(area).during.byAreaFraction).toBeCloseTo((0.5 * 70) / 200, 9);
    expect(answerOf(area).before.byAreaFraction).toBe(1);
  });

  it('has no fuel without a run at that setting that says what it saves', () => {
    expect(reasonOf(of(...USUAL).fuelForgone)).toBe('noRunAtThisSetting');
  });
});

describe('what was written', () => {
  const entries = entriesOf([...laminarFlight(), ...USUAL]);

  it('gives no encounter without moisture or without a flight sheet', () => {
    expect(encounters(flightOf(laminarFlight()))).toEqual([]);
    expect(encounters(startFlight().add(entries.slice(1)))).toEqual([]);
  });

  it('takes a back-dated and an amended entry at the time they now have', () => {
    const moved = only(
      flightOf([
        ...laminarFlight(),
        say(1030, 'laminarLost', turbulent(ALL)),
        say(1100, 'moistureExited'),
        say(1105, 'moistureEntered', { at: atS(990), basis: 'late' }),
        say(1160, 'laminarGained', turbulent([])),
      ]),
    );
    // Late by the flight sheet: 20 s, and a touch of 2 s.
    expect(answerOf(moved.wings.L.loss.first)).toMatchObject({
      lagS: 40,
      lagStandardUncertaintyS: Math.hypot(20, 2),
    });
    const lost = entries.find(({ kind }) => kind === 'laminarLost');
    if (lost === undefined) throw new RangeError('a loss must be written');
    const amended = entriesOf([
      ...laminarFlight(),
      ...USUAL,
      say(2000, 'entryAmended', {
        target: lost.id,
        replaces: [],
        changes: [{ field: 'at', old: null, new: atS(1020) }],
        code: 'backDated',
        reason: 'heard on the intercom',
      }),
    ]);
    expect(answerOf(only(startFlight().add(amended)).wings.L.loss.first).lagS).toBe(20);
  });

  it('is as if a withdrawn loss had never been written', () => {
    const lost = entries.find(({ kind }) => kind === 'laminarLost');
    if (lost === undefined) throw new RangeError('a loss must be written');
    const withdrawn = entriesOf([
      ...laminarFlight(),
      ...USUAL,
      say(2000, 'entryWithdrawn', { target: lost.id, reason: 'wrong button' }),
    ]);
    expect(reasonOf(only(startFlight().add(withdrawn)).wings.L.loss.first)).toBe('moistureOver');
  });

  it('leaves a probe out of the counts that the flight sheet calls unserviceable', () => {
    const sheet = {
      ...smallSheet,
      probes: smallSheet.probes.map((probe) =>
        probe.id === 'L12' ? { ...probe, serviceable: false } : probe,
      ),
    };
    const { loss } = only(flightOf([...laminarFlight(), ...USUAL], sheet)).wings.L;
    expect(answerOf(loss.first).from).toMatchObject({ laminar: 11, of: 11 });
  });

  it('counts panels where nobody speaks of probes, and never holds one against the other', () => {
    const bare = { ...smallSheet, probes: [] };
    const panels = (wing: string): readonly string[] =>
      [1, 2, 3].map((number) => `${wing}${number}`);
    const { loss, recovery } = only(
      flightOf(
        [
          say(200, 'suctionTurnedOn', { wing: 'both' }),
          say(300, 'laminarGained', { panels: [...panels('L'), 'X9'] }),
          say(1000, 'moistureEntered'),
          say(1030, 'panelStateCalled', { panel: 'L3', state: 'turbulent' }),
          say(1100, 'moistureExited'),
          say(1150, 'panelStateCalled', { panel: 'L3', state: 'laminar' }),
          say(1300, 'noted', { words: 'level' }),
        ],
        bare,
      ),
    ).wings.L;
    expect(answerOf(loss.first)).toMatchObject({
      lagS: 30,
      from: { as: 'panels', laminar: 3, of: 3 },
      to: { as: 'panels', laminar: 2, of: 3 },
    });
    expect(answerOf(recovery.toCount).lagS).toBe(50);
  });

  it('goes over midnight', () => {
    // The small flight opens at 21:00; 10 700 s later is 23:58:20.
    const late = USUAL.map((line) => ({ ...line, afterS: line.afterS + 9_700 }));
    expect(answerOf(of(...late).wings.R.loss.first).lagS).toBe(30);
  });

  it('goes by bare counts where no probe is named', () => {
    const count = (laminarCount: number): object => ({ wings: { L: { of: 12, laminarCount } } });
    const { loss, recovery } = only(
      flightOf([
        say(200, 'suctionTurnedOn', { wing: 'both' }),
        say(300, 'laminarGained', count(10)),
        say(1000, 'moistureEntered'),
        say(1030, 'laminarLost', count(3)),
        say(1100, 'moistureExited'),
        say(1150, 'laminarGained', count(9)),
        say(1180, 'laminarGained', count(10)),
      ]),
    ).wings.L;
    expect(answerOf(loss.first)).toMatchObject({ from: { laminar: 10 }, to: { laminar: 3 } });
    expect(answerOf(recovery.sustained).lagS).toBe(50);
    expect(answerOf(recovery.toCount).lagS).toBe(80);
  });
});
