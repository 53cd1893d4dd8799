import { describe, expect, it } from 'vitest';
import {
  boxesOf,
  EMPTY_BOXES,
  erased,
  isFull,
  signTurned,
  stepped,
  stepsOf,
  typed,
  valueOf,
  type BoxFormat,
} from '../../../src/ui/fly/boxes.ts';

const FLOW: BoxFormat = { wholeDigits: 4, decimals: 0, signed: false, exact: true };
const MACH: BoxFormat = { wholeDigits: 1, decimals: 3, signed: false, exact: true };
const TEMP: BoxFormat = { wholeDigits: 2, decimals: 1, signed: true, exact: true };

const keyed = (format: BoxFormat, digits: string) =>
  digits.split('').reduce((boxes, digit) => typed(boxes, format, digit), EMPTY_BOXES);

describe('the boxes of a number pad', () => {
  it.each([
    [FLOW, '0890', 890],
    [FLOW, '1220', 1220],
    [MACH, '0721', 0.721],
    [TEMP, '565', 56.5],
  ])('read %o keyed %s as %f', (format, digits, value) => {
    expect(valueOf(keyed(format, digits), format)).toBe(value);
  });

  it('show a missing digit and take no extra one', () => {
    expect(isFull(keyed(FLOW, '122'), FLOW)).toBe(false);
    expect(keyed(FLOW, '12207').digits).toBe('1220');
  });

  it('give back one digit at a time', () => {
    expect(erased(keyed(FLOW, '1220')).digits).toBe('122');
  });

  it('turn the sign without touching the digits', () => {
    expect(valueOf(signTurned(keyed(TEMP, '565')), TEMP)).toBe(-56.5);
  });

  it('step from the last reading, and from there on', () => {
    const once = stepped(EMPTY_BOXES, MACH, 0.001, 0.72);
    expect(valueOf(once, MACH)).toBe(0.721);
    expect(valueOf(stepped(once, MACH, 0.01, 0.72), MACH)).toBe(0.731);
    expect(once.stepped).toBe(true);
  });

  it('start anew with the first digit after steps', () => {
    expect(typed(stepped(EMPTY_BOXES, FLOW, 10, 1220), FLOW, '9').digits).toBe('9');
  });

  it('hold no number that has more digits than boxes', () => {
    expect(boxesOf(12_345, FLOW)).toBeNull();
  });

  it('step by what the display shows', () => {
    expect(stepsOf(10, 0)).toEqual([10, 100]);
    expect(stepsOf(0, 1)).toEqual([0.1, 1]);
  });
});
