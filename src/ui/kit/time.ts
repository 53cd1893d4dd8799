import { DateTime } from 'luxon';
import { useSyncExternalStore } from 'react';
import { epochMs, type EpochMs } from '../../record/brand.ts';
import type { Clock } from '../../journal/journal.ts';

const DAY_MS = 86_400_000;

/** 13:42:07, in UTC; the Z stands in the heading or beside it. */
export function hms(at: EpochMs): string {
  const second = Math.floor((((at % DAY_MS) + DAY_MS) % DAY_MS) / 1000);
  return [Math.floor(second / 3600), Math.floor(second / 60) % 60, second % 60]
    .map(twoDigits)
    .join(':');
}

/** 13:42:07.3: a touch to the tenth, for forms that compare clocks. */
export function hmsTenths(at: EpochMs): string {
  const tenth = Math.floor((((at % 1000) + 1000) % 1000) / 100);
  return `${hms(at)}.${tenth}`;
}

/** 06:12, or 1:12:40 from an hour on. Never negative: an age is counted from what is already written. */
export function running(durationMs: number): string {
  const second = Math.max(0, Math.floor(durationMs / 1000));
  const hour = Math.floor(second / 3600);
  const rest = `${twoDigits(Math.floor(second / 60) % 60)}:${twoDigits(second % 60)}`;
  return hour > 0 ? `${hour}:${rest}` : rest;
}

/** Age in words: `40 s ago`, `5 min ago`, `2 h ago`. */
export function ago(durationMs: number): string {
  const second = Math.max(0, Math.round(durationMs / 1000));
  if (second < 90) {
    return `${second} s ago`;
  }
  return second < 5400
    ? `${Math.round(second / 60)} min ago`
    : `${Math.round(second / 3600)} h ago`;
}

/** Day of year beside the date, as range time codes carry it: `2032-154, Wed 2 Jun`. */
export function dayWords(isoDate: string): string {
  const day = DateTime.fromISO(isoDate, { zone: 'utc' });
  return day.isValid ? day.toFormat('yyyy-ooo, ccc d LLL', { locale: 'en' }) : isoDate;
}

/** UTC date of an instant, YYYY-MM-DD. */
export function isoDate(at: EpochMs): string {
  return DateTime.fromMillis(at, { zone: 'utc' }).toFormat('yyyy-MM-dd');
}

/** Whether it is a day of the calendar, written YYYY-MM-DD. */
export function isDay(text: string): boolean {
  return DateTime.fromFormat(text, 'yyyy-MM-dd', { zone: 'utc' }).isValid;
}

/**
 * The last instant not after `now` at which a clock showed these six digits; null when they are no time of day.
 * A late entry is always of the past, so 23:58 keyed at 00:05 is yesterday.
 */
export function latestAtDigits(digits: string, now: EpochMs): EpochMs | null {
  const match = /^(\d\d)(\d\d)(\d\d)$/.exec(digits);
  const [, hour = 99, minute = 99, second = 99] = (match ?? []).map(Number);
  if (hour > 23 || minute > 59 || second > 59) {
    return null;
  }
  const ofDay = (hour * 3600 + minute * 60 + second) * 1000;
  const today = Math.floor(now / DAY_MS) * DAY_MS + ofDay;
  return epochMs(today <= now ? today : today - DAY_MS);
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}

/** The current second; a screen that shows it renders once a second and not more often. */
export function useSecond(clock: Clock): EpochMs {
  return useSyncExternalStore(everySecond, () => epochMs(Math.floor(clock.now() / 1000) * 1000));
}

function everySecond(listener: () => void): () => void {
  const timer = setInterval(listener, 250);
  return () => clearInterval(timer);
}
