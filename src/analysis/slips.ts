import type { Instrument } from '../record/sheet.ts';

/** How a keyed number may have come about, in the order in which it is asked. */
export type Slip = 'timesTen' | 'tenth' | 'swapped' | 'doubledOrDropped' | 'neighbourKey';

export interface Meant {
  readonly value: number;
  readonly cause: Slip;
}

/** Keys beside and above each key of a pad with 1-2-3 on top and 0 below the 8. */
const NEIGHBOURS: Readonly<Record<string, readonly string[]>> = {
  '1': ['2', '4'],
  '2': ['1', '3', '5'],
  '3': ['2', '6'],
  '4': ['1', '5', '7'],
  '5': ['2', '4', '6', '8'],
  '6': ['3', '5', '9'],
  '7': ['4', '8'],
  '8': ['5', '7', '9', '0'],
  '9': ['6', '8'],
  '0': ['8'],
};

/** Values of which `value` may be a slip of the finger, likelier causes first. */
export function likelySlips({ format }: Instrument, value: number): readonly Meant[] {
  const { wholeDigits, decimals } = format;
  const sign = value < 0 ? -1 : 1;
  const boxes = wholeDigits + decimals;
  const typed = Math.round(Math.abs(value) * 10 ** decimals).toString();
  const padded = typed.padStart(boxes, '0');
  const meant = (cause: Slip, texts: readonly string[]): readonly Meant[] =>
    texts
      .filter(
        (text) => text.length > 0 && text.length <= boxes && text !== typed && text !== padded,
      )
      .map((text) => ({ value: (sign * Number(text)) / 10 ** decimals, cause }));
  return [
    // Typed a tenth or ten times too much: the value meant is the other way.
    ...meant('tenth', [`${typed}0`]),
    ...meant('timesTen', typed.endsWith('0') ? [typed.slice(0, -1)] : []),
    ...meant('swapped', swaps(padded)),
    ...meant('doubledOrDropped', [...withoutDouble(typed), ...withOneMore(typed)]),
    ...meant('neighbourKey', neighbours(padded)),
  ];
}

function swaps(text: string): readonly string[] {
  return positions(text, 1).map(
    (at) => text.slice(0, at) + text.charAt(at + 1) + text.charAt(at) + text.slice(at + 2),
  );
}

function withoutDouble(text: string): readonly string[] {
  return positions(text, 1)
    .filter((at) => text.charAt(at) === text.charAt(at + 1))
    .map((at) => text.slice(0, at) + text.slice(at + 1));
}

/** The digit that was not keyed may be any, anywhere. */
function withOneMore(text: string): readonly string[] {
  return positions(text, -1).flatMap((at) =>
    Object.keys(NEIGHBOURS).map((digit) => text.slice(0, at) + digit + text.slice(at)),
  );
}

function neighbours(text: string): readonly string[] {
  return positions(text, 0).flatMap((at) =>
    (NEIGHBOURS[text.charAt(at)] ?? []).map((key) => text.slice(0, at) + key + text.slice(at + 1)),
  );
}

function positions(text: string, less: number): readonly number[] {
  return Array.from({ length: Math.max(0, text.length - less) }, (_, index) => index);
}
