import { afterEach, describe, expect, it, vi } from 'vitest';
import { items } from '../../../src/record/trail.ts';
import { onFly, type OnFly } from './onFly.tsx';

afterEach(() => {
  vi.useRealTimers();
});

const last = (fly: OnFly) => fly.journal.entries().at(-1);
const kinds = (fly: OnFly): readonly string[] => fly.journal.entries().map((entry) => entry.kind);

async function keyed(fly: OnFly, digits: string): Promise<void> {
  for (const digit of digits) {
    await fly.tap(`key-${digit}`, 300);
  }
}

describe('a tile', () => {
  it('writes its event with the time of contact, at once', async () => {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-cloud', 1_000, 700);
    expect(last(fly)).toMatchObject({
      kind: 'moistureEntered',
      wall: fly.lastMs(),
      body: { encounter: 'M1' },
    });
  });

  it('closes the interval that it opened, but not within two seconds', async () => {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-cloud');
    await fly.tap('tile-cloud', 1_500);
    expect(kinds(fly)).not.toContain('moistureExited');
    await fly.tap('tile-cloud', 2_500);
    expect(last(fly)).toMatchObject({ kind: 'moistureExited', body: { encounter: 'M1' } });
  });

  it('keeps a very short touch apart until somebody keeps or drops it', async () => {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-cloud', 1_000, 20);
    expect(last(fly)).toMatchObject({
      kind: 'moistureEntered',
      body: { unconfirmed: 'briefContact' },
    });
    expect(fly.view().state.intervals.length).toBe(0);
    await fly.tap('keep');
    expect(fly.view().state.intervals.length).toBe(1);
  });

  it('starts the card that comes next, with its run number', async () => {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-point');
    expect(last(fly)).toMatchObject({ kind: 'testPointStarted', body: { point: 'TP01', run: 1 } });
  });

  it('turns suction on for both wings, then changes it', async () => {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-suction');
    await fly.tap('tile-suction', 3_000);
    expect(kinds(fly).slice(-2)).toEqual(['suctionTurnedOn', 'suctionChanged']);
  });
});

describe('the detail panel', () => {
  it('adds a field to the event just written, as an amendment', async () => {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-suction');
    const suction = last(fly);
    await fly.tap('chip-wing-1');
    expect(last(fly)).toMatchObject({
      kind: 'entryAmended',
      body: {
        target: suction?.id,
        code: 'detail',
        changes: [{ field: 'wing', old: 'both', new: 'L' }],
      },
    });
    expect(fly.view().state.suction.R.on).toBeNull();
  });

  it('takes a height by digits', async () => {
    const fly = await onFly();
    await fly.tap('phase-climb');
    await fly.tap('tile-level');
    await fly.tap('field-height');
    await keyed(fly, '37000');
    await fly.tap('key-enter');
    expect(last(fly)).toMatchObject({
      body: { changes: [{ field: 'altitude', old: null, new: { value: 37_000, unit: 'ft' } }] },
    });
  });

  it('writes the other kind for the same touch when the tile was the wrong one', async () => {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-point');
    await fly.tap('tile-point', 5_000);
    const endedAt = fly.lastMs();
    await fly.tap('instead-point-interrupt');
    expect(kinds(fly).slice(-2)).toEqual(['entryWithdrawn', 'testPointInterrupted']);
    expect(last(fly)?.wall).toBe(endedAt);
    expect([...items(fly.view().state.runs)].map((run) => run.state)).toEqual(['interrupted']);
  });

  it('names the panels that stayed covered', async () => {
    const fly = await onFly();
    await fly.tap('phase-climb');
    await fly.tap('tile-coversRight');
    await fly.tap('brush-hung');
    await fly.tap('cover-R4');
    await fly.tap('all-clear');
    await fly.tap('covers-enter');
    expect(fly.view().state.covers).toMatchObject({ R3: 'clear', R4: 'hung', R5: 'clear' });
  });

  it('names the turbulent probes of both wings', async () => {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-gain');
    await fly.tap('brush-laminar');
    await fly.tap('all-brush', 1_000, 700);
    await fly.tap('all-brush', 1_000, 850);
    await fly.tap('brush-turbulent');
    await fly.tap('probe-L18');
    await fly.tap('wing-other');
    await fly.tap('all-brush', 1_000, 850);
    await fly.tap('probes-enter');
    expect(last(fly)).toMatchObject({
      body: {
        changes: [
          {
            field: 'wings',
            new: {
              L: { of: 24, laminarCount: 23, turbulentProbes: ['L18'] },
              R: { of: 24, laminarCount: 0, laminarProbes: [] },
            },
          },
        ],
      },
    });
  });
});

