import { ready, requirePositive, unavailable, type Outcome } from '../outcome.ts';
import { effectiveSampleSize, lag1Autocorrelation, mean } from './descriptive.ts';

/*
 * Readings seconds apart share one phugoid, throttle and gust: their mean is known less well than s/√n.
 * Check values: test/reference/uncertainty.json
 */

/** A mean whose doubt allows for readings that hang together. */
export interface CorrelatedMean {
  readonly mean: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  /** How many independent readings these are worth; never more than there are. */
  readonly effectiveCount: number;
}

/**
 * Mean of readings at even intervals, first-order correlation taken from the readings themselves.
 *
 * @returns `tooFewReadings` below ten, where the correlation cannot be seen: then count a burst as one
 *   reading with `burstMeans`; `tooCorrelated` where all are worth no more than two
 * @throws RangeError when a value is not finite
 */
export function correlatedMean(
  values: readonly number[],
): Outcome<CorrelatedMean, 'tooFewReadings' | 'noScatter' | 'tooCorrelated'> {
  const lag1 = lag1Autocorrelation(values);
  if (lag1.kind === 'unavailable') return lag1;
  // Readings that seem to take turns are not taken for more than they are.
  const held = Math.max(0, lag1.value);
  const count = values.length;
  const effectiveCount = effectiveSampleSize({ count, lag1: held });
  if (effectiveCount <= 2) return unavailable('tooCorrelated');
  const middle = mean(values);
  const squares = values.reduce((total, value) => total + (value - middle) ** 2, 0);
  // The mean follows what the readings share, so squares about it are short by a whole effective reading.
  const variance = squares / (count * (1 - 1 / effectiveCount));
  return ready({
    mean: middle,
    standardUncertainty: Math.sqrt(variance / effectiveCount),
    degreesOfFreedom: effectiveCount - 1,
    effectiveCount,
  });
}

/**
 * One mean a burst, in order of time. A burst holds what lies within `apartS` of its first reading.
 *
 * @throws RangeError for lists of two lengths, no reading, or an interval not above zero
 */
export function burstMeans({
  timesS,
  values,
  apartS,
}: {
  readonly timesS: readonly number[];
  readonly values: readonly number[];
  readonly apartS: number;
}): readonly number[] {
  requirePositive('interval', apartS);
  if (timesS.length !== values.length || timesS.length === 0) {
    throw new RangeError(`${timesS.length} times must have as many values, got ${values.length}`);
  }
  const bursts: { readonly startS: number; readonly values: number[] }[] = [];
  const inOrder = timesS
    .map((timeS, k) => ({ timeS, value: values[k] ?? Number.NaN }))
    .toSorted((a, b) => a.timeS - b.timeS);
  for (const { timeS, value } of inOrder) {
    const last = bursts.at(-1);
    if (last !== undefined && timeS - last.startS < apartS) last.values.push(value);
    else bursts.push({ startS: timeS, values: [value] });
  }
  return bursts.map((burst) => mean(burst.values));
}
