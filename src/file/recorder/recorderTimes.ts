import { epochMsFromCivil, MS_PER_DAY, MS_PER_SECOND } from '../../aero/calendar.ts';
import { numberCell, textCell } from './recorderCells.ts';

/** How a recorder writes its time column. All but `iso` and `unix` need the day on which the recording began. */
export const TIME_FORMS = ['iso', 'dayOfYear', 'clock', 'secondsOfDay', 'elapsed', 'unix'] as const;
export type TimeForm = (typeof TIME_FORMS)[number];

/** Gives the UTC milliseconds of one time cell, row after row; NaN where it is none. */
export type TimeReader = (bytes: Uint8Array, from: number, to: number) => number;

const ISO =
  /^(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):(\d{2})(?::(\d{2})(?:[.,](\d+))?)?\s*(?:Z|UTC|([+-])(\d{2}):?(\d{2}))?$/i;
/** "154:21:39:00.125", with the year before it or without; parted by a colon, a space or a stroke after the day. */
const DAY_OF_YEAR = /^(?:(\d{4})[-:/ ])?(\d{1,3})[:/ -](\d{1,2}):(\d{2}):(\d{2}(?:[.,]\d+)?)$/;
const CLOCK = /^(\d{1,2}):(\d{2}):(\d{2}(?:[.,]\d+)?)Z?$/i;
const ZERO = 48;

/**
 * @param startMs `dayOfYear`, `clock` and `secondsOfDay`: midnight UTC that the recording's first day began with;
 * `elapsed`: the instant of zero. Past midnight a clock that jumps back by more than half a day gains a day.
 */
export function timeReader(form: TimeForm, startMs: number): TimeReader {
  switch (form) {
    case 'iso':
      return isoReader();
    case 'unix':
      return (bytes, from, to) => seconds(bytes, from, to);
    case 'elapsed':
      return (bytes, from, to) => startMs + seconds(bytes, from, to);
    case 'secondsOfDay':
      return rolling(startMs, (bytes, from, to) => seconds(bytes, from, to));
    case 'clock':
      return rolling(startMs, (bytes, from, to) => {
        const [, hour, minute, second] = CLOCK.exec(textCell(bytes, from, to)) ?? [];
        return clockMs(hour, minute, second);
      });
    case 'dayOfYear':
      return dayOfYearReader(startMs);
  }
}

/** The form that reads every one of these cells; ISO first, numbers last. */
export function timeFormOf(cells: readonly string[]): TimeForm | null {
  if (cells.length === 0) return null;
  if (cells.every((cell) => ISO.test(cell))) return 'iso';
  if (cells.every((cell) => CLOCK.test(cell))) return 'clock';
  if (cells.every((cell) => DAY_OF_YEAR.test(cell))) return 'dayOfYear';
  const values = cells.map((cell) => (cell === '' ? Number.NaN : Number(cell.replace(',', '.'))));
  if (!values.every((value, index) => value >= (values[index - 1] ?? 0))) return null;
  const first = values[0] ?? 0;
  if (first > 5e8) return 'unix';
  if (first > 100 && first < 86_400) return 'secondsOfDay';
  return 'elapsed';
}

function seconds(bytes: Uint8Array, from: number, to: number): number {
  const value = numberCell(bytes, from, to);
  return Number.isFinite(value) ? value * MS_PER_SECOND : Number.NaN;
}

/** Milliseconds into the day; NaN for a time that no clock shows. */
function clockMs(hour: string | undefined, minute = '', second = ''): number {
  const hours = Number(hour ?? Number.NaN);
  const minutes = Number(minute);
  const secondsPast = Number(second.replace(',', '.'));
  if (!(hours <= 24 && minutes <= 59 && secondsPast < 61)) return Number.NaN;
  return Math.round(((hours * 60 + minutes) * 60 + secondsPast) * MS_PER_SECOND);
}

/** A time of day with the days that have passed since the first. */
function rolling(midnightMs: number, timeOfDay: TimeReader): TimeReader {
  let dayMs = midnightMs;
  let last = Number.NaN;
  return (bytes, from, to) => {
    const ms = timeOfDay(bytes, from, to);
    if (!(ms >= 0)) return Number.NaN;
    if (last - ms > MS_PER_DAY / 2) dayMs += MS_PER_DAY;
    else if (ms - last > MS_PER_DAY / 2 && dayMs > midnightMs) {
      // One late row from before midnight: it belongs to the day before and turns nothing back.
      return dayMs - MS_PER_DAY + ms;
    }
    last = ms;
    return dayMs + ms;
  };
}

