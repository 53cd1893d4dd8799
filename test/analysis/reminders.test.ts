import { describe, expect, it } from 'vitest';
import { QUIET_REMINDER } from '../../src/analysis/reminderAnswers.ts';
import { isQuietPhase, remindersDue, type Reminder } from '../../src/analysis/reminders.ts';
import { epochMs } from '../../src/record/brand.ts';
import type { Draft } from '../../src/record/entry.ts';
import { flightA, sealed, sheetA, touchAt, viewOfEntries } from './flights.ts';

const START = Date.parse('2032-06-02T22:00:00Z');
const minute = 60;

/** A draft so many seconds after the start. */
type Timed<D> = D extends Draft ? Omit<D, 'stamp'> & { readonly s: number } : never;

function flown(...timed: readonly Timed<Draft>[]): readonly Draft[] {
  const opening: Draft = {
    kind: 'flightOpened',
    body: {
      nature: 'practice',
      title: 'reminders',
      date: '2032-06-02',
      device: 'tablet',
      sheet: sheetA,
    },
    stamp: touchAt(START - 3_600_000),
  };
  return [opening, ...timed.map(stamped)];
}

function stamped({ s, ...own }: Timed<Draft>): Draft {
  const stamp = touchAt(START + s * 1000);
  // One case a kind would be needed to keep the pair; sealing checks it.
  return { ...own, stamp } as Draft;
}

function due(drafts: readonly Draft[], s: number): readonly Reminder[] {
  return remindersDue(viewOfEntries(sealed(drafts)), epochMs(START + s * 1000));
}

function names(drafts: readonly Draft[], s: number): readonly string[] {
  return due(drafts, s).map(({ kind }) => kind);
}

const airborne: readonly Timed<Draft>[] = [
  { kind: 'preflightDone', body: { coversFitted: 12, coversOf: 12 }, s: -1800 },
  { kind: 'takeOffRolled', body: {}, s: 0 },
  { kind: 'liftedOff', body: {}, s: 30 },
  { kind: 'gearMoved', body: { to: 'up' }, s: 40 },
];
const clear: Timed<Draft> = {
  kind: 'coversReleased',
  body: { wing: 'both', clear: sheetA.panels.map(({ id }) => id) },
  s: 90,
};

describe('cover release', () => {
  it('is asked 60 s after gear up, not before', () => {
    expect(names(flown(...airborne), 40 + 59)).toEqual([]);
    expect(names(flown(...airborne), 40 + 60)).toEqual(['coverRelease']);
  });

  it('is not asked once recorded', () => {
    expect(names(flown(...airborne, clear), 40 + 90)).toEqual([]);
  });

  it('is asked again while one wing is still covered', () => {
    const left: Timed<Draft> = {
      kind: 'coversReleased',
      body: { wing: 'L', clear: ['L1', 'L2', 'L3', 'L4', 'L5', 'L6'] },
      s: 85,
    };
    expect(names(flown(...airborne, left), 40 + 60)).toEqual(['coverRelease']);
  });

  it('comes back every 5 min, three times in all, then is silent', () => {
    const shown = [100, 100 + 5 * minute, 100 + 10 * minute, 100 + 15 * minute, 100 + 20 * minute];
    expect(shown.map((s) => names(flown(...airborne), s).length)).toEqual([1, 1, 1, 0, 0]);
    // Between two showings the strip is free.
    expect(names(flown(...airborne), 100 + 4 * minute)).toEqual([]);
  });

  it('is silent for the flight once declined', () => {
    const declined: Timed<Draft> = {
      kind: 'reminderAnswered',
      body: { reminder: 'coverRelease', answer: 'notThisFlight' },
      s: 110,
    };
    expect(names(flown(...airborne, declined), 100 + 5 * minute)).toEqual([]);
  });
});

describe('open intervals', () => {
  const sampler: Timed<Draft> = {
    kind: 'samplerOpened',
    body: { sampler: 'slide', sample: 'S-02' },
    s: 1200,
  };

  it('a sampler open beyond its planned 10 min', () => {
    const drafts = flown(...airborne, clear, sampler);
    expect(names(drafts, 1200 + 10 * minute - 1)).toEqual([]);
    const [reminder] = due(drafts, 1200 + 10 * minute);
    expect(reminder).toMatchObject({
      kind: 'samplerOpen',
      label: 'S-02',
      since: START + 1_200_000,
      answers: ['close', 'stillOpen'],
    });
  });

  it('a sampler still open in the descent, at once', () => {
    const descent: Timed<Draft> = { kind: 'descentBegun', body: {}, s: 1300 };
    expect(names(flown(...airborne, clear, sampler, descent), 1300 + 15)).toEqual(['samplerOpen']);
  });

  it('is not asked again for 10 min once answered, and goes when it is closed', () => {
    const drafts = flown(...airborne, clear, sampler);
    const asked = due(drafts, 1800)[0];
    const answered = flown(...airborne, clear, sampler, {
      kind: 'reminderAnswered',
      body: { reminder: asked?.id ?? '', answer: 'stillOpen' },
      s: 1810,
    });
    expect(asked).toBeDefined();
    // Ids hold the opening entry, which is the same entry in both records.
    expect(names(answered, 1900)).toEqual([]);
    expect(names(answered, 1810 + 10 * minute)).toEqual(['samplerOpen']);
    const closed = flown(...airborne, clear, sampler, {
      kind: 'samplerClosed',
      body: { sample: 'S-02' },
      s: 1790,
    });
    expect(names(closed, 1900)).toEqual([]);
  });

  it('cloud open for three times its usual length', () => {
    const cloud = flown(
      ...airborne,
      clear,
      { kind: 'moistureEntered', body: { encounter: 'M1' }, s: 1000 },
      { kind: 'moistureExited', body: { encounter: 'M1' }, s: 1100 },
      { kind: 'moistureEntered', body: { encounter: 'M2' }, s: 2000 },
    );
    // The only closed one lasted 100 s.
    expect(names(cloud, 2000 + 299)).toEqual([]);
    expect(names(cloud, 2000 + 300)).toEqual(['intervalOpen']);
  });

  it('the sampler comes before the cloud, and one line is first', () => {
    const both = flown(
      ...airborne,
      clear,
      { kind: 'moistureEntered', body: { encounter: 'M1' }, s: 1200 },
      { ...sampler, s: 1500 },
    );
    // Cloud 3 x 300 s after 1200, sampler 600 s after 1500: both at 2100.
    expect(names(both, 2100)).toEqual(['samplerOpen', 'intervalOpen']);
  });

  it('recorders and suction run the whole flight unasked', () => {
    const running = flown(
      ...airborne,
      clear,
      { kind: 'recorderSwitched', body: { on: true }, s: 100 },
      { kind: 'photoPanelSwitched', body: { on: true }, s: 100 },
      { kind: 'suctionTurnedOn', body: { wing: 'both' }, s: 1500 },
    );
    expect(names(running, 9000)).toEqual([]);
  });
});

