import { DateTime } from 'luxon';
import { epochMs, type EpochMs } from '../../record/brand.ts';
import { hms } from '../kit/time.ts';

/**
 * "22:26:04", to the nearest second: times are moved to the aircraft time base by parts of one. Every time on Debrief is
 * UTC; the Z stands in the heading or beside the figure.
 */
export const clockWords = (at: EpochMs): string => hms(epochMs(Math.round(at / 1000) * 1000));
export const minuteWords = (at: EpochMs): string => hms(at).slice(0, 5);
/** "22 06 04 Zulu", as a reader says it. */
export const spokenClock = (at: EpochMs): string => `${clockWords(at).replaceAll(':', ' ')} Zulu`;
/** Year and day of the year, "2032-154". */
export const ordinalDate = (at: EpochMs): string =>
  DateTime.fromMillis(at, { zone: 'utc' }).toFormat('yyyy-ooo');

/** "1:40", "12:05:00": a length on a bar. */
export function lengthWords(durationMs: number): string {
  const { hours, minutes, seconds } = parts(durationMs);
  const twoDigits = (value: number): string => String(value).padStart(2, '0');
  return hours > 0
    ? `${hours}:${twoDigits(minutes)}:${twoDigits(seconds)}`
    : `${minutes}:${twoDigits(seconds)}`;
}

/** "4 minutes 12 seconds". */
export function spokenLength(durationMs: number): string {
  const { hours, minutes, seconds } = parts(durationMs);
  const words = [counted(hours, 'hour'), counted(minutes, 'minute'), counted(seconds, 'second')];
  return words.filter((part) => part !== '').join(' ') || '0 seconds';
}

/** Doubt of a time as one standard uncertainty: "± 20 s", "± 0.5 s". */
export function doubtWords(doubtS: number): string {
  const isFine = doubtS < 10 && !Number.isInteger(doubtS);
  return `±\u00a0${isFine ? doubtS.toFixed(1) : Math.round(doubtS)}\u00a0s`;
}

/**
 * A typed date and clock time as an instant; seconds may be left out, a Z may follow.
 * @returns null when the text is not a time of day in UTC
 */
export function typedInstant(date: string, clock: string): EpochMs | null {
  const plain = clock.trim().replace(/z$/i, '');
  for (const format of ['HH:mm:ss.S', 'HH:mm:ss', 'HH:mm', 'HHmmss', 'HHmm']) {
    const read = DateTime.fromFormat(`${date.trim()} ${plain}`, `yyyy-MM-dd ${format}`, {
      zone: 'utc',
    });
    if (read.isValid) {
      return epochMs(Math.round(read.toMillis()));
    }
  }
  return null;
}

function parts(durationMs: number): { hours: number; minutes: number; seconds: number } {
  const totalS = Math.round(Math.abs(durationMs) / 1000);
  return {
    hours: Math.floor(totalS / 3600),
    minutes: Math.floor(totalS / 60) % 60,
    seconds: totalS % 60,
  };
}

function counted(count: number, unit: string): string {
  return count === 0 ? '' : `${count} ${unit}${count === 1 ? '' : 's'}`;
}
