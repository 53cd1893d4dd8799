import { describe, expect, it } from 'vitest';
import { itemAt, items } from '../../src/record/trail.ts';
import { doubtsOf, intervalsOf, say, stateAfter } from './folding.ts';
import { START_MS } from './writing.ts';

describe('intervals', () => {
  it('close by label, and without one the newest', () => {
    const state = stateAfter([
      say('samplerOpened', { sample: 'S-01' }),
      say('samplerOpened', { sample: 'S-02' }),
      say('samplerClosed', { sample: 'S-01' }),
      say('samplerClosed'),
    ]);
    expect(intervalsOf(state)).toEqual(['sampler S-01 10-30', 'sampler S-02 20-40']);
    expect([...items(state.samples)].map((sample) => sample.closed?.at)).toEqual([
      START_MS + 30_000,
      START_MS + 40_000,
    ]);
    expect(doubtsOf(state)).toEqual([]);
  });

  it('ask about a second opening and open nothing for it', () => {
    const state = stateAfter([
      say('moistureEntered', { encounter: 'M1' }),
      say('moistureEntered', { encounter: 'M1' }),
      say('moistureEntered'),
    ]);
    expect(intervalsOf(state)).toEqual(['moisture M1 10-']);
    expect(doubtsOf(state)).toEqual([
      'intervalAlreadyOpen: moisture M1',
      'intervalAlreadyOpen: moisture',
    ]);
  });

  it('open a second cloud under another name, and ask whether the first was left', () => {
    const state = stateAfter([
      say('moistureEntered', { encounter: 'M1' }),
      say('moistureEntered', { encounter: 'M2' }),
      say('moistureExited', { encounter: 'M1' }),
    ]);
    expect(intervalsOf(state)).toEqual(['moisture M1 10-30', 'moisture M2 20-']);
    expect(doubtsOf(state)).toEqual(['intervalAlreadyOpen: moisture M2']);
  });

  it('close one opened without a name by any name', () => {
    const state = stateAfter([say('moistureEntered'), say('moistureExited', { encounter: 'M1' })]);
    expect(intervalsOf(state)).toEqual(['moisture  10-20']);
    expect(doubtsOf(state)).toEqual([]);
  });

  it('ask about an end without a beginning, and about the beginning that comes after it', () => {
    const state = stateAfter([
      say('moistureExited', { encounter: 'M1' }),
      say('moistureEntered', { encounter: 'M1' }),
      say('moistureEntered', { encounter: 'M3' }),
    ]);
    expect(doubtsOf(state)).toEqual([
      'intervalNotOpen: moisture M1',
      'endBeforeStart: moisture M1',
      'intervalAlreadyOpen: moisture M3',
    ]);
  });

  it('of a turn given with its length need no end, and one that comes anyway says nothing new', () => {
    const state = stateAfter([
      say('turnStarted', { lastedS: 15 }),
      say('turnEnded'),
      say('turnStarted'),
      say('turnEnded'),
      say('turnEnded'),
    ]);
    expect(intervalsOf(state)).toEqual(['turn  10-25', 'turn  30-40']);
    expect(doubtsOf(state)).toEqual(['intervalNotOpen: turn']);
  });

  it("open and close by the crew's own tiles; an instant leaves none", () => {
    const own = (form: string) => say('ownEventMarked', { tile: 'lamp', label: 'Lamp', form });
    const state = stateAfter([own('instant'), own('on'), own('off'), own('opened')]);
    expect(intervalsOf(state)).toEqual(['own:lamp Lamp 20-30', 'own:lamp Lamp 40-']);
  });

  it('of recorder and photo panel carry the medium', () => {
    const state = stateAfter([
      say('recorderSwitched', { on: true, medium: 'R-117' }),
      say('photoPanelSwitched', { on: true, medium: 'P-052' }),
      say('recorderSwitched', { on: false }),
    ]);
    expect(intervalsOf(state)).toEqual(['recorder R-117 10-30', 'photoPanel P-052 20-']);
  });
});

