import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/record/entry.ts';
import { viewOf } from '../../src/record/flight.ts';
import type { StandingEntry } from '../../src/record/flightState.ts';
import { chained, REC_B, START_MS, type Said } from './writing.ts';

const fuel = (body: object = {}): Said => ({
  kind: 'fuelRead',
  body: { readings: [{ instrument: 'FF2', value: 910, unit: 'lb/h' }], ...body },
});
const amending = (
  target: Entry,
  changes: readonly object[],
  replaces: readonly Entry[] = [],
): Said => ({
  kind: 'entryAmended',
  body: {
    target: target.id,
    replaces: replaces.map(({ id }) => id),
    changes,
    code: 'misKeyed',
    reason: '',
  },
});
const setTo = (value: number) => [{ field: 'readings.FF2.value', old: 910, new: value }];
const withdrawing = (target: Entry): Said => ({
  kind: 'entryWithdrawn',
  body: { target: target.id, reason: 'wrong button' },
});

/** One entry after another by one recorder, each made from those before. */
function written(makers: readonly ((before: readonly Entry[]) => Said)[], rec?: string): Entry[] {
  const log: Entry[] = [];
  for (const make of makers) {
    const options = { head: log.at(-1) ?? null, ...(rec !== undefined && { rec }) };
    log.push(...chained([make(log)], options));
  }
  return log;
}

function entry(log: readonly Entry[], index: number): Entry {
  const found = log[index];
  if (found === undefined) {
    throw new RangeError(`no entry ${index}`);
  }
  return found;
}

function stands(log: readonly Entry[], index: number): StandingEntry {
  const found = viewOf(log).byId(entry(log, index).id);
  if (found === undefined) {
    throw new RangeError(`entry ${index} is not in view`);
  }
  return found;
}

const valueOf = ({ effective }: StandingEntry): unknown =>
  effective.kind === 'fuelRead' ? effective.body.readings?.[0] : effective.kind;

describe('an amended entry', () => {
  const amendedOnce = written([() => fuel(), (log) => amending(entry(log, 0), setTo(810))]);

  it('shows what was amended and keeps what was read', () => {
    const standing = stands(amendedOnce, 0);
    expect(valueOf(standing)).toEqual({ instrument: 'FF2', value: 810, unit: 'lb/h' });
    expect(standing.entry).toBe(amendedOnce[0]);
    expect(standing.amendedBy).toEqual([entry(amendedOnce, 1).id]);
    expect(standing.conflicts).toEqual([]);
  });

  it('is as it was read when the amendment is withdrawn, and amended again when that is withdrawn', () => {
    const undone = [
      ...amendedOnce,
      ...chained([withdrawing(entry(amendedOnce, 1))], { head: entry(amendedOnce, 1) }),
    ];
    expect(valueOf(stands(undone, 0))).toMatchObject({ value: 910 });
    expect(stands(undone, 1)).toMatchObject({
      standing: 'withdrawn',
      withdrawnBy: entry(undone, 2).id,
    });
    const redone = [
      ...undone,
      ...chained([withdrawing(entry(undone, 2))], { head: entry(undone, 2) }),
    ];
    expect(valueOf(stands(redone, 0))).toMatchObject({ value: 810 });
  });

  it('waits for what an amendment names: the target may come later', () => {
    const view = viewOf(amendedOnce.toReversed());
    expect(view.byId(entry(amendedOnce, 0).id)?.amendedBy).toHaveLength(1);
    const dangling = viewOf(amendedOnce.slice(1));
    expect(dangling.standing.map(({ standing }) => standing)).toEqual(['stands']);
  });

  it('moves to its amended time and counts as late', () => {
    const log = written([
      () => ({ kind: 'liftedOff', body: {} }),
      (before) => ({
        kind: 'moistureEntered',
        afterMs: 60_000,
        body: { encounter: 'M1', note: before[0]?.kind ?? '' },
      }),
      (before) => amending(entry(before, 1), [{ field: 'at', old: null, new: START_MS - 5_000 }]),
    ]);
    const view = viewOf(log);
    expect(view.standing.map(({ effective }) => effective.kind)).toEqual([
      'moistureEntered',
      'liftedOff',
      'entryAmended',
    ]);
    expect(stands(log, 1)).toMatchObject({ at: START_MS - 5_000, late: true });
    expect(stands(log, 0).late).toBe(false);
  });

  it('takes all changes of an amendment or none, and names those it could not take', () => {
    const log = written([
      () => fuel(),
      (before) =>
        amending(entry(before, 0), [
          { field: 'readings.FF2.value', old: 910, new: 810 },
          { field: 'doubtS', old: null, new: 'much' },
        ]),
    ]);
    expect(valueOf(stands(log, 0))).toMatchObject({ value: 910 });
    expect(stands(log, 0).unapplied).toEqual(['readings.FF2.value', 'doubtS']);
  });

  it('cannot be led to another target', () => {
    const log = written([
      () => fuel(),
      (before) => withdrawing(entry(before, 0)),
      (before) => amending(entry(before, 1), [{ field: 'target', old: null, new: '0'.repeat(64) }]),
    ]);
    expect(stands(log, 0).standing).toBe('withdrawn');
    expect(stands(log, 1).unapplied).toEqual(['target']);
  });

  it('of a newer kind is kept as it is, with the amendment named', () => {
    const log = written([
      () => ({ kind: 'balloonSeen', body: { colour: 'grey' } }),
      (before) => amending(entry(before, 0), [{ field: 'colour', old: 'grey', new: 'red' }]),
    ]);
    expect(stands(log, 0)).toMatchObject({ unapplied: ['colour'], effective: entry(log, 0) });
  });
});

