import type { Component } from '../../aero/statistics/uncertainty.ts';
import { withInterval } from '../reading/doubts.ts';
import type { FuelFigure } from './spanResults.ts';

/** A mass of fuel, the doubts that make its interval, and its share of `wholeKg`. */
export function fuelFigure(
  kg: number,
  wholeKg: number,
  components: readonly Component[],
): FuelFigure {
  const { standardUncertainty, interval95 } = withInterval(kg, components);
  return { kg, fraction: kg / wholeKg, standardUncertaintyKg: standardUncertainty, interval95 };
}