describe('test points', () => {
  const [start, end] = [
    say('testPointStarted', { point: 'TP01', run: 1 }),
    say('testPointEnded', { point: 'TP01', run: 1 }),
  ];

  it('ask about a second open point; each is closed by its own end', () => {
    const state = stateAfter([
      start,
      say('testPointStarted', { point: 'TP02', run: 1 }),
      say('testPointInterrupted', { point: 'TP02', run: 1, reason: 'moisture' }),
    ]);
    expect([...items(state.runs)].map((run) => [run.point, run.state, run.reason])).toEqual([
      ['TP01', 'open', null],
      ['TP02', 'interrupted', 'moisture'],
    ]);
    expect(state.openRun).toBe(0);
    expect(doubtsOf(state)).toEqual(['pointAlreadyOpen: TP02 run 1']);
  });

  it('do not open twice', () => {
    const state = stateAfter([start, start, end]);
    expect(state.runs.length).toBe(1);
    expect(state.openRun).toBeNull();
    expect(doubtsOf(state)).toEqual(['pointAlreadyOpen: TP01 run 1']);
  });

  it('ask about an end without a start, and about the start after it', () => {
    const state = stateAfter([end, start]);
    expect(doubtsOf(state)).toEqual([
      'pointNotOpen: TP01 run 1',
      'endBeforeStart: testPoint TP01 run 1',
    ]);
    expect(state.openRun).toBe(0);
  });

  it('are closed as terminated by any stop call', () => {
    const state = stateAfter([start, say('stopCalled', { call: 'knockItOff', reason: 'traffic' })]);
    expect(itemAt(state.runs, 0)).toMatchObject({ state: 'terminated', reason: 'traffic' });
    expect(intervalsOf(state)).toEqual(['testPoint TP01 run 1 10-20']);
    expect(state.closed).toBeNull();
  });

  it('take in a fuel reading given with their end', () => {
    const read = { readings: [{ instrument: 'FF1', value: 1220, unit: 'lb/h' }] };
    const state = stateAfter([start, { ...end, body: { ...end.body, ...read } }]);
    expect(itemAt(state.runs, 0)?.fuelGlances).toEqual([0]);
  });
});

describe('suction', () => {
  it('goes on and off by wing, and each wing has its interval', () => {
    const state = stateAfter([
      say('suctionTurnedOn', { wing: 'L', setting: 'nominal' }),
      say('suctionTurnedOn', { wing: 'R', setting: 'nominal' }),
      say('suctionChanged', { wing: 'both', setting: '+15 %' }),
      say('suctionTurnedOff', { wing: 'L' }),
    ]);
    expect(intervalsOf(state)).toEqual(['suction L 10-40', 'suction R 20-']);
    expect(state.suction.L).toMatchObject({
      on: null,
      setting: null,
      lastChangeAt: START_MS + 40_000,
    });
    expect(state.suction.R).toMatchObject({ on: { at: START_MS + 20_000 }, setting: '+15 %' });
    expect(
      [...items(state.suctionChanges)].map(({ what, wings }) => `${what} ${wings.join()}`),
    ).toEqual(['on L', 'on R', 'changed L,R', 'off L']);
    expect(doubtsOf(state)).toEqual([]);
  });

  it('stays on while one of two regions is on', () => {
    const inner = { wing: 'L', region: 'inner' };
    const outer = { wing: 'L', region: 'outer' };
    const both = [say('suctionTurnedOn', inner), say('suctionTurnedOn', outer)];
    const one = stateAfter([...both, say('suctionTurnedOff', inner)]);
    expect(one.suction.L.on?.at).toBe(START_MS + 10_000);
    const none = stateAfter([
      ...both,
      say('suctionTurnedOff', inner),
      say('suctionTurnedOff', outer),
    ]);
    expect(none.suction.L.on).toBeNull();
    const whole = stateAfter([...both, say('suctionTurnedOff', { wing: 'L' })]);
    expect(whole.suction.L.on).toBeNull();
    expect(intervalsOf(whole)).toEqual(['suction L 10-30']);
  });

  it('asks when it is turned on twice, or changed or turned off while off', () => {
    const state = stateAfter([
      say('suctionChanged', { wing: 'L', setting: 'x' }),
      say('suctionTurnedOff', { wing: 'L' }),
      say('suctionTurnedOn', { wing: 'L' }),
      say('suctionTurnedOn', { wing: 'both' }),
    ]);
    expect(doubtsOf(state)).toEqual(['suctionNotOn: L', 'suctionNotOn: L', 'suctionAlreadyOn: L']);
  });
});

