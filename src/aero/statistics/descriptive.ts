import { ready, requireFinite, unavailable, type Outcome } from '../outcome.ts';

/** Fewer readings than this cannot show how they hang together in time. */
export const FEWEST_FOR_AUTOCORRELATION = 10;

/** Arithmetic mean. @throws RangeError without values or when one is not finite */
export function mean(values: readonly number[]): number {
  requireValues(values, 1);
  return sum(values) / values.length;
}

/** Standard deviation with n − 1. @throws RangeError below two values or when one is not finite */
export function sampleStandardDeviation(values: readonly number[]): number {
  requireValues(values, 2);
  return Math.sqrt(squaredDeviations(values) / (values.length - 1));
}

/** Middle value, or the mean of the middle two. @throws RangeError without values */
export function median(values: readonly number[]): number {
  requireValues(values, 1);
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.slice(Math.ceil(sorted.length / 2) - 1, Math.floor(sorted.length / 2) + 1);
  return mean(middle);
}

/**
 * Correlation of each reading with the one before it.
 *
 * @returns `tooFewReadings` below ten, `noScatter` when all are equal
 */
export function lag1Autocorrelation(
  values: readonly number[],
): Outcome<number, 'tooFewReadings' | 'noScatter'> {
  if (values.length < FEWEST_FOR_AUTOCORRELATION) return unavailable('tooFewReadings');
  const centre = mean(values);
  const scatter = squaredDeviations(values);
  if (scatter === 0) return unavailable('noScatter');
  let previous: number | undefined;
  let product = 0;
  for (const value of values) {
    if (previous !== undefined) product += (previous - centre) * (value - centre);
    previous = value;
  }
  return ready(product / scatter);
}

/**
 * How many independent readings `count` correlated ones are worth, n (1 − r)/(1 + r), for many readings
 * with first-order correlation (the formula from memory).
 *
 * @param lag1 correlation of neighbours, above −1 and below 1
 * @throws RangeError outside
 */
export function effectiveSampleSize({
  count,
  lag1,
}: {
  readonly count: number;
  readonly lag1: number;
}): number {
  if (!(Number.isInteger(count) && count > 0)) {
    throw new RangeError(`count must be a whole number above 0, got ${count}`);
  }
  if (!(lag1 > -1 && lag1 < 1)) {
    throw new RangeError(`correlation must be above -1 and below 1, got ${lag1}`);
  }
  return (count * (1 - lag1)) / (1 + lag1);
}

function squaredDeviations(values: readonly number[]): number {
  const centre = mean(values);
  return sum(values.map((value) => (value - centre) ** 2));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function requireValues(values: readonly number[], fewest: number): void {
  if (values.length < fewest) {
    throw new RangeError(`at least ${fewest} values are needed, got ${values.length}`);
  }
  for (const value of values) requireFinite('value', value);
}
