/** Least and greatest value in each of even parts of a time; NaN where nothing was recorded. */
export interface Envelope {
  readonly low: Float32Array;
  readonly high: Float32Array;
}

const BLOCK = 64;

/**
 * Draws any part of millions of rows with as many points as it has pixels: blocks of 64 rows know their least and greatest,
 * so a pixel costs its blocks and two edges.
 */
export function envelopes(
  timesMs: Float64Array,
  values: Float32Array,
): (fromMs: number, toMs: number, parts: number) => Envelope {
  const blocks = Math.ceil(values.length / BLOCK);
  const lows = new Float32Array(blocks);
  const highs = new Float32Array(blocks);
  for (let block = 0; block < blocks; block += 1) {
    const found = over(block * BLOCK, Math.min(values.length, (block + 1) * BLOCK));
    lows[block] = found.low;
    highs[block] = found.high;
  }
  return (fromMs, toMs, parts) => {
    const low = new Float32Array(parts);
    const high = new Float32Array(parts);
    let from = firstRowAt(timesMs, fromMs);
    for (let part = 0; part < parts; part += 1) {
      const to = firstRowAt(timesMs, fromMs + ((part + 1) * (toMs - fromMs)) / parts);
      const found = byBlocks(from, to);
      low[part] = found.low;
      high[part] = found.high;
      from = to;
    }
    return { low, high };
  };

  function over(from: number, to: number): { low: number; high: number } {
    let low = Number.NaN;
    let high = Number.NaN;
    for (let row = from; row < to; row += 1) {
      const value = values[row] ?? Number.NaN;
      if (!(value >= low)) low = Number.isNaN(value) ? low : value;
      if (!(value <= high)) high = Number.isNaN(value) ? high : value;
    }
    return { low, high };
  }

  function byBlocks(from: number, to: number): { low: number; high: number } {
    const first = Math.ceil(from / BLOCK);
    const last = Math.floor(to / BLOCK);
    if (last <= first) return over(from, to);
    let { low, high } = over(from, first * BLOCK);
    const end = over(last * BLOCK, to);
    const take = (lower: number, higher: number): void => {
      if (!(lower >= low)) low = Number.isNaN(lower) ? low : lower;
      if (!(higher <= high)) high = Number.isNaN(higher) ? high : higher;
    };
    for (let block = first; block < last; block += 1) {
      take(lows[block] ?? Number.NaN, highs[block] ?? Number.NaN);
    }
    take(end.low, end.high);
    return { low, high };
  }
}

/** First row not before an instant, by halving. */
function firstRowAt(timesMs: Float64Array, atMs: number): number {
  let [low, high] = [0, timesMs.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((timesMs[middle] ?? 0) < atMs) low = middle + 1;
    else high = middle;
  }
  return low;
}
