import { act, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { epochMs } from '../../../src/record/brand.ts';
import type { Draft } from '../../../src/record/entry.ts';
import { riskOf } from '../../../src/ui/fly/useRisk.ts';
import { onFly, type OnFly } from './onFly.tsx';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
});
afterEach(() => {
  vi.useRealTimers();
});

type Said = Pick<Draft, 'kind' | 'body'>;

/** Said as of now, without a touch on the screen. */
async function said(fly: OnFly, ...all: readonly Said[]): Promise<void> {
  for (const each of all) {
    const wall = epochMs(fly.lastMs());
    await act(async () => {
      // One case a kind would be needed to keep the pair; the journal checks it.
      await fly.journal.append({ ...each, stamp: { wall, mono: wall, boot: 'b' } } as Draft);
    });
  }
}

const shown = (fly: OnFly) =>
  fly.journal
    .entries()
    .flatMap((entry) => (entry.kind === 'reminderShown' ? [entry.body.reminder] : []));

async function later(fly: OnFly, seconds: number): Promise<void> {
  fly.wait(seconds * 1000);
  await act(async () => {
    await Promise.resolve();
  });
}

async function gearUp(): Promise<OnFly> {
  const fly = await onFly();
  await said(
    fly,
    {
      kind: 'timeHackTaken',
      body: { hack: 1, masterClock: 'master', master: epochMs(fly.lastMs()), shown: [] },
    },
    { kind: 'liftedOff', body: {} },
    { kind: 'gearMoved', body: { to: 'up' } },
  );
  return fly;
}

describe('the reminder strip', () => {
  it('asks for the covers a minute after gear up and puts that into the record, once', async () => {
    const fly = await gearUp();
    await later(fly, 50);
    expect(shown(fly)).toEqual([]);
    await later(fly, 20);
    expect(screen.getByText('Covers released?')).toBeTruthy();
    await later(fly, 20);
    expect(shown(fly)).toEqual(['coverRelease']);
  });

  it('keeps the answer, and writes the release of both wings with one touch', async () => {
    const fly = await gearUp();
    await later(fly, 70);
    await fly.tap('remind-record');
    const kinds = fly.journal.entries().slice(-2);
    expect(kinds).toMatchObject([
      { kind: 'reminderAnswered', body: { reminder: 'coverRelease', answer: 'record' } },
      { kind: 'coversReleased', body: { wing: 'both' } },
    ]);
    expect(fly.has('remind-record')).toBe(false);
  });

  it('asks about the other wing alone once one is clear', async () => {
    const fly = await gearUp();
    await said(fly, { kind: 'preflightDone', body: { coversFitted: 12, coversOf: 12 } });
    const left = fly.view().state.sheet?.panels.filter(({ wing }) => wing === 'L') ?? [];
    await said(fly, {
      kind: 'coversReleased',
      body: { wing: 'L', clear: left.map(({ id }) => id) },
    });
    await later(fly, 70);
    await fly.tap('remind-record');
    expect(fly.journal.entries().at(-1)).toMatchObject({
      kind: 'coversReleased',
      body: { wing: 'R' },
    });
  });

  it('says nothing new within 10 s of a touch, also of one that writes nothing', async () => {
    const fly = await gearUp();
    await later(fly, 55);
    await fly.tap('tile-more');
    await later(fly, 6);
    expect(shown(fly)).toEqual([]);
    await later(fly, 6);
    expect(shown(fly)).toEqual(['coverRelease']);
  });

  it('is silent for a quarter of an hour when asked to be', async () => {
    const fly = await gearUp();
    await fly.tap('tile-more');
    await fly.tap('tile-desk');
    await fly.tap('desk-quiet');
    await later(fly, 14 * 60);
    expect(shown(fly)).toEqual([]);
    await later(fly, 90);
    expect(shown(fly)).toEqual(['coverRelease']);
  });

  it('stands in the way of nothing: Undo passes over what it wrote', async () => {
    const fly = await gearUp();
    await fly.tap('tile-mark');
    await later(fly, 70);
    expect(shown(fly)).toHaveLength(1);
    await fly.tap('undo');
    expect(fly.journal.entries().at(-1)).toMatchObject({ kind: 'entryWithdrawn' });
    expect(fly.view().standing.find(({ entry }) => entry.kind === 'markMade')?.standing).toBe(
      'withdrawn',
    );
  });
});

describe('data at risk', () => {
  it('is a battery below a fifth that is not on the charger', async () => {
    const { state } = (await gearUp()).view();
    const recorder = state.hacks[0]?.rec ?? null;
    expect(riskOf(state, recorder, { level: 0.19, charging: false })?.kind).toBe('battery');
    expect(riskOf(state, recorder, { level: 0.2, charging: false })).toBeNull();
    expect(riskOf(state, recorder, { level: 0.19, charging: true })).toBeNull();
    expect(riskOf(state, recorder, null)).toBeNull();
  });

  it('is a flight in the air whose clock was never compared; it stays and is kept in the record', async () => {
    const fly = await onFly();
    await later(fly, 5);
    expect(shown(fly)).toEqual([]);
    await said(fly, { kind: 'liftedOff', body: {} });
    await later(fly, 300);
    expect(screen.getByText('Clock not compared: take a time hack.')).toBeTruthy();
    expect(shown(fly)).toEqual(['dataAtRisk:clock']);
  });
});
