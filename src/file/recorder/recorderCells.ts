/** What a number cell holds when it holds no number: nothing, or something else. */
const MISSING = Number.NaN;
export const JUNK = Number.POSITIVE_INFINITY;

/** Words that recorders write where they have no value (common practice, no source). */
const NO_VALUE = new Set(['', '-', '--', 'nan', 'null', 'none', 'na', 'n/a', '#n/a', '*', '****']);

const POWERS = Array.from({ length: 23 }, (_, power) => 10 ** power);
const TAB = 9;
const SPACE = 32;
const PLUS = 43;
const COMMA = 44;
const MINUS = 45;
const POINT = 46;
const ZERO = 48;
const NINE = 57;
/** A cell that is longer holds no number. */
const LONGEST_TEXT = 200;
/** So many digits are a whole number that a double holds exactly. */
const EXACT_DIGITS = 15;

/**
 * The number in `bytes[from, to)`: `MISSING` where the cell says that there is none, `JUNK` where it holds anything else.
 * Up to 15 digits scaled by at most 10^22 are one correctly rounded division (Clinger 1990); the rest goes by `Number`.
 * Decimal point, or comma where cells are not parted by commas.
 */
export function numberCell(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  let end = to;
  while (at < end && isBlank(bytes[at])) at += 1;
  while (end > at && isBlank(bytes[end - 1])) end -= 1;
  if (at === end) return MISSING;
  const first = bytes[at] ?? 0;
  const isNegative = first === MINUS;
  const start = isNegative || first === PLUS ? at + 1 : at;
  let mantissa = 0;
  let digits = 0;
  let decimals = -1;
  for (at = start; at < end; at += 1) {
    const byte = bytes[at] ?? 0;
    if (byte >= ZERO && byte <= NINE) {
      mantissa = mantissa * 10 + (byte - ZERO);
      digits += 1;
      if (decimals >= 0) decimals += 1;
    } else if ((byte === POINT || byte === COMMA) && decimals < 0) {
      decimals = 0;
    } else {
      break;
    }
  }
  if (digits === 0 || digits > EXACT_DIGITS || at < end) return slowly(bytes, from, to);
  const size = decimals > 0 ? mantissa / (POWERS[decimals] ?? 1) : mantissa;
  return isNegative ? -size : size;
}

/** The text of a cell, trimmed, a byte a character: numbers and times are ASCII, and the rest is only shown. */
export function textCell(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, Math.min(to, from + LONGEST_TEXT))).trim();
}

function isBlank(byte: number | undefined): boolean {
  return byte === SPACE || byte === TAB;
}

function slowly(bytes: Uint8Array, from: number, to: number): number {
  const text = textCell(bytes, from, to);
  if (NO_VALUE.has(text.toLowerCase())) return MISSING;
  // `Number` would take 0x1F and Infinity; a recorder that writes them means neither.
  if (!/^[+-]?(\d+[.,]?\d*|[.,]\d+)(e[+-]?\d+)?$/i.test(text)) return JUNK;
  const value = Number(text.replace(',', '.'));
  return Number.isFinite(value) ? value : JUNK;
}
