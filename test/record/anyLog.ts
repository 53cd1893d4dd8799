import fc from 'fast-check';
import type { Entry } from '../../src/record/entry.ts';
import { scriptA } from '../flights/flightA.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { chained, REC_A, REC_B, START_MS, type Said } from './writing.ts';

/**
 * Logs of two recorders that make things hard on purpose: few names and few instants, so that entries meet; touches that
 * were not meant, late entries, and entries about entries, of either recorder, that know each other or do not.
 */

const sheet = sheetOfScript(scriptA);
const opening: Said = {
  kind: 'flightOpened',
  afterMs: 0,
  body: { nature: 'practice', title: 'Any', date: '2032-06-02', device: 'first', sheet },
};

/** A step of writing: by whom, what, and where it is about another entry, about which (counted from the newest). */
type Step = (written: readonly Entry[]) => { readonly rec: string; readonly said: Said };

const anyRecorder = fc.constantFrom(REC_A, REC_B);
const anyWing = fc.constantFrom('L', 'R', 'both');
const anyPoint = fc.record({ point: fc.constantFrom('TP01', 'TP02'), run: fc.constantFrom(1, 2) });
const anyReading = fc.oneof(
  fc.record({
    instrument: fc.constantFrom('FF1', 'FF2', 'FU1', 'FUS', 'MACH', 'strange'),
    value: fc.constantFrom(0, 1, 810, 910, 1_220),
    unit: fc.constantFrom('lb/h', 'lb', '1'),
  }),
  fc.record({ instrument: fc.constantFrom('FF1', 'MACH'), blank: fc.constant('notRead') }),
);
const anyReadings = fc.record({ readings: fc.array(anyReading, { minLength: 1, maxLength: 3 }) });
const probes = (wing: 'L' | 'R') =>
  fc.record(
    {
      of: fc.constant(24),
      laminarCount: fc.constantFrom(0, 3, 24),
      turbulentProbes: fc.subarray([`${wing}01`, `${wing}02`, `${wing}18`, 'X9']),
      intermittentProbes: fc.subarray([`${wing}02`, `${wing}03`]),
    },
    { requiredKeys: ['of'] },
  );
const anyFlow = fc.record(
  {
    wings: fc.record({ L: probes('L'), R: probes('R') }, { requiredKeys: [] }),
    panels: fc.subarray(['L1', 'L2', 'R1', 'X9']),
  },
  { requiredKeys: [] },
);
const anyEncounter = fc.record({ encounter: fc.constantFrom('M1', 'M2') }, { requiredKeys: [] });
const anySample = fc.record({ sample: fc.constantFrom('S-01', 'S-02') }, { requiredKeys: [] });
const anyOwn = fc.record({
  tile: fc.constantFrom('dice', 'lamp'),
  label: fc.constant('Own'),
  form: fc.constantFrom('instant', 'opened', 'closed', 'on', 'off'),
});

const anyCorrection = fc.record({
  instrument: fc.constantFrom('FF1', 'MACH', 'strange'),
  correction: fc.constantFrom(0, -20, 7),
});
const anyCertificate = fc.record(
  {
    instrument: fc.constantFrom('FF1', 'FF2', 'strange'),
    correction: fc.constantFrom(-20, 5),
    points: fc.constant([
      { reading: 0, correction: 0 },
      { reading: 1000, correction: -10 },
    ]),
    commonStandardUncertainty: fc.constantFrom(0, 3),
    calibratedOn: fc.constantFrom('2032-05-01', '2032-07-01'),
    condition: fc.constantFrom('asFound', 'asLeft'),
    reason: fc.constant('bench'),
  },
  { requiredKeys: ['instrument', 'calibratedOn', 'condition', 'reason'] },
);

const kindOf = <Body extends object>(kind: string, body: fc.Arbitrary<Body>) =>
  body.map((own) => ({ kind, body: own }));
const none = fc.constant({});

