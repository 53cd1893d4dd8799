import { UNKNOWN_WEIGHT_ELASTICITY } from '../../aero/baseline.ts';
import { mean, sampleStandardDeviation } from '../../aero/statistics/descriptive.ts';
import { burstMeans } from '../../aero/statistics/correlated.ts';
import type { ReducedReading } from '../reduceReading.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** Scatter of single readings about the means of their runs. */
export interface Scatter {
  readonly standardDeviationKgPerS: number;
  readonly degreesOfFreedom: number;
}

/** Scatter within runs, pooled: each run gives one reading less than it has. */
export function pooledScatter(
  terms: SheetTerms,
  runs: readonly (readonly ReducedReading[])[],
): Scatter | null {
  const { elasticity } = terms.borrowed?.elasticity ?? UNKNOWN_WEIGHT_ELASTICITY;
  let squares = 0;
  let degreesOfFreedom = 0;
  for (const readings of runs) {
    if (readings.length < 2) continue;
    const flows = inBursts(readings, atOneWeight(readings, elasticity));
    if (flows.length < 2) continue;
    squares += sampleStandardDeviation(flows) ** 2 * (flows.length - 1);
    degreesOfFreedom += flows.length - 1;
  }
  return degreesOfFreedom === 0
    ? null
    : { standardDeviationKgPerS: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

/**
 * Readings within half a minute are a third of a phugoid apart at most, and share its phase, the throttle and the gust: they
 * count as one (a choice; a burst is too short to show how far its readings hang together).
 */
const BURST_S = 30;

function inBursts(
  readings: readonly ReducedReading[],
  values: readonly number[],
): readonly number[] {
  return burstMeans({ timesS: readings.map(({ at }) => at / 1000), values, apartS: BURST_S });
}

/** How many independent looks these readings are worth. */
export function looksOf(readings: readonly ReducedReading[]): number {
  return inBursts(
    readings,
    readings.map(({ flow }) => flow.kgPerS),
  ).length;
}

/** Flow falls as fuel burns off, which is no scatter. */
function atOneWeight(readings: readonly ReducedReading[], elasticity: number): readonly number[] {
  const weightN = mean(readings.map((reading) => reading.weightAtCardN));
  return readings.map(
    ({ flowAtCardKgPerS, weightAtCardN }) =>
      flowAtCardKgPerS * (weightN / weightAtCardN) ** elasticity,
  );
}