describe('two amendments of one entry', () => {
  const own = written([() => fuel(), (log) => amending(entry(log, 0), setTo(810))]);
  const second = (changes: readonly object[], replaces: readonly Entry[] = []): readonly Entry[] =>
    chained([{ ...amending(entry(own, 0), changes, replaces), afterMs: 90_000 }], { rec: REC_B });

  it('that do not know each other disagree on the field; the later one is shown', () => {
    const log = [...own, ...second(setTo(820))];
    expect(stands(log, 0).conflicts).toEqual(['readings.FF2.value']);
    expect(valueOf(stands(log, 0))).toMatchObject({ value: 820 });
    expect(stands(log, 0).amendedBy).toHaveLength(2);
  });

  it('that say the same do not disagree', () => {
    expect(stands([...own, ...second(setTo(810))], 0).conflicts).toEqual([]);
  });

  it('on different fields do not disagree', () => {
    const log = [...own, ...second([{ field: 'note', old: null, new: 'frame 246' }])];
    expect(stands(log, 0).conflicts).toEqual([]);
    expect(stands(log, 0).effective).toMatchObject({ body: { note: 'frame 246' } });
  });

  it('of which the second knew the first do not disagree', () => {
    expect(stands([...own, ...second(setTo(820), [entry(own, 1)])], 0).conflicts).toEqual([]);
  });

  it('disagree when one sets a field and the other its whole row otherwise', () => {
    const row = (value: number) => [
      { field: 'readings.FF2', old: null, new: { instrument: 'FF2', value, unit: 'lb/h' } },
    ];
    expect(stands([...own, ...second(row(820))], 0).conflicts).toEqual(['readings.FF2.value']);
    expect(stands([...own, ...second(row(810))], 0).conflicts).toEqual([]);
  });

  it('no longer disagree once a third that knew both sets the field', () => {
    const both = [...own, ...second(setTo(820))];
    const third = chained(
      [
        {
          ...amending(entry(own, 0), setTo(815), [entry(both, 1), entry(both, 2)]),
          afterMs: 120_000,
        },
      ],
      { head: entry(own, 1) },
    );
    const log = [...both, ...third];
    expect(stands(log, 0).conflicts).toEqual([]);
    expect(valueOf(stands(log, 0))).toMatchObject({ value: 815 });
  });

  it('still disagree when a third that knew both left the field alone', () => {
    const both = [...own, ...second(setTo(820))];
    const third = chained(
      [
        {
          ...amending(
            entry(own, 0),
            [{ field: 'note', old: null, new: 'asked' }],
            [entry(both, 1), entry(both, 2)],
          ),
          afterMs: 120_000,
        },
      ],
      { head: entry(own, 1) },
    );
    expect(stands([...both, ...third], 0).conflicts).toEqual(['readings.FF2.value']);
  });

  it('no longer disagree when one of them is withdrawn', () => {
    const both = [...own, ...second(setTo(820))];
    const log = [...both, ...chained([withdrawing(entry(both, 2))], { head: entry(own, 1) })];
    expect(stands(log, 0).conflicts).toEqual([]);
    expect(valueOf(stands(log, 0))).toMatchObject({ value: 810 });
  });

  it('come after what they knew even when a clock went back', () => {
    // The one that knew the other was written under a clock an hour behind, so its order key is lower.
    const late = chained(
      [{ ...amending(entry(own, 0), setTo(820), [entry(own, 1)]), afterMs: -3_600_000 }],
      { rec: REC_B },
    );
    expect(valueOf(stands([...own, ...late], 0))).toMatchObject({ value: 820 });
  });

  it('mark the glance whose readings they contradict', () => {
    const { state } = viewOf([...own, ...second(setTo(820))]);
    expect(state.glances.chunks.flat().map((glance) => glance.amendmentsDisagree)).toEqual([true]);
    const agreed = viewOf(own).state;
    expect(agreed.glances.chunks.flat().map((glance) => glance.amendmentsDisagree)).toEqual([
      false,
    ]);
  });
});

