/** A value axis that ends on its own ticks. */
export interface Axis {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  /** Places that its ticks need, and no more. */
  readonly decimals: number;
}

const STEPS = [1, 2, 5, 10] as const;

/**
 * Round steps of 1, 2 or 5 over the values, as many as `atMost` of them.
 *
 * @param withZero whether zero is on the axis even where no value is near it
 */
export function axisOver(
  values: readonly number[],
  { withZero, atMost }: { readonly withZero: boolean; readonly atMost: number },
): Axis {
  const all = withZero || values.length === 0 ? [0, ...values] : values;
  const lowest = Math.min(...all);
  const highest = Math.max(...all);
  const span = highest - lowest > 0 ? highest - lowest : Math.max(1, Math.abs(highest));
  const rough = span / Math.max(1, atMost - 1);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * (STEPS.find((each) => each * power >= rough * (1 - 1e-9)) ?? 10);
  const first = Math.floor(lowest / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(highest / step - 1e-9));
  return {
    low: first * step,
    high: last * step,
    ticks: Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step),
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}

/** Place of a value along the axis, as a share of its length. */
export function shareOf({ low, high }: Axis, value: number): number {
  return (value - low) / (high - low);
}
