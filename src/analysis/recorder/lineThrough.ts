import { effectiveSampleSize } from '../../aero/statistics/descriptive.ts';

/** A straight line through even seconds of a recording, with doubts that allow for readings that hang together. */
export interface RecordedLine {
  readonly mean: number;
  readonly meanUncertainty: number;
  readonly perS: number;
  readonly perSUncertainty: number;
}

/** Fewer seconds than this say nothing about how they hang together. */
const FEWEST_S = 20;

/**
 * Least squares over the seconds [from, to). First-order correlation of the residuals stands for wander that neighbouring
 * seconds share: n seconds are worth n (1 − r)/(1 + r) (the formula from memory).
 *
 * @returns null with fewer than 20 seconds, or where one of them is missing
 */
export function lineThrough(values: Float64Array, from: number, to: number): RecordedLine | null {
  const count = to - from;
  if (count < FEWEST_S || from < 0 || to > values.length) return null;
  const middle = (count - 1) / 2;
  let sum = 0;
  let moment = 0;
  for (let at = 0; at < count; at += 1) {
    const value = values[from + at] ?? Number.NaN;
    sum += value;
    moment += (at - middle) * value;
  }
  if (Number.isNaN(sum)) return null;
  const mean = sum / count;
  const spread = (count * (count * count - 1)) / 12;
  const perS = moment / spread;
  let squares = 0;
  let products = 0;
  let before = 0;
  for (let at = 0; at < count; at += 1) {
    const residual = (values[from + at] ?? 0) - mean - perS * (at - middle);
    squares += residual * residual;
    products += at === 0 ? 0 : residual * before;
    before = residual;
  }
  const lag1 = squares === 0 ? 0 : Math.min(0.99, Math.max(0, products / squares));
  const worth = Math.max(3, effectiveSampleSize({ count, lag1 }));
  const deviation = Math.sqrt(squares / Math.max(1, count - 2));
  return {
    mean,
    meanUncertainty: deviation / Math.sqrt(worth),
    perS,
    perSUncertainty: (deviation * Math.sqrt(12 / worth)) / count,
  };
}
