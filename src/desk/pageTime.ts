import type { EpochMs } from '../record/brand.ts';

const DAY_MS = 86_400_000;

/** `22:26:04Z`, to the nearest second. */
export function clock(at: EpochMs): string {
  return new Date(nearestSecond(at))
    .toISOString()
    .replace(/^.*T/, '')
    .replace(/\.\d+Z$/, 'Z');
}

/** `2032-06-02 22:26:04Z`. */
export function dayAndClock(at: EpochMs): string {
  return new Date(nearestSecond(at))
    .toISOString()
    .replace('T', ' ')
    .replace(/\.\d+Z$/, 'Z');
}

/** `1 h 40 min`, `4 min 12 s`, `38 s`. */
export function lengthWords(durationMs: number): string {
  const second = Math.round(Math.abs(durationMs) / 1000);
  const [hour, minute] = [Math.floor(second / 3600), Math.floor(second / 60) % 60];
  if (hour > 0) return `${hour} h ${minute} min`;
  return minute > 0 ? `${minute} min ${second % 60} s` : `${second} s`;
}

/** Instants of a foreign file may lie outside what a calendar knows; those stand at its end. */
function nearestSecond(at: EpochMs): number {
  const limit = 100_000_000 * DAY_MS;
  return Math.min(limit, Math.max(-limit, Math.round(at / 1000) * 1000));
}