describe('flow on the wings', () => {
  const lost = (body: object) => say('laminarLost', body);
  const all = say('probesRead', { wings: { L: { of: 24, turbulentProbes: [] } } });

  it('is worked out panel by panel from the probes named', () => {
    const state = stateAfter([
      lost({
        wings: {
          L: {
            of: 24,
            turbulentProbes: ['L01', 'L05', 'L06', 'L07', 'L08'],
            intermittentProbes: ['L09'],
          },
        },
      }),
    ]);
    const panels = Object.entries(state.panels).map(([panel, now]) => [panel, now.state, now.from]);
    expect(panels).toEqual([
      ['L1', 'intermittent', 'probes'],
      ['L2', 'turbulent', 'probes'],
      ['L3', 'intermittent', 'probes'],
      ['L4', 'laminar', 'probes'],
      ['L5', 'laminar', 'probes'],
      ['L6', 'laminar', 'probes'],
    ]);
    expect(state.probes['L09']?.state).toBe('intermittent');
    expect(state.probes['R01']).toBeUndefined();
  });

  it('is left as it was by a bare count, unless that is none or all', () => {
    const count = (laminarCount: number) => lost({ wings: { L: { of: 24, laminarCount } } });
    const some = stateAfter([all, count(3)]);
    expect(some.probes['L01']?.state).toBe('laminar');
    expect(itemAt(some.wingCalls, -1)).toMatchObject({ called: { laminarCount: 3 }, wing: 'L' });
    expect(stateAfter([all, count(0)]).panels['L1']?.state).toBe('turbulent');
    expect(stateAfter([count(24)]).panels['L6']?.state).toBe('laminar');
    expect(stateAfter([count(3)]).panels).toEqual({});
  });

  it('called for a panel holds until probes of that wing are called', () => {
    const panel = say('panelStateCalled', { panel: 'L2', state: 'turbulent' });
    const called = stateAfter([all, panel]);
    expect(called.panels['L2']).toMatchObject({ state: 'turbulent', from: 'panel' });
    expect(called.probes['L05']?.state).toBe('laminar');
    const right = say('probesRead', { wings: { R: { of: 24, turbulentProbes: [] } } });
    expect(stateAfter([all, panel, right]).panels['L2']?.from).toBe('panel');
    expect(stateAfter([all, panel, all]).panels['L2']).toMatchObject({
      state: 'laminar',
      from: 'probes',
    });
  });

  it('gained or lost by panels alone changes those panels and no probe', () => {
    const state = stateAfter([all, lost({ panels: ['L3', 'R4'] })]);
    expect(state.panels['L3']).toMatchObject({ state: 'turbulent', from: 'panel' });
    expect(state.panels['R4']).toMatchObject({ state: 'turbulent', from: 'panel' });
    expect(state.probes['L09']?.state).toBe('laminar');
    expect([...items(state.wingCalls)].map((call) => [call.wing, call.called?.of ?? null])).toEqual(
      [
        ['L', 24],
        ['L', null],
        ['R', null],
      ],
    );
    expect(itemAt(state.wingCalls, -1)?.panels).toMatchObject({
      R4: 'turbulent',
      R1: 'notAssessed',
    });
  });

  it('asks about panels and probes that the flight sheet lacks', () => {
    const state = stateAfter([
      say('panelStateCalled', { panel: 'X1', state: 'laminar' }),
      lost({ panels: ['X2'], wings: { L: { of: 24, laminarProbes: ['X3'] } } }),
    ]);
    expect(doubtsOf(state)).toEqual(['unknownPanel: X1', 'unknownPanel: X2', 'unknownProbe: X3']);
  });
});

describe('the way up', () => {
  it('follows the covers from fitted to clear, and does not take a command for a clear panel', () => {
    const state = stateAfter([
      say('preflightDone', { coversFitted: 12, coversOf: 12 }),
      say('gearMoved', { to: 'up' }),
      say('coversReleased', { wing: 'L' }),
      say('coversReleased', { wing: 'R', clear: ['R1'], hung: ['R4'] }),
    ]);
    expect(state.covers).toMatchObject({ L1: 'unknown', R1: 'clear', R4: 'hung', R2: 'unknown' });
    expect(doubtsOf(state)).toEqual([]);
  });

  it('knows nothing of covers of which only some were fitted', () => {
    const state = stateAfter([say('preflightDone', { coversFitted: 11, coversOf: 12 })]);
    expect(new Set(Object.values(state.covers))).toEqual(new Set(['unknown']));
  });

  it('asks about covers released before gear up and about a condition with covers on', () => {
    const state = stateAfter([
      say('coversReleased', { wing: 'R', hung: ['R4'] }),
      say('conditionReached'),
      say('coversReleased', { wing: 'R', clear: ['R9'] }),
    ]);
    expect(doubtsOf(state)).toEqual([
      'coversBeforeGearUp: R',
      'conditionBeforeCovers: R4',
      'coversBeforeGearUp: R',
      'unknownPanel: R9',
    ]);
  });

  it('keeps the first lift-off and the last touchdown', () => {
    const { milestones } = stateAfter([
      say('liftedOff'),
      say('liftedOff'),
      say('touchedDown'),
      say('touchedDown'),
    ]);
    expect(milestones.liftOff?.at).toBe(START_MS + 10_000);
    expect(milestones.touchdown?.at).toBe(START_MS + 40_000);
  });

  it('remembers when the condition was last reached after it is lost', () => {
    const { condition } = stateAfter([say('conditionReached'), say('conditionLost')]);
    expect(condition).toEqual({ reached: null, lastReachedAt: START_MS + 10_000 });
  });

  it('takes a mark from the open ones once a note names it', () => {
    const state = stateAfter([say('markMade'), say('markMade')]);
    const [first] = items(state.openMarks);
    const named = stateAfter([
      say('markMade'),
      say('markMade'),
      say('noted', { words: '', target: first?.by }),
    ]);
    expect([...items(named.openMarks)].map((mark) => mark.at)).toEqual([START_MS + 20_000]);
  });

  it('changes the scribe and keeps the role where none is given', () => {
    const state = stateAfter([say('scribeChanged', { from: 'S1', to: 'S2' })]);
    expect(state.scribe).toEqual({ author: 'S2', role: 'scribe' });
  });
});