const anyEvent = fc.oneof(
  kindOf('testPointStarted', anyPoint),
  kindOf('testPointEnded', anyPoint),
  kindOf('testPointInterrupted', anyPoint),
  kindOf('stopCalled', fc.constant({ call: 'terminate' })),
  kindOf(
    'suctionTurnedOn',
    fc.record(
      { wing: anyWing, region: fc.constantFrom('inner', 'outer') },
      { requiredKeys: ['wing'] },
    ),
  ),
  kindOf(
    'suctionTurnedOff',
    fc.record(
      { wing: anyWing, region: fc.constantFrom('inner', 'outer') },
      { requiredKeys: ['wing'] },
    ),
  ),
  kindOf('suctionChanged', fc.record({ wing: anyWing, setting: fc.constant('+15 %') })),
  kindOf('throttleChanged', none),
  kindOf('conditionReached', none),
  kindOf('conditionLost', none),
  kindOf('moistureEntered', anyEncounter),
  kindOf('moistureExited', anyEncounter),
  kindOf('samplerOpened', anySample),
  kindOf('samplerClosed', anySample),
  kindOf(
    'turnStarted',
    fc.record({ lastedS: fc.constantFrom(-1, 0, 2, 1e300) }, { requiredKeys: [] }),
  ),
  kindOf('turnEnded', none),
  kindOf('laminarGained', anyFlow),
  kindOf('laminarLost', anyFlow),
  kindOf('probesRead', anyFlow),
  kindOf(
    'panelStateCalled',
    fc.record({
      panel: fc.constantFrom('L1', 'X9'),
      state: fc.constantFrom('laminar', 'turbulent'),
    }),
  ),
  kindOf(
    'coversReleased',
    fc.record({ wing: anyWing, clear: fc.subarray(['L1', 'R4']), hung: fc.subarray(['R4']) }),
  ),
  kindOf('gearMoved', fc.record({ to: fc.constantFrom('up', 'down') })),
  kindOf(
    'calibrationChecked',
    fc.record({ corrections: fc.array(anyCorrection), inDate: fc.boolean() }),
  ),
  kindOf('instrumentCalibrated', anyCertificate),
  kindOf(
    'preflightDone',
    fc.record({
      rampWeight: fc.constantFrom({ value: 42_000, unit: 'lb' }, { value: 1, unit: 'ft' }),
    }),
  ),
  kindOf('takeOffRolled', none),
  kindOf('fuelRead', anyReadings),
  kindOf('airDataRead', anyReadings),
  kindOf('markMade', none),
  kindOf('ownEventMarked', anyOwn),
  kindOf('balloonSeen', none),
);

/** Seconds after the start: few, so that entries of one instant meet. */
const anySecond = fc.integer({ min: 1, max: 40 });

const anyCircumstance = fc.record(
  {
    at: anySecond.map((second) => START_MS + second * 1000),
    glance: fc.constantFrom(START_MS + 5_000, START_MS + 9_000),
    unconfirmed: fc.constant('briefContact'),
  },
  { requiredKeys: [] },
);

const anyEventStep: fc.Arbitrary<Step> = fc
  .tuple(anyRecorder, anyEvent, fc.option(anyCircumstance, { freq: 2, nil: {} }), anySecond)
  .map(([rec, { kind, body }, circumstance, second]) => () => ({
    rec,
    said: { kind, afterMs: second * 1000, body: { ...body, ...circumstance } },
  }));

const anyClockStep: fc.Arbitrary<Step> = fc
  .tuple(anyRecorder, fc.constantFrom(-7_000, 3_000, 1e300), anySecond)
  .map(([rec, stepMs, second]) => () => ({
    rec,
    said: { kind: 'deviceNoted', afterMs: second * 1000, body: { what: 'clockStepped', stepMs } },
  }));

const anyHack: fc.Arbitrary<Step> = fc
  .tuple(anyRecorder, fc.integer({ min: -3, max: 3 }), anySecond)
  .map(([rec, offsetS, second]) => () => ({
    rec,
    said: {
      kind: 'timeHackTaken',
      afterMs: second * 1000,
      body: {
        hack: 1,
        masterClock: 'master',
        master: START_MS + (second + offsetS) * 1000,
        shown: [],
      },
    },
  }));

