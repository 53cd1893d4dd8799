/** Keys beside, above and below on a pad with 1-2-3 on top and 0 under the 8. */
const BESIDE: Readonly<Record<string, string>> = {
  '1': '24',
  '2': '135',
  '3': '26',
  '4': '157',
  '5': '2468',
  '6': '359',
  '7': '48',
  '8': '5790',
  '9': '68',
  '0': '8',
};

export interface Reading {
  /** What the indicator shows, as many digits as the pad has boxes. */
  readonly shown: string;
  /** What it showed at the last reading, and what the other engine shows. */
  readonly last: string;
  readonly other: string;
}

export type Slip = (reading: Reading, at: number, pick: () => number) => string;

const swapped = (digits: string, at: number): string =>
  digits.slice(0, at) + digits.charAt(at + 1) + digits.charAt(at) + digits.slice(at + 2);

/** Keys pressed for a reading, by class. `at` is a place in the number. */
export const CLASSES: Readonly<Record<string, Slip>> = {
  'ten times, leading zero': ({ shown }) => `${shown.slice(1)}0`,
  'a tenth, one zero more': ({ shown }) => `0${shown.slice(0, -1)}`,
  'digit missing': ({ shown }, at) => shown.slice(0, at) + shown.slice(at + 1),
  'digit doubled': ({ shown }, at) => shown.slice(0, at + 1) + shown.slice(at),
  'neighbours swapped': ({ shown }, at) => swapped(shown, Math.min(at, shown.length - 2)),
  'last two swapped': ({ shown }) => swapped(shown, shown.length - 2),
  'neighbouring key': ({ shown }, at, pick) => {
    const keys = BESIDE[shown.charAt(at)] ?? '';
    return shown.slice(0, at) + keys.charAt(Math.floor(pick() * keys.length)) + shown.slice(at + 1);
  },
  'any other digit': ({ shown }, at, pick) => {
    const digit = (Number(shown.charAt(at)) + 1 + Math.floor(pick() * 9)) % 10;
    return shown.slice(0, at) + String(digit) + shown.slice(at + 1);
  },
  'the other engine': ({ other }) => other,
  'last value again': ({ last }) => last,
};
