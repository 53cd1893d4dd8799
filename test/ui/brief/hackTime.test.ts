import { describe, expect, it } from 'vitest';
import { epochMs } from '../../../src/record/brand.ts';
import { calledMinute, offsetWords, readClock } from '../../../src/ui/brief/hack/hackTime.ts';

const at = (...time: readonly [number, number, number, number?]) =>
  epochMs(Date.UTC(2032, 5, 2, time[0], time[1], time[2], time[3] ?? 0));

describe('the minute that is called', () => {
  it('is the next full one', () => {
    expect(calledMinute(at(21, 35, 20))).toBe(at(21, 36, 0));
  });

  it('stays the one just gone for the touch that answers it', () => {
    expect(calledMinute(at(21, 36, 0, 600))).toBe(at(21, 36, 0));
  });
});

describe('what a clock showed', () => {
  it.each([
    ['21:35:56', at(21, 35, 56)],
    ['213556', at(21, 35, 56)],
    ['21:36:00.6', at(21, 36, 0, 600)],
    ['21:36:00,6', at(21, 36, 0, 600)],
  ])('%s is read', (text, expected) => {
    expect(readClock(text, at(21, 36, 0))).toBe(expected);
  });

  it.each(['', '24:00:00', '21:60:00', '21:35', 'noon'])('%o is no time of day', (text) => {
    expect(readClock(text, at(21, 36, 0))).toBeNull();
  });

  it('is of the day nearest to the callout', () => {
    expect(readClock('23:59:58', epochMs(Date.UTC(2032, 5, 3, 0, 0, 1)))).toBe(at(23, 59, 58));
    expect(readClock('00:00:02', at(23, 59, 59))).toBe(epochMs(Date.UTC(2032, 5, 3, 0, 0, 2)));
  });
});

describe('an offset in words', () => {
  it('says which way and how sure', () => {
    expect(offsetWords(600, 0.3)).toBe('0.6\u00a0s ahead \u00b1\u00a00.3\u00a0s');
    expect(offsetWords(-4000, 1)).toBe('4\u00a0s behind \u00b1\u00a01\u00a0s');
    expect(offsetWords(0, 1)).toBe('with master \u00b1\u00a01\u00a0s');
  });
});
