import { ready, unavailable, type Outcome } from './outcome.ts';

/*
 * UTC calendar in whole numbers, for rooms that know no Date. Instants are UTC milliseconds since
 * 1970-01-01, days of 86 400 s, so a leap second itself cannot be written.
 * Check values: test/reference/calendar.json
 */
export const MS_PER_SECOND = 1000;
export const MS_PER_DAY = 86_400_000;
const MS_PER_HOUR = 3_600_000;
const MS_PER_MINUTE = 60_000;

export interface CivilDate {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  /** 1 to 31. */
  readonly day: number;
}

export interface CivilTime extends CivilDate {
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  readonly millisecond: number;
}

const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Gregorian rule. @throws RangeError for a year outside 1 to 9999 */
export function isLeapYear(year: number): boolean {
  requireYear(year);
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** Day of the year, 1 to 366. @throws RangeError for a date that does not exist */
export function dayOfYear({ year, month, day }: CivilDate): number {
  if (!dateExists({ year, month, day })) {
    throw new RangeError(`no such date: year ${year}, month ${month}, day ${day}`);
  }
  const before = MONTH_LENGTHS.slice(0, month - 1).reduce((total, days) => total + days, 0);
  return before + day + (month > 2 && isLeapYear(year) ? 1 : 0);
}

/** Instant of a civil time in UTC. @throws RangeError for a date or time of day that does not exist */
export function epochMsFromCivil(time: CivilTime): number {
  const { hour, minute, second, millisecond } = time;
  requireWhole('hour', hour, 23);
  requireWhole('minute', minute, 59);
  requireWhole('second', second, 59);
  requireWhole('millisecond', millisecond, 999);
  const days = daysBeforeYear(time.year) + dayOfYear(time) - 1;
  return (
    days * MS_PER_DAY +
    hour * MS_PER_HOUR +
    minute * MS_PER_MINUTE +
    second * MS_PER_SECOND +
    millisecond
  );
}

/** Civil time in UTC of an instant. @throws RangeError for part of a millisecond or a year outside 1 to 9999 */
export function civilFromEpochMs(epochMs: number): CivilTime {
  if (!Number.isSafeInteger(epochMs)) {
    throw new RangeError(`an instant must be whole milliseconds, got ${epochMs}`);
  }
  const dayNumber = Math.floor(epochMs / MS_PER_DAY);
  const { year, dayOfYear: ordinal } = yearAndDay(dayNumber);
  let day = ordinal;
  let month = 1;
  for (let length = monthLength(year, month); day > length; length = monthLength(year, month)) {
    day -= length;
    month += 1;
  }
  const rest = epochMs - dayNumber * MS_PER_DAY;
  return {
    year,
    month,
    day,
    hour: Math.floor(rest / MS_PER_HOUR),
    minute: Math.floor(rest / MS_PER_MINUTE) % 60,
    second: Math.floor(rest / MS_PER_SECOND) % 60,
    millisecond: rest % MS_PER_SECOND,
  };
}

/** ISO 8601 ordinal date, `2024-060`. */
export function ordinalDate(epochMs: number): string {
  const civil = civilFromEpochMs(epochMs);
  return `${digits(civil.year, 4)}-${digits(dayOfYear(civil), 3)}`;
}

/** Day-of-year time DDD:HH:MM:SS.sss in UTC, the form of range time codes. The year stands elsewhere. */
export function dayTime(epochMs: number): string {
  const civil = civilFromEpochMs(epochMs);
  return `${digits(dayOfYear(civil), 3)}:${timeOfDay(civil)}`;
}

/** ISO 8601 in UTC with milliseconds, `2024-02-29T07:05:09.040Z`. */
export function isoInstant(epochMs: number): string {
  const civil = civilFromEpochMs(epochMs);
  const date = `${digits(civil.year, 4)}-${digits(civil.month, 2)}-${digits(civil.day, 2)}`;
  return `${date}T${timeOfDay(civil)}Z`;
}

/**
 * Reads DDD:HH:MM:SS with up to three decimals.
 *
 * @returns `notDayTime` for another form, `noSuchTime` for a day, hour, minute or second that year lacks
 */
export function parseDayTime(
  text: string,
  year: number,
): Outcome<number, 'notDayTime' | 'noSuchTime'> {
  requireYear(year);
  const match = /^(\d{3}):(\d{2}):(\d{2}):(\d{2})(?:\.(\d{1,3}))?$/.exec(text);
  if (match === null) return unavailable('notDayTime');
  const [, day, hour, minute, second, decimals = ''] = match;
  const ordinal = Number(day);
  const seconds = Number(hour) * 3600 + Number(minute) * 60 + Number(second);
  const inRange = Number(hour) < 24 && Number(minute) < 60 && Number(second) < 60;
  if (ordinal < 1 || ordinal > (isLeapYear(year) ? 366 : 365) || !inRange) {
    return unavailable('noSuchTime');
  }
  const days = daysBeforeYear(year) + ordinal - 1;
  return ready(days * MS_PER_DAY + seconds * MS_PER_SECOND + Number(decimals.padEnd(3, '0')));
}

/**
 * Reads an ISO 8601 date, or a date and time in UTC: `2024-02-29` or `2024-02-29T07:05:09.040Z`.
 *
 * @returns `notIso` for another form or another zone, `noSuchTime` for a date or time that does not exist
 */
export function parseIso(text: string): Outcome<number, 'notIso' | 'noSuchTime'> {
  const form = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,3}))?)?Z)?$/.exec(
    text,
  );
  if (form === null) return unavailable('notIso');
  const [, year, month, day, hour = '0', minute = '0', second = '0', decimals = ''] = form;
  const date = { year: Number(year), month: Number(month), day: Number(day) };
  const exists =
    dateExists(date) && Number(hour) < 24 && Number(minute) < 60 && Number(second) < 60;
  if (!exists) return unavailable('noSuchTime');
  return ready(
    epochMsFromCivil({
      ...date,
      hour: Number(hour),
      minute: Number(minute),
      second: Number(second),
      millisecond: Number(decimals.padEnd(3, '0')),
    }),
  );
}