const anyChange = fc.constantFrom(
  { field: 'readings.FF1.value', old: null, new: 111 },
  { field: 'readings.FF1.value', old: null, new: 222 },
  { field: 'readings.FF1', old: null, new: { instrument: 'FF1', value: 111, unit: 'lb/h' } },
  { field: 'readings.FF1', old: null, new: null },
  { field: 'at', old: null, new: START_MS + 2_500 },
  { field: 'at', old: null, new: START_MS + 33_000 },
  { field: 'unconfirmed', old: null, new: null },
  { field: 'wings.L.turbulentProbes', old: null, new: ['L01'] },
  { field: 'target', old: null, new: '0'.repeat(64) },
  { field: 'encounter', old: null, new: 'M2' },
  { field: '__proto__.x', old: null, new: 1 },
  { field: 'stepMs', old: null, new: 1_000 },
);

/** About one of the newest entries, or now and then about one that is not there. */
const anyAboutStep: fc.Arbitrary<Step> = fc
  .tuple(
    anyRecorder,
    fc.constantFrom(
      'entryWithdrawn',
      'entryAmended',
      'entryAmended',
      'unconfirmedSettled',
      'observationsResolved',
    ),
    fc.integer({ min: 0, max: 6 }),
    fc.array(anyChange, { minLength: 1, maxLength: 2 }),
    fc.boolean(),
    anySecond,
  )
  .map(([rec, kind, back, changes, yes, second]) => (written) => {
    const target = written.at(-1 - back)?.id ?? '0'.repeat(64);
    const known = written.filter(
      (entry) => entry.kind === 'entryAmended' && entry.body.target === target,
    );
    const bodies: Readonly<Record<string, object>> = {
      entryWithdrawn: { target, reason: 'any' },
      unconfirmedSettled: { target, kept: yes },
      observationsResolved: {
        target,
        other: written.at(-2 - changes.length)?.id ?? target,
        verdict: yes ? 'otherStands' : 'bothStand',
        reason: 'any',
      },
      entryAmended: {
        target,
        replaces: yes ? known.map((entry) => entry.id) : [],
        changes,
        code: 'other',
        reason: 'any',
      },
    };
    return { rec, said: { kind, afterMs: second * 1000, body: bodies[kind] ?? {} } };
  });

const anyStep = fc.oneof(
  { arbitrary: anyEventStep, weight: 8 },
  { arbitrary: anyAboutStep, weight: 5 },
  { arbitrary: anyClockStep, weight: 1 },
  { arbitrary: anyHack, weight: 1 },
);

/** A whole flight's entries in order of writing, opened by the first recorder. */
export function anyLog(size: { minLength: number; maxLength: number }): fc.Arbitrary<Entry[]> {
  return fc.array(anyStep, size).map((steps) => {
    const written: Entry[] = [...chained([opening])];
    for (const step of steps) {
      const { rec, said } = step(written);
      const head = written.findLast((entry) => entry.rec === rec) ?? null;
      written.push(...chained([said], { rec, head }));
    }
    return written;
  });
}

/** The same entries in another order, in portions of any size. */
export function anyPortions(entries: readonly Entry[]): fc.Arbitrary<Entry[][]> {
  return fc
    .tuple(
      fc.shuffledSubarray([...entries], { minLength: entries.length }),
      fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 10 }),
    )
    .map(([shuffled, sizes]) => {
      const portions: Entry[][] = [];
      let from = 0;
      for (let turn = 0; from < shuffled.length; turn += 1) {
        const size = sizes[turn % sizes.length] ?? 1;
        portions.push(shuffled.slice(from, from + size));
        from += size;
      }
      return portions;
    });
}

/** Two logs drawn from one pool: they overlap, as two tablets' copies of a flight do. */
export const anyTwoLogs = anyLog({ minLength: 0, maxLength: 30 }).chain((pool) =>
  fc.tuple(fc.shuffledSubarray(pool), fc.shuffledSubarray(pool)),
);
