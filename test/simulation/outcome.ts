import type { FuelFigure } from '../../src/analysis/fuel/spanResults.ts';
import type { FlowFigure, Interval95, ReductionFigure } from '../../src/analysis/results.ts';

export const RESULTS = [
  'fuel',
  'drag',
  'net',
  'gross flow',
  'net flow',
  'live fuel',
  'live drag',
  'live net',
  'compared share',
  'compared flow',
  'span gross',
  'span net',
] as const;
export type Result = (typeof RESULTS)[number];

/** What stands behind an interval. */
export interface Found {
  /** Of its own run and of the baseline, where these make classes; else 0. */
  readonly readings: number;
  readonly baselineReadings: number;
  readonly method: string;
  /** Readings in it, or in its baseline, that are bad in truth. */
  readonly spoilt: number;
}

/** One interval beside the truth. */
export interface Outcome extends Found {
  readonly result: Result;
  readonly held: boolean;
  readonly errorOverU: number;
}

export function ofReduction(
  result: Result,
  { fraction, standardUncertainty, interval95 }: ReductionFigure,
  truth: number,
  found: Found,
): Outcome {
  const errorOverU = (fraction - truth) / standardUncertainty;
  return { ...found, result, held: holds(interval95, truth), errorOverU };
}

export function ofFlow(
  result: Result,
  { kgPerS, standardUncertaintyKgPerS, interval95KgPerS }: FlowFigure,
  truthKgPerS: number,
  found: Found,
): Outcome {
  const errorOverU = (kgPerS - truthKgPerS) / standardUncertaintyKgPerS;
  return { ...found, result, held: holds(interval95KgPerS, truthKgPerS), errorOverU };
}

export function ofFuel(
  result: Result,
  { kg, standardUncertaintyKg, interval95 }: FuelFigure,
  truthKg: number,
  found: Found,
): Outcome {
  const errorOverU = (kg - truthKg) / standardUncertaintyKg;
  return { ...found, result, held: holds(interval95, truthKg), errorOverU };
}

/** An interval given as its half, which is two standard uncertainties or a little more. */
export function ofHalf(
  result: Result,
  { error, half }: { readonly error: number; readonly half: number },
  found: Found,
): Outcome {
  return { ...found, result, held: Math.abs(error) <= half, errorOverU: (2 * error) / half };
}

function holds({ low, high }: Interval95, truth: number): boolean {
  return truth >= low && truth <= high;
}
