import { act } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { epochMs } from '../../../src/record/brand.ts';
import type { Cues } from '../../../src/ui/fly/cues.ts';
import { openSettings } from '../../../src/ui/kit/settings.ts';
import { onFly, type OnFly } from './onFly.tsx';

afterEach(() => {
  vi.useRealTimers();
});

function heard(): { readonly cues: Cues; readonly all: string[] } {
  const all: string[] = [];
  const hear = (name: string) => (): void => {
    all.push(name);
  };
  return { all, cues: { tick: hear('tick'), caution: hear('caution'), pulse: hear('pulse') } };
}

/** Touches a key of the panel of this tablet, on whichever of its pages it stands. */
async function desk(fly: OnFly, ...acts: readonly string[]): Promise<void> {
  await fly.tap('tile-more');
  await fly.tap('tile-desk');
  for (const name of acts) {
    while (!fly.has(name)) await fly.tap('panel-more');
    await fly.tap(name);
  }
  await fly.tap('panel-done');
}

describe('sound and pulse', () => {
  it('are off until asked for', async () => {
    const { cues, all } = heard();
    const fly = await onFly({}, cues);
    await fly.tap('tile-mark');
    expect(all).toEqual([]);
  });

  it('answer a touch once, when it is saved', async () => {
    const { cues, all } = heard();
    const fly = await onFly({}, cues);
    await desk(fly, 'desk-sound', 'desk-pulse');
    expect(all).toEqual([]);
    await fly.tap('tile-mark');
    expect(all).toEqual(['tick', 'pulse']);
    await desk(fly, 'desk-sound');
    await fly.tap('tile-mark');
    expect(all).toEqual(['tick', 'pulse', 'pulse']);
  });

  it('sound two low tones for a caution, and no tick for what nobody touched', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    const { cues, all } = heard();
    const fly = await onFly({}, cues);
    await desk(fly, 'desk-sound');
    const wall = epochMs(fly.lastMs());
    await act(async () => {
      await fly.journal.append({
        kind: 'liftedOff',
        body: {},
        stamp: { wall, mono: wall, boot: 'b' },
      });
    });
    fly.wait(2_000);
    await act(async () => {
      await Promise.resolve();
    });
    expect(all).toEqual(['caution']);
  });
});

describe('what the tablet remembers of itself', () => {
  it('is there again after a restart', async () => {
    const fly = await onFly();
    await desk(fly, 'desk-theme', 'desk-text', 'desk-sound', 'desk-pulse');
    expect(openSettings(localStorage).get()).toMatchObject({
      theme: 'sun',
      textSize: 1.25,
      sound: true,
      pulse: true,
    });
  });

  it('is the usual thing where storage is refused or holds what nobody wrote', () => {
    const refused = {
      getItem: () => {
        throw new Error('refused');
      },
      setItem: () => {
        throw new Error('refused');
      },
      removeItem: () => undefined,
    };
    const odd = { getItem: () => 'odd', setItem: () => undefined, removeItem: () => undefined };
    for (const storage of [refused, odd]) {
      expect(openSettings(storage).get()).toMatchObject({
        theme: 'day',
        pxPerMm: null,
        textSize: 1,
        hand: 'right',
        sound: false,
        pulse: false,
      });
    }
  });

  it('turns the theme through all five and back with one key', async () => {
    const fly = await onFly();
    const seen: string[] = [];
    for (let touches = 0; touches < 5; touches += 1) {
      await fly.tap('theme');
      seen.push(fly.words('theme'));
    }
    expect(seen).toEqual(['SunTheme', 'DarkTheme', 'NightTheme', 'Nightred', 'DayTheme']);
  });
});