describe('a touch that may not have been meant', () => {
  const brief = { kind: 'moistureEntered', body: { unconfirmed: 'briefContact' } };
  const settling =
    (kept: boolean) =>
    (log: readonly Entry[]): Said => ({
      kind: 'unconfirmedSettled',
      body: { target: entry(log, 0).id, kept },
    });

  it.each([
    ['waits', [], 'unconfirmed', 0],
    ['stands when it is kept', [settling(true)], 'stands', 1],
    ['is dropped', [settling(false)], 'dropped', 0],
    ['follows the latest answer', [settling(false), settling(true)], 'stands', 1],
  ] as const)('%s', (_name, answers, standing, intervals) => {
    const log = written([() => brief, ...answers]);
    expect(stands(log, 0).standing).toBe(standing);
    expect(viewOf(log).state.intervals.length).toBe(intervals);
  });

  it('has no say itself: an unmeant withdrawal withdraws nothing until it is kept', () => {
    const log = written([
      () => fuel(),
      (before) => ({
        kind: 'entryWithdrawn',
        body: { target: entry(before, 0).id, reason: '', unconfirmed: 'slippedOff' },
      }),
    ]);
    expect(stands(log, 0).standing).toBe('stands');
    const kept = chained(
      [{ kind: 'unconfirmedSettled', body: { target: entry(log, 1).id, kept: true } }],
      { head: entry(log, 1) },
    );
    expect(stands([...log, ...kept], 0).standing).toBe('withdrawn');
  });
});

describe('a clock that stepped', () => {
  const mark: Said = { kind: 'markMade', body: {} };

  it('is taken back from its note on, in this recorder only, and raw times stay', () => {
    const log = chained([
      { ...mark, afterMs: 10_000 },
      {
        kind: 'deviceNoted',
        afterMs: 3_620_000,
        body: { what: 'clockStepped', stepMs: 3_600_000 },
      },
      { ...mark, afterMs: 3_630_000 },
    ]);
    const other = chained([{ ...mark, afterMs: 25_000 }], { rec: REC_B });
    const view = viewOf([...log, ...other]);
    expect(view.standing.map(({ at, entry: { rec } }) => [at - START_MS, rec === REC_B])).toEqual([
      [10_000, false],
      [20_000, false],
      [25_000, true],
      [30_000, false],
    ]);
    expect(stands(log, 2).entry.wall - START_MS).toBe(3_630_000);
  });

  it('adds up over several steps and forgets one that is withdrawn', () => {
    const step = (afterMs: number, stepMs: number): Said => ({
      kind: 'deviceNoted',
      afterMs,
      body: { what: 'clockStepped', stepMs },
    });
    const log = chained([step(5_000, 4_000), step(2_000, -3_000), { ...mark, afterMs: 9_000 }]);
    expect(stands(log, 2).at - START_MS).toBe(8_000);
    const undone = [...log, ...chained([withdrawing(entry(log, 0))], { head: entry(log, 2) })];
    expect(stands(undone, 2).at - START_MS).toBe(12_000);
  });

  it('is not guessed where the tablet may have slept', () => {
    const log = chained([
      { kind: 'deviceNoted', afterMs: 5_000, body: { what: 'sleptOrStepped', stepMs: 4_000 } },
      { ...mark, afterMs: 9_000 },
    ]);
    expect(stands(log, 1).at - START_MS).toBe(9_000);
  });

  it('moves no time that was stated', () => {
    const log = chained([
      { kind: 'deviceNoted', afterMs: 5_000, body: { what: 'clockStepped', stepMs: 4_000 } },
      { kind: 'markMade', afterMs: 9_000, body: { at: START_MS + 3_000 } },
    ]);
    expect(stands(log, 1).at - START_MS).toBe(3_000);
  });
});
