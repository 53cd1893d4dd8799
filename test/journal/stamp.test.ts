import { describe, expect, it } from 'vitest';
import { browserClock, randomId } from '../../src/journal/stamp.ts';

const NOW_MS = Date.UTC(2031, 4, 6, 12, 0, 0);

function clockAt(monoMs: number) {
  return browserClock({ wallMs: () => NOW_MS, monoMs: () => monoMs }, 'boot');
}

describe('stamp of a touch', () => {
  it('is the time of contact, not of the handler', () => {
    expect(clockAt(5_000).stampOf({ timeStamp: 4_700 })).toEqual({
      wall: NOW_MS - 300,
      mono: 4_700,
      boot: 'boot',
    });
  });

  // The limits and the strange event times: WebKit bug 296331 (0), fastclick issue 550 (negative).
  it.each([
    ['no age', 5_000, 0],
    ['the oldest that is believed', 3_000, 2_000],
    ['older than that', 2_999, 0],
    ['after now', 5_001, 0],
    ['zero', 0, 0],
    ['negative', -7, 0],
    ['not a number', Number.NaN, 0],
  ])('takes %s as so old', (_, timeStamp, ageMs) => {
    expect(clockAt(5_000).stampOf({ timeStamp })).toEqual({
      wall: NOW_MS - ageMs,
      mono: 5_000 - ageMs,
      boot: 'boot',
    });
  });

  it('reads both clocks at one instant though the machine is held up between them', () => {
    let now = 5_000;
    // Held up for 22 ms at the first look, and never again.
    const holdUps = [22];
    const clock = browserClock(
      {
        wallMs: () => {
          const wall = NOW_MS + now;
          now += holdUps.shift() ?? 0;
          return wall;
        },
        monoMs: () => now,
      },
      'boot',
    );
    const { wall, mono } = clock.stampOf({ timeStamp: 4_700 });
    expect({ wall, mono }).toEqual({ wall: NOW_MS + 4_700, mono: 4_700 });
  });

  it('takes the nearest pair from a machine that is always held up', () => {
    let now = 5_000;
    const holdUps = [40, 30, 5, 20];
    const clock = browserClock(
      {
        wallMs: () => {
          const wall = NOW_MS + now;
          now += holdUps.shift() ?? 0;
          return wall;
        },
        monoMs: () => now,
      },
      'boot',
    );
    const { wall, mono } = clock.stampNow();
    expect(Math.abs(wall - NOW_MS - mono)).toBeLessThanOrEqual(5);
  });

  it('gives whole wall milliseconds and tenths of monotonic ones', () => {
    const clock = browserClock({ wallMs: () => NOW_MS, monoMs: () => 5_000.123_4 }, 'boot');
    expect(clock.stampOf({ timeStamp: 4_999.678_9 })).toEqual({
      wall: NOW_MS,
      mono: 4_999.7,
      boot: 'boot',
    });
    expect(clock.stampNow().mono).toBe(5_000.1);
  });

  it('names the page load, a new one each time', () => {
    const [one, two] = [browserClock(), browserClock()];
    expect(one.stampNow().boot).toMatch(/^[0-9a-f]{32}$/);
    expect(one.stampNow().boot).toBe(one.stampOf({ timeStamp: 0 }).boot);
    expect(two.stampNow().boot).not.toBe(one.stampNow().boot);
  });
});

describe('random id', () => {
  it('is 32 hexadecimal digits that never repeat', () => {
    const ids = Array.from({ length: 1_000 }, randomId);
    expect(new Set(ids).size).toBe(1_000);
    expect(ids.filter((id) => !/^[0-9a-f]{32}$/.test(id))).toEqual([]);
  });
});
