import { median } from '../aero/statistics/descriptive.ts';
import type { Instrument } from '../record/sheet.ts';
import { likelySlips, type Meant, type Slip } from './slips.ts';

/** What the pad asks after ENTER. It never refuses: a queried value is kept and marked. */
export type Judgement =
  | { readonly kind: 'fine' }
  /** Two readings in a row agree outside the old band: both are kept and the reference starts anew. */
  | { readonly kind: 'realChange' }
  | {
      readonly kind: 'query';
      /** Against the reference, in per cent; null where only the range of the gauge speaks. */
      readonly percentOff: number | null;
      /** What may have been meant, in the gauge's unit. */
      readonly candidate: number | null;
      readonly cause: Slip | null;
    };

const READINGS_IN_REFERENCE = 5;
/** Band about the reference: the larger of 8 % and four median absolute deviations (a choice). */
const BAND_FRACTION = 0.08;
const BAND_DEVIATIONS = 4;
/** Near zero a share of the reference is less than the display can show. */
const BAND_STEPS = 3;
/** A counter is expected where the flow carried it, within this share of the way. */
const COUNTER_BAND_FRACTION = 0.3;
const COUNTER_BAND_STEPS = 5;

/**
 * Judges one value as read, in the gauge's own unit.
 *
 * @param history kept readings of this gauge since the last change of power, point, suction or moisture,
 *   oldest first; with none the range of the gauge speaks alone
 * @param lastQueried the reading before this one, if it was queried
 * @param expected where the flow should have carried a counter by now
 */
export function judgeReading({
  instrument,
  value,
  history,
  rangeLow = instrument.rangeLow,
  rangeHigh = instrument.rangeHigh,
  lastQueried = null,
  expected = null,
}: {
  readonly instrument: Instrument;
  readonly value: number;
  readonly history: readonly number[];
  readonly rangeLow?: number | undefined;
  readonly rangeHigh?: number | undefined;
  readonly lastQueried?: number | null;
  readonly expected?: number | null;
}): Judgement {
  const band = bandOf(instrument, history, expected) ?? rangeBand(rangeLow, rangeHigh);
  if (inside(band, value)) return { kind: 'fine' };
  if (lastQueried !== null && agree(instrument, value, lastQueried)) return { kind: 'realChange' };
  const { reference } = band;
  const slip = likeliest(
    likelySlips(instrument, value).filter((meant) => inside(band, meant.value)),
    reference,
  );
  return {
    kind: 'query',
    percentOff:
      reference === null || reference === 0
        ? null
        : ((value - reference) / Math.abs(reference)) * 100,
    candidate: slip?.value ?? null,
    cause: slip?.cause ?? null,
  };
}

/** The first cause that explains it, and of that the value nearest to the reference. */
function likeliest(meant: readonly Meant[], reference: number | null): Meant | undefined {
  const [first, ...others] = meant;
  if (first === undefined || reference === null) return first;
  return others
    .filter(({ cause }) => cause === first.cause)
    .reduce(
      (best, other) =>
        Math.abs(other.value - reference) < Math.abs(best.value - reference) ? other : best,
      first,
    );
}

/** Values that raise no question; `reference` is what they are held against. */
interface Band {
  readonly reference: number | null;
  readonly low: number;
  readonly high: number;
}

function bandOf(
  instrument: Instrument,
  history: readonly number[],
  expected: number | null,
): Band | null {
  const { quantity, resolution } = instrument;
  // A rate sits about zero: no share of it means anything.
  if (quantity === 'machRate' || quantity === 'altitudeRate') return null;
  if (quantity === 'fuelUsed' || quantity === 'fuelRemaining' || quantity === 'tankFuel') {
    const last = history.at(-1);
    if (last === undefined || expected === null) return null;
    const half = Math.max(
      COUNTER_BAND_FRACTION * Math.abs(expected - last),
      COUNTER_BAND_STEPS * resolution,
    );
    return { reference: expected, low: expected - half, high: expected + half };
  }
  const recent = history.slice(-READINGS_IN_REFERENCE);
  if (recent.length === 0) return null;
  const reference = median(recent);
  const deviation = median(recent.map((reading) => Math.abs(reading - reference)));
  const half = halfBand(instrument, reference, deviation);
  return { reference, low: reference - half, high: reference + half };
}

function halfBand({ resolution }: Instrument, reference: number, deviation: number): number {
  return Math.max(
    BAND_FRACTION * Math.abs(reference),
    BAND_DEVIATIONS * deviation,
    BAND_STEPS * resolution,
  );
}

function rangeBand(low = -Infinity, high = Infinity): Band {
  return { reference: null, low, high };
}

function agree(instrument: Instrument, value: number, other: number): boolean {
  return Math.abs(value - other) <= halfBand(instrument, other, 0);
}

function inside({ low, high }: Band, value: number): boolean {
  const rounding = 1e-9 * Math.max(1, Math.abs(value));
  return value >= low - rounding && value <= high + rounding;
}
