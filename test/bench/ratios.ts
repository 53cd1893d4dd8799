/** One line of the table: what was promised, measured beside its yardstick in the same run. */
export interface Ratio {
  readonly promise: string;
  readonly oursMs: number;
  readonly yardstick: string;
  readonly yardstickMs: number;
  readonly atMost: number;
}

/** One line of the table that has no yardstick but a limit. */
export interface Counted {
  readonly promise: string;
  readonly found: number;
  /** What was found, in words; empty when nothing was. */
  readonly words: string;
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

export function printed(line: Ratio | Counted): string {
  return 'found' in line ? printedCount(line) : printedRatio(line);
}

function printedRatio({ promise, oursMs, yardstick, yardstickMs, atMost }: Ratio): string {
  const ratio = oursMs / yardstickMs;
  return `${promise.padEnd(66)} ${oursMs.toFixed(2).padStart(9)} ms  ${yardstick.padEnd(46)} ${yardstickMs.toFixed(2).padStart(9)} ms  ratio ${ratio.toFixed(2)} (at most ${atMost}) ${verdict(ratio, atMost)}`;
}

function printedCount({ promise, found, words, atMost }: Counted): string {
  return `${promise.padEnd(66)} ${String(found).padStart(9)} (at most ${atMost}) ${verdict(found, atMost)} ${words}`.trimEnd();
}

function verdict(found: number, atMost: number): string {
  return found <= atMost ? 'holds' : 'DOES NOT HOLD';
}