describe('undo and back-date', () => {
  it('strikes out the newest entry that stands, twenty deep', async () => {
    const fly = await onFly();
    for (let count = 0; count < 20; count += 1) {
      await fly.tap('tile-mark');
    }
    for (let count = 0; count < 20; count += 1) {
      await fly.tap('undo');
    }
    expect(
      fly
        .view()
        .standing.filter((each) => each.entry.kind === 'markMade')
        .map((each) => each.standing),
    ).toEqual(Array.from({ length: 20 }, () => 'withdrawn'));
  });

  it('adds up the back-date keys and keeps the touch time', async () => {
    const fly = await onFly();
    await fly.tap('tile-mark');
    const touchedAt = fly.lastMs();
    const mark = last(fly);
    await fly.tap('back-30');
    await fly.tap('back-10');
    const standing = fly.view().standing.find((each) => each.entry.id === mark?.id);
    expect(standing?.at).toBe(touchedAt - 40_000);
    expect(standing?.entry.wall).toBe(touchedAt);
    expect(standing?.conflicts).toEqual([]);
  });
});

describe('the fuel pad', () => {
  async function onPad(): Promise<OnFly> {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-fuel');
    return fly;
  }

  it('saves each gauge at once, all of one glance', async () => {
    const fly = await onPad();
    await keyed(fly, '1220');
    const firstDigitAt = fly.lastMs() - 3 * 300;
    await fly.tap('key-enter');
    await keyed(fly, '1150');
    await fly.tap('key-enter');
    const [glance] = [...items(fly.view().state.glances)];
    expect(glance?.at).toBe(firstDigitAt);
    expect(glance?.readings).toMatchObject({
      FF1: { value: 1220, unit: 'lb/h' },
      FF2: { value: 1150 },
    });
  });

  it('goes on to Mach and height in the same glance, and skips what is not read', async () => {
    const fly = await onPad();
    await keyed(fly, '1220');
    await fly.tap('key-enter');
    for (let skipped = 0; skipped < 5; skipped += 1) {
      await fly.tap('key-enter');
    }
    await keyed(fly, '0721');
    await fly.tap('key-enter');
    expect(last(fly)).toMatchObject({
      kind: 'airDataRead',
      body: { readings: [{ instrument: 'MACH', value: 0.721 }] },
    });
    expect(fly.view().state.glances.length).toBe(1);
  });

  it('saves a short value, marked, and asks without stopping the next key', async () => {
    const fly = await onPad();
    await keyed(fly, '122');
    await fly.tap('key-enter');
    expect(last(fly)).toMatchObject({ body: { readings: [{ value: 122, queried: 'short' }] } });
    expect(fly.has('query-keep')).toBe(true);
    await fly.tap('key-1', 300);
    await fly.tap('query-keep');
    expect(last(fly)).toMatchObject({
      kind: 'entryAmended',
      body: { code: 'kept', changes: [{ field: 'readings.FF1.queried', new: null }] },
    });
  });

  it('closes by Erase on empty boxes', async () => {
    const fly = await onPad();
    await keyed(fly, '1');
    await fly.tap('key-erase', 300);
    await fly.tap('key-erase', 300);
    expect(fly.has('tile-fuel')).toBe(true);
  });

  it('goes home after 30 s without a touch and keeps what was half keyed', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    const fly = await onPad();
    await keyed(fly, '12');
    fly.wait(29_000);
    expect(fly.has('key-1')).toBe(true);
    fly.wait(1_500);
    expect(fly.has('tile-fuel')).toBe(true);
    await fly.tap('tile-fuel');
    await keyed(fly, '20');
    await fly.tap('key-enter');
    expect(last(fly)).toMatchObject({ body: { readings: [{ value: 1220 }] } });
  });
});

describe('the log', () => {
  it('puts a wrong digit right, with its reason', async () => {
    const fly = await onFly();
    await fly.tap('phase-cruise');
    await fly.tap('tile-fuel');
    await keyed(fly, '0910');
    await fly.tap('key-enter');
    await fly.tap('key-erase');
    await fly.tap('tile-more');
    await fly.tap('tile-log');
    await fly.tap('log-0');
    await fly.tap('amend');
    await fly.tap('pad-close');
    await fly.tap('field-reading-FF1');
    await keyed(fly, '0810');
    await fly.tap('key-enter');
    const amendment = last(fly);
    expect(amendment).toMatchObject({ kind: 'entryAmended', body: { code: 'misKeyed' } });
    await fly.tap('chip-reason-0');
    const glance = [...items(fly.view().state.glances)][0];
    expect(glance?.readings['FF1']).toMatchObject({ value: 810 });
    expect(last(fly)).toMatchObject({
      body: { target: amendment?.id, changes: [{ field: 'reason', new: 'mis-keyed digit' }] },
    });
  });
});
