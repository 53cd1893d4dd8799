/** One line of the table: what was promised, measured beside its yardstick in the same run. */
export interface Ratio {
  readonly promise: string;
  readonly oursMs: number;
  readonly yardstick: string;
  readonly yardstickMs: number;
  readonly atMost: number;
}

/**
 * Best of several runs of both, taken turn by turn so that a busy machine slows both alike.
 * @returns milliseconds
 */
export function bestOf(
  runs: number,
  ours: () => unknown,
  yardstick: () => unknown,
): { readonly oursMs: number; readonly yardstickMs: number } {
  let oursMs = Number.POSITIVE_INFINITY;
  let yardstickMs = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run += 1) {
    yardstickMs = Math.min(yardstickMs, timed(yardstick));
    oursMs = Math.min(oursMs, timed(ours));
  }
  return { oursMs, yardstickMs };
}

function timed(work: () => unknown): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

/** The value that so large a share of all values does not exceed: 0.5 is the median. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const value = sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)];
  if (value === undefined) throw new RangeError('there must be a value');
  return value;
}

export function printed({ promise, oursMs, yardstick, yardstickMs, atMost }: Ratio): string {
  const ratio = oursMs / yardstickMs;
  const verdict = ratio <= atMost ? 'holds' : 'DOES NOT HOLD';
  return `${promise.padEnd(58)} ${oursMs.toFixed(2).padStart(9)} ms  ${yardstick.padEnd(46)} ${yardstickMs.toFixed(2).padStart(9)} ms  ratio ${ratio.toFixed(2)} (at most ${atMost}) ${verdict}`;
}
