import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../src/record/entry.ts';
import { onFly, type OnFly } from './onFly.tsx';

const LEFT = { author: 'E2', role: 'wing engineer, left' } as const;
const RIGHT = { author: 'E3', role: 'wing engineer, right' } as const;

const last = (fly: OnFly): Entry | undefined => fly.journal.entries().at(-1);

describe('the tablet of a wing engineer', () => {
  it('shows the tiles of the role in every phase of flight', async () => {
    const fly = await onFly({}, undefined, LEFT);
    for (const phase of ['ground', 'climb', 'cruise', 'descent']) {
      await fly.tap(`phase-${phase}`);
      for (const tile of ['gain', 'loss', 'count', 'probes', 'suction', 'rake', 'sighted']) {
        expect(fly.has(`tile-${tile}`)).toBe(true);
      }
      for (const tile of ['note', 'call', 'mark', 'more']) {
        expect(fly.has(`tile-${tile}`)).toBe(true);
      }
      expect(fly.has('tile-fuel')).toBe(false);
    }
  });

  it('says of the own wing what one touch says, under author and role', async () => {
    const fly = await onFly({}, undefined, RIGHT);
    await fly.tap('tile-loss');
    expect(last(fly)).toMatchObject({
      ...RIGHT,
      kind: 'laminarLost',
      body: { wings: { R: { of: 24 } } },
    });
    expect(fly.has('probe-R01')).toBe(true);
  });

  it('turns suction of the own wing on and changes its setting by region in three touches', async () => {
    const fly = await onFly({}, undefined, RIGHT);
    await fly.tap('tile-suction');
    await fly.tap('chip-setting-0');
    await fly.tap('chip-region-1', 2_000);
    await fly.tap('tile-suction', 3_000);
    expect(fly.view().state.suction).toMatchObject({ L: { on: null }, R: { region: 'inboard' } });
    expect(last(fly)).toMatchObject({ kind: 'suctionChanged', body: { wing: 'R' } });
  });

  it('becomes the tablet of another role by the hand that holds it, and back', async () => {
    const fly = await onFly();
    await fly.tap('tile-more');
    await fly.tap('tile-desk');
    await fly.tap('desk-scribe');
    while (!fly.has('role-1')) await fly.tap('panel-more');
    await fly.tap('role-1');
    expect(last(fly)).toMatchObject({
      kind: 'scribeChanged',
      author: 'S1',
      role: 'wing engineer, left',
      body: { from: 'S1', to: 'S1', role: 'wing engineer, left' },
    });
    expect(fly.has('tile-count')).toBe(true);
  });
});

describe('probes by count', () => {
  it('take two touches, timed by the first', async () => {
    const fly = await onFly({}, undefined, LEFT);
    await fly.tap('tile-count');
    const at = fly.lastMs();
    await fly.tap('count-22', 1_500);
    expect(last(fly)).toMatchObject({
      kind: 'probesRead',
      wall: at,
      body: { wings: { L: { of: 24, laminarCount: 22 } } },
    });
    expect(fly.has('count-22')).toBe(false);
  });

  it('ask the scribe for the other wing, and both stand in one entry', async () => {
    const fly = await onFly();
    await fly.tap('tile-more');
    while (!fly.has('tile-count')) await fly.tap('more-next');
    await fly.tap('tile-count');
    await fly.tap('count-22');
    await fly.tap('count-0');
    const read = fly.view().standing.filter(({ entry }) => entry.kind === 'probesRead');
    expect(
      read.map(({ effective }) => effective.kind !== 'unrecognised' && effective.body),
    ).toEqual([{ wings: { L: { of: 24, laminarCount: 22 }, R: { of: 24, laminarCount: 0 } } }]);
    expect(fly.has('count-0')).toBe(false);
  });

  it('belong to the gain that opened the pad', async () => {
    const fly = await onFly({}, undefined, LEFT);
    await fly.tap('tile-gain');
    await fly.tap('probes-count');
    await fly.tap('count-24');
    const gained = fly.view().standing.find(({ entry }) => entry.kind === 'laminarGained');
    expect(gained?.effective).toMatchObject({
      body: { wings: { L: { of: 24, laminarCount: 24 } } },
    });
    expect(fly.view().state.panels['L1']?.state).toBe('laminar');
  });
});

describe('probes that nobody looked at', () => {
  it('stay not assessed when some others are named', async () => {
    const fly = await onFly({}, undefined, LEFT);
    await fly.tap('tile-probes');
    await fly.tap('brush-laminar');
    await fly.tap('probe-L01');
    await fly.tap('probes-enter');
    const { probes } = fly.view().state;
    expect(probes['L01']?.state).toBe('laminar');
    expect(probes['L02']?.state ?? 'notAssessed').toBe('notAssessed');
  });
});
