/** A value with its intervals, in the unit of the plot. */
export interface PlotFigure {
  readonly value: number;
  readonly low95: number;
  readonly high95: number;
  readonly low68: number;
  readonly high68: number;
  /** Struck, indicative or otherwise not to be counted. */
  readonly isHollow: boolean;
}

/** Half of a 68 % interval beside half of a 95 % one (normal distribution). */
const SHARE_68_OF_95 = 1 / 1.959964;

export function figureFrom95(
  value: number,
  { low, high }: { readonly low: number; readonly high: number },
  { scale = 1, isHollow = false } = {},
): PlotFigure {
  return {
    value: scale * value,
    low95: scale * low,
    high95: scale * high,
    low68: scale * (value - SHARE_68_OF_95 * (value - low)),
    high68: scale * (value + SHARE_68_OF_95 * (high - value)),
    isHollow,
  };
}

/** From one standard uncertainty; 95 % is taken as twice it, as the reports of the trade do. */
export function figureFromU(
  value: number,
  standardUncertainty: number,
  { scale = 1, isHollow = false } = {},
): PlotFigure {
  const u = Math.abs(scale) * standardUncertainty;
  const at = scale * value;
  return {
    value: at,
    low95: at - 2 * u,
    high95: at + 2 * u,
    low68: at - u,
    high68: at + u,
    isHollow,
  };
}
