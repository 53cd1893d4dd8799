import { MS_PER_SECOND } from './calendar.ts';
import { ready, unavailable, type Outcome } from './outcome.ts';

/** TAI − UTC from an instant on. */
export interface LeapSecondRow {
  /** UTC milliseconds, first instant of the day after the leap second. */
  readonly fromEpochMs: number;
  readonly taiMinusUtcS: number;
}

/** A dated table: new bulletins add a row or move the date, never a line of code. */
export interface LeapSecondTable {
  readonly rows: readonly LeapSecondRow[];
  /** Leap seconds are announced half a year ahead; the last bulletin read covers instants before this. */
  readonly coversUntilEpochMs: number;
}

/**
 * Leap seconds since 1972 (IERS Bulletin C 54 of July 2017 for the value; the bulletin of January 2023
 * announces none for June 2023, so it holds to the end of that year; earlier dates from memory, unverified).
 */
export const LEAP_SECONDS: LeapSecondTable = {
  coversUntilEpochMs: 1_704_067_200_000,
  rows: [
    { fromEpochMs: 63_072_000_000, taiMinusUtcS: 10 },
    { fromEpochMs: 78_796_800_000, taiMinusUtcS: 11 },
    { fromEpochMs: 94_694_400_000, taiMinusUtcS: 12 },
    { fromEpochMs: 126_230_400_000, taiMinusUtcS: 13 },
    { fromEpochMs: 157_766_400_000, taiMinusUtcS: 14 },
    { fromEpochMs: 189_302_400_000, taiMinusUtcS: 15 },
    { fromEpochMs: 220_924_800_000, taiMinusUtcS: 16 },
    { fromEpochMs: 252_460_800_000, taiMinusUtcS: 17 },
    { fromEpochMs: 283_996_800_000, taiMinusUtcS: 18 },
    { fromEpochMs: 315_532_800_000, taiMinusUtcS: 19 },
    { fromEpochMs: 362_793_600_000, taiMinusUtcS: 20 },
    { fromEpochMs: 394_329_600_000, taiMinusUtcS: 21 },
    { fromEpochMs: 425_865_600_000, taiMinusUtcS: 22 },
    { fromEpochMs: 489_024_000_000, taiMinusUtcS: 23 },
    { fromEpochMs: 567_993_600_000, taiMinusUtcS: 24 },
    { fromEpochMs: 631_152_000_000, taiMinusUtcS: 25 },
    { fromEpochMs: 662_688_000_000, taiMinusUtcS: 26 },
    { fromEpochMs: 709_948_800_000, taiMinusUtcS: 27 },
    { fromEpochMs: 741_484_800_000, taiMinusUtcS: 28 },
    { fromEpochMs: 773_020_800_000, taiMinusUtcS: 29 },
    { fromEpochMs: 820_454_400_000, taiMinusUtcS: 30 },
    { fromEpochMs: 867_715_200_000, taiMinusUtcS: 31 },
    { fromEpochMs: 915_148_800_000, taiMinusUtcS: 32 },
    { fromEpochMs: 1_136_073_600_000, taiMinusUtcS: 33 },
    { fromEpochMs: 1_230_768_000_000, taiMinusUtcS: 34 },
    { fromEpochMs: 1_341_100_800_000, taiMinusUtcS: 35 },
    { fromEpochMs: 1_435_708_800_000, taiMinusUtcS: 36 },
    { fromEpochMs: 1_483_228_800_000, taiMinusUtcS: 37 },
  ],
};

/** TAI − GPS time, constant by definition of GPS time. */
export const TAI_MINUS_GPS_S = 19;
/** GPS time starts at 1980-01-06T00:00:00Z. */
export const GPS_EPOCH_MS = 315_964_800_000;

/** A difference of scales, and whether the table's bulletins reach that far. */
export interface ScaleDifference {
  readonly seconds: number;
  readonly covered: boolean;
}

/**
 * TAI − UTC at an instant.
 *
 * @returns `beforeTable` before 1972; `covered` is false past the last bulletin, where the last row is used
 */
export function taiMinusUtc(
  epochMs: number,
  table: LeapSecondTable = LEAP_SECONDS,
): Outcome<ScaleDifference, 'beforeTable'> {
  if (!Number.isSafeInteger(epochMs)) {
    throw new RangeError(`an instant must be whole milliseconds, got ${epochMs}`);
  }
  const row = table.rows.findLast(({ fromEpochMs }) => fromEpochMs <= epochMs);
  if (row === undefined) return unavailable('beforeTable');
  return ready({ seconds: row.taiMinusUtcS, covered: epochMs < table.coversUntilEpochMs });
}

/** GPS − UTC at an instant: 18 s since 2017. Fails as `taiMinusUtc`, and before GPS time began. */
export function gpsMinusUtc(
  epochMs: number,
  table: LeapSecondTable = LEAP_SECONDS,
): Outcome<ScaleDifference, 'beforeTable'> {
  if (epochMs < GPS_EPOCH_MS) return unavailable('beforeTable');
  const tai = taiMinusUtc(epochMs, table);
  if (tai.kind === 'unavailable') return tai;
  return ready({ ...tai.value, seconds: tai.value.seconds - TAI_MINUS_GPS_S });
}

/** Seconds of GPS time since its start. Fails as `gpsMinusUtc`. */
export function gpsSeconds(
  epochMs: number,
  table: LeapSecondTable = LEAP_SECONDS,
): Outcome<number, 'beforeTable'> {
  const difference = gpsMinusUtc(epochMs, table);
  if (difference.kind === 'unavailable') return difference;
  return ready((epochMs - GPS_EPOCH_MS) / MS_PER_SECOND + difference.value.seconds);
}

/**
 * Whether a clock offset looks like GPS time taken for UTC, or the reverse: within half a second of the
 * difference of the two scales.
 */
export function looksLikeGpsTime(
  offsetS: number,
  epochMs: number,
  table: LeapSecondTable = LEAP_SECONDS,
): boolean {
  const difference = gpsMinusUtc(epochMs, table);
  if (difference.kind === 'unavailable' || difference.value.seconds === 0) return false;
  return Math.abs(Math.abs(offsetS) - difference.value.seconds) <= GPS_LIKENESS_S;
}

/** A slip of the finger in a time hack is smaller than this (a product choice). */
export const GPS_LIKENESS_S = 0.5;
