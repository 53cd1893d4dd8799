import type { PointResult, ReductionFigure } from '../../../analysis/results.ts';

/** One value axis under all points, in per cent, zero always on it. */
export interface PointScale {
  readonly lowPct: number;
  readonly highPct: number;
}

export function figureOf(point: PointResult): ReductionFigure | null {
  const { result } = point;
  return result.kind === 'valid' || result.kind === 'indicative' ? result.fuel : null;
}

export function pointScaleOf(
  points: readonly PointResult[],
  targetFraction: number | undefined,
): PointScale {
  const figures = points.flatMap((point) => figureOf(point) ?? []);
  const low = Math.min(0, ...figures.map(({ interval95 }) => 100 * interval95.low));
  const high = Math.max(
    10,
    100 * (targetFraction ?? 0),
    ...figures.map(({ interval95 }) => 100 * interval95.high),
  );
  return { lowPct: 10 * Math.floor(low / 10), highPct: 5 * Math.ceil((high + 1) / 5) };
}

/** Place of a value on the axis, as a share of its length. */
export function shareOf(scale: PointScale, valuePct: number): number {
  return (valuePct - scale.lowPct) / (scale.highPct - scale.lowPct);
}

export function ticksOf({ lowPct, highPct }: PointScale): readonly number[] {
  const ticks: number[] = [];
  for (let value = lowPct; value <= highPct; value += 10) {
    ticks.push(value);
  }
  return ticks;
}