function dayOfYearReader(startMs: number): TimeReader {
  const startYear = yearOf(startMs);
  const newYearMs = newYear(startYear);
  const startDay = Math.floor((startMs - newYearMs) / MS_PER_DAY) + 1;
  return (bytes, from, to) => {
    const found = DAY_OF_YEAR.exec(textCell(bytes, from, to));
    if (found === null) return Number.NaN;
    const [, year, day, hour, minute, second] = found;
    const ms = clockMs(hour, minute, second);
    const ordinal = Number(day);
    if (!(ordinal >= 1 && ordinal <= 366)) return Number.NaN;
    // A flight over New Year's Eve counts from 1 again.
    const of = year === undefined ? startYear + (startDay - ordinal > 180 ? 1 : 0) : Number(year);
    return newYear(of) + (ordinal - 1) * MS_PER_DAY + ms;
  };
}

const newYear = (year: number): number => dateMs(year, 1, 1);

function yearOf(ms: number): number {
  let year = 1970 + Math.floor(ms / (365.2425 * MS_PER_DAY));
  while (newYear(year) > ms) year -= 1;
  while (newYear(year + 1) <= ms) year += 1;
  return year;
}

function dateMs(year: number, month: number, day: number): number {
  try {
    return epochMsFromCivil({ year, month, day, hour: 0, minute: 0, second: 0, millisecond: 0 });
  } catch {
    return Number.NaN;
  }
}

/** "YYYY-MM-DDTHH:MM:SS" at fixed places is read from the bytes: millions of rows share a few dates. */
function isoReader(): TimeReader {
  let knownDate = -1;
  let knownMs = Number.NaN;
  return (bytes, from, to) => {
    const quick = quickIso(bytes, from, to);
    if (quick === null) return slowIso(textCell(bytes, from, to));
    if (quick.date !== knownDate) {
      knownDate = quick.date;
      const [year, rest] = [Math.floor(quick.date / 10_000), quick.date % 10_000];
      knownMs = dateMs(year, Math.floor(rest / 100), rest % 100);
    }
    return knownMs + quick.ms;
  };
}

const at = (bytes: Uint8Array, place: number): number => (bytes[place] ?? 0) - ZERO;
const two = (bytes: Uint8Array, place: number): number =>
  at(bytes, place) * 10 + at(bytes, place + 1);
const DIGIT_PLACES = [0, 1, 2, 3, 5, 6, 8, 9, 11, 12, 14, 15, 17, 18];

function quickIso(
  bytes: Uint8Array,
  from: number,
  to: number,
): { readonly date: number; readonly ms: number } | null {
  const isZulu = bytes[to - 1] === 90;
  const end = isZulu ? to - 1 : to;
  if (end - from < 19 || bytes[from + 4] !== 45 || bytes[from + 16] !== 58) return null;
  for (const place of DIGIT_PLACES) {
    const digit = at(bytes, from + place);
    if (digit < 0 || digit > 9) return null;
  }
  let ms = (two(bytes, from + 11) * 60 + two(bytes, from + 14)) * 60_000;
  ms += two(bytes, from + 17) * 1000;
  if (two(bytes, from + 11) > 23 || two(bytes, from + 14) > 59 || two(bytes, from + 17) > 60) {
    return null;
  }
  if (end - from > 19) {
    if (bytes[from + 19] !== 46) return null;
    let share = 100;
    for (let place = from + 20; place < end; place += 1, share /= 10) {
      const digit = at(bytes, place);
      if (digit < 0 || digit > 9) return null;
      ms += digit * share;
    }
  }
  const year = two(bytes, from) * 100 + two(bytes, from + 2);
  return { date: year * 10_000 + two(bytes, from + 5) * 100 + two(bytes, from + 8), ms };
}

function slowIso(text: string): number {
  const found = ISO.exec(text);
  if (found === null) return Number.NaN;
  const [, year, month, day, hour, minute, second, decimals, sign, zoneH, zoneMin] = found;
  const zone = (Number(zoneH ?? 0) * 60 + Number(zoneMin ?? 0)) * 60_000;
  const clock = clockMs(hour, minute, `${second ?? '00'}.${decimals ?? '0'}`);
  return dateMs(Number(year), Number(month), Number(day)) + clock - (sign === '-' ? -zone : zone);
}