describe('the next reading', () => {
  const point: Timed<Draft> = {
    kind: 'testPointStarted',
    body: { point: 'TP01', run: 1 },
    s: 1500,
  };

  it('is asked for 2 min past its time while a point is open', () => {
    const drafts = flown(...airborne, clear, point);
    expect(names(drafts, 1500 + 300 + 119)).toEqual([]);
    expect(names(drafts, 1500 + 300 + 120)).toEqual(['readingDue']);
  });

  it('is cleared by any reading and then counted from that one', () => {
    const read: Timed<Draft> = {
      kind: 'fuelRead',
      body: { readings: [{ instrument: 'FF1', value: 1200, unit: 'lb/h' }] },
      s: 1900,
    };
    const drafts = flown(...airborne, clear, point, read);
    expect(names(drafts, 1930)).toEqual([]);
    expect(names(drafts, 1900 + 420)).toEqual(['readingDue']);
  });

  it('is not asked for outside a point', () => {
    expect(names(flown(...airborne, clear), 6000)).toEqual([]);
  });
});

describe('quiet', () => {
  it('from brakes release to a minute after gear up, and from gear down to the landing', () => {
    const at = (s: number): ReturnType<typeof epochMs> => epochMs(START + s * 1000);
    const early = viewOfEntries(sealed(flown(...airborne.slice(0, 2)))).state;
    expect(isQuietPhase(early, at(10))).toBe(true);
    const up = viewOfEntries(sealed(flown(...airborne))).state;
    expect(isQuietPhase(up, at(40 + 59))).toBe(true);
    expect(isQuietPhase(up, at(40 + 60))).toBe(false);
    const down: Timed<Draft> = { kind: 'gearMoved', body: { to: 'down' }, s: 9000 };
    const approach = viewOfEntries(sealed(flown(...airborne, clear, down))).state;
    expect(isQuietPhase(approach, at(9100))).toBe(true);
    const landed: Timed<Draft> = { kind: 'touchedDown', body: {}, s: 9300 };
    const after = viewOfEntries(sealed(flown(...airborne, clear, down, landed))).state;
    expect(isQuietPhase(after, at(9310))).toBe(false);
  });

  it('no new line within 10 s of a touch; one that is up stays', () => {
    const marked = (s: number): readonly Draft[] =>
      flown(...airborne, { kind: 'markMade', body: {}, s });
    expect(names(marked(95), 101)).toEqual([]);
    expect(names(marked(95), 105)).toEqual(['coverRelease']);
    expect(names(marked(110), 112)).toEqual(['coverRelease']);
  });

  it('for a quarter of an hour on request', () => {
    const quiet: Timed<Draft> = {
      kind: 'reminderAnswered',
      body: { reminder: QUIET_REMINDER, answer: 'quiet' },
      s: 95,
    };
    expect(names(flown(...airborne, quiet), 110)).toEqual([]);
    expect(names(flown(...airborne, quiet), 95 + 15 * minute + 20)).toEqual([]);
    expect(names(flown(...airborne, quiet), 100 + 10 * minute)).toEqual([]);
  });
});

describe('flight A', () => {
  it('stays within six reminders an hour from lift-off to touchdown', () => {
    const shown = new Set<string>();
    let view = viewOfEntries([]);
    let next = 0;
    const from = Date.parse('2032-06-02T22:00:00Z');
    const to = Date.parse('2032-06-03T01:10:00Z');
    for (let ms = from; ms < to; ms += 10_000) {
      const before = next;
      while ((flightA.entries[next]?.wall ?? Infinity) <= ms) next += 1;
      if (next !== before) view = viewOfEntries(flightA.entries.slice(0, next));
      const [first] = remindersDue(view, epochMs(ms));
      if (first !== undefined) shown.add(`${first.id} ${first.shownSince}`);
    }
    expect(shown.size).toBeLessThanOrEqual(6 * 3.2);
    expect([...shown].filter((id) => id.startsWith('coverRelease'))).toEqual([]);
  });
});