/** Days from 1970-01-01 to the first day of a year. */
function daysBeforeYear(year: number): number {
  requireYear(year);
  return daysBefore(year) - daysBefore(1970);
}

function daysBefore(year: number): number {
  const full = year - 1;
  return full * 365 + Math.floor(full / 4) - Math.floor(full / 100) + Math.floor(full / 400);
}

function yearAndDay(dayNumber: number): { readonly year: number; readonly dayOfYear: number } {
  // A first guess never more than a year off, then a step either way.
  let year = 1970 + Math.floor(dayNumber / 365.2425);
  while (daysBeforeYear(year) > dayNumber) year -= 1;
  while (daysBeforeYear(year) + (isLeapYear(year) ? 366 : 365) <= dayNumber) year += 1;
  return { year, dayOfYear: dayNumber - daysBeforeYear(year) + 1 };
}

function monthLength(year: number, month: number): number {
  const length = MONTH_LENGTHS[month - 1];
  if (length === undefined) throw new RangeError(`month must be 1 to 12, got ${month}`);
  return month === 2 && isLeapYear(year) ? length + 1 : length;
}

function dateExists({ year, month, day }: CivilDate): boolean {
  if (![year, month, day].every(Number.isInteger)) return false;
  if (year < 1 || year > 9999 || month < 1 || month > 12) return false;
  return day >= 1 && day <= monthLength(year, month);
}

function timeOfDay({ hour, minute, second, millisecond }: CivilTime): string {
  return `${digits(hour, 2)}:${digits(minute, 2)}:${digits(second, 2)}.${digits(millisecond, 3)}`;
}

function digits(value: number, width: number): string {
  return String(value).padStart(width, '0');
}

function requireYear(year: number): void {
  if (!(Number.isInteger(year) && year >= 1 && year <= 9999)) {
    throw new RangeError(`year must be 1 to 9999, got ${year}`);
  }
}

function requireWhole(name: string, value: number, most: number): void {
  if (!(Number.isInteger(value) && value >= 0 && value <= most)) {
    throw new RangeError(`${name} must be 0 to ${most}, got ${value}`);
  }
}
