/** Means and variances over any window of a series in constant time, from running sums. */
export interface Windows {
  /** Mean and variance over [from, to) in seconds, parts of a second in proportion; null where half is missing. */
  readonly over: (from: number, to: number) => { mean: number; variance: number } | null;
}

export function windowsOf(values: Float64Array): Windows {
  const count = values.length;
  // About a value of the series: squares of a large level would drown a small scatter.
  const level = values.find((value) => !Number.isNaN(value)) ?? 0;
  const sums = new Float64Array(count + 1);
  const squares = new Float64Array(count + 1);
  const known = new Float64Array(count + 1);
  for (let at = 0; at < count; at += 1) {
    const value = (values[at] ?? Number.NaN) - level;
    const isKnown = !Number.isNaN(value);
    sums[at + 1] = (sums[at] ?? 0) + (isKnown ? value : 0);
    squares[at + 1] = (squares[at] ?? 0) + (isKnown ? value * value : 0);
    known[at + 1] = (known[at] ?? 0) + (isKnown ? 1 : 0);
  }
  const until = (running: Float64Array, at: number): number => {
    const whole = Math.floor(at);
    const before = running[whole] ?? 0;
    return before + (at - whole) * ((running[whole + 1] ?? before) - before);
  };
  return {
    over: (from, to) => {
      if (from < 0 || to > count || !(to > from)) return null;
      const had = until(known, to) - until(known, from);
      if (2 * had < to - from) return null;
      const mean = (until(sums, to) - until(sums, from)) / had;
      const square = (until(squares, to) - until(squares, from)) / had;
      return { mean: level + mean, variance: Math.max(0, square - mean * mean) };
    },
  };
}
