import { describe, expect, it } from 'vitest';
import { judgeContact, nearestBox } from '../../../src/ui/kit/touchRules.ts';

const sure = { lastedMs: 120, endedInside: true, cancelled: false, afterOtherTileMs: null };

describe('a finished contact', () => {
  // Limits of the touch rules: 40 ms, 2 s, 300 ms.
  it.each([
    ['held as a finger holds', sure, 'sure'],
    ['of exactly 40 ms', { ...sure, lastedMs: 40 }, 'sure'],
    ['shorter than 40 ms', { ...sure, lastedMs: 39 }, 'briefContact'],
    ['of exactly 2 s', { ...sure, lastedMs: 2000 }, 'sure'],
    ['longer than 2 s', { ...sure, lastedMs: 2001 }, 'heldLong'],
    ['that left its target', { ...sure, endedInside: false }, 'slippedOff'],
    ['that the system took away', { ...sure, cancelled: true, endedInside: false }, 'cancelled'],
    ['299 ms after another tile', { ...sure, afterOtherTileMs: 299 }, 'twoTiles'],
    ['300 ms after another tile', { ...sure, afterOtherTileMs: 300 }, 'sure'],
  ] as const)('%s is judged', (_what, contact, expected) => {
    expect(judgeContact(contact)).toBe(expected);
  });
});

describe('a touch in the dead space', () => {
  const left = { left: 0, top: 0, right: 100, bottom: 100 };
  const right = { left: 120, top: 0, right: 220, bottom: 100 };

  it('goes to the target whose centre is nearer', () => {
    expect(nearestBox([left, right], 107, 50, 10)).toBe(0);
    expect(nearestBox([left, right], 113, 50, 10)).toBe(1);
  });

  it('is swallowed beyond half the gap', () => {
    expect(nearestBox([left, right], 50, 111, 10)).toBeNull();
  });
});
