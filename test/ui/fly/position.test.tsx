import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Located } from '../../../src/ui/ports.ts';
import { onFly, type OnFly } from './onFly.tsx';

const PEN = { author: 'S1', role: 'scribe' } as const;
const FIX: Located = {
  kind: 'fix',
  latitudeDeg: 12.345_678_9,
  longitudeDeg: -98.765_432_1,
  altitudeM: 11_887.64,
  accuracyM: 7.31,
};

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
});
afterEach(() => {
  vi.useRealTimers();
});

/** Fly with a receiver that always says the same, on a flight sheet that allows it or not. */
async function withReceiver(said: Located, positionAllowed: boolean) {
  const locate = vi.fn(async () => said);
  const fly = await onFly(positionAllowed ? { positionAllowed } : {}, undefined, PEN, locate);
  return { fly, locate };
}

const positions = (fly: OnFly) =>
  fly.journal.entries().filter((entry) => entry.kind === 'positionRead');

async function switchPosition(fly: OnFly): Promise<void> {
  await fly.tap('tile-more');
  await fly.tap('tile-desk');
  while (!fly.has('desk-position')) await fly.tap('panel-more');
  await fly.tap('desk-position');
}

describe('position by the receiver of the tablet', () => {
  it('is off until somebody switches it on, then kept beside the entries once a minute', async () => {
    const { fly, locate } = await withReceiver(FIX, true);
    expect(locate).not.toHaveBeenCalled();
    await switchPosition(fly);
    expect(positions(fly)).toMatchObject([
      {
        body: {
          latitudeDeg: 12.345_679,
          longitudeDeg: -98.765_432,
          altitudeM: 11_887.6,
          accuracyM: 7.3,
        },
      },
    ]);
    await fly.tap('tile-mark', 60_000);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(positions(fly)).toHaveLength(2);
    await switchPosition(fly);
    await vi.advanceTimersByTimeAsync(600_000);
    expect(locate).toHaveBeenCalledTimes(2);
  });

  it('is never asked for where the flight sheet does not allow it, and offers no switch', async () => {
    const { fly, locate } = await withReceiver(FIX, false);
    await fly.tap('tile-more');
    await fly.tap('tile-desk');
    expect(fly.has('desk-position')).toBe(false);
    localStorage.setItem('kneeline-position', 'on');
    await vi.advanceTimersByTimeAsync(600_000);
    expect(locate).not.toHaveBeenCalled();
  });

  it('says once that it was refused, and asks no more', async () => {
    const { fly, locate } = await withReceiver({ kind: 'refused' }, true);
    await switchPosition(fly);
    expect(document.body.textContent).toContain('Position refused: switched off');
    await vi.advanceTimersByTimeAsync(600_000);
    expect(locate).toHaveBeenCalledTimes(1);
    expect(positions(fly)).toEqual([]);
  });

  it('writes nothing while there is no fix, and goes on asking', async () => {
    const { fly, locate } = await withReceiver({ kind: 'noFix' }, true);
    await switchPosition(fly);
    await vi.advanceTimersByTimeAsync(120_000);
    expect(locate).toHaveBeenCalledTimes(3);
    expect(positions(fly)).toEqual([]);
  });

  it('is passed over by Undo and by the list of last entries', async () => {
    const { fly } = await withReceiver(FIX, true);
    await fly.tap('tile-mark');
    await switchPosition(fly);
    expect(fly.words('undo')).toContain('Mark');
  });
});
