/** What a recorded channel is read as. `other` is drawn and nothing more. */
export const CHANNEL_USES = [
  'fuelFlow',
  'suctionFuelFlow',
  'mach',
  'pressureAltitude',
  'staticAirTemp',
  'totalAirTemp',
  'other',
] as const;
export type ChannelUse = (typeof CHANNEL_USES)[number];

export interface RecorderChannel {
  readonly name: string;
  readonly use: ChannelUse;
  /** Engine number of a fuel flow; null for every other. */
  readonly engine: number | null;
  /** SI, and as recorded for `other`; NaN where nothing was recorded. */
  readonly values: Float32Array;
}

/** Recorded parameters by the recorder's own clock: UTC milliseconds that never fall. */
export interface RecorderTrace {
  readonly timesMs: Float64Array;
  readonly channels: readonly RecorderChannel[];
}

/**
 * The channels that are reckoned with, a mean each second from `startMs` on: however fast a recorder wrote, no result of a
 * cruise rests on less than a second. NaN where nothing was recorded for longer than a short gap.
 */
export interface EvenTrace {
  readonly startMs: number;
  /** kg/s, a row an engine, by engine number from 1. */
  readonly engines: readonly Float64Array[];
  readonly suctionUnit: Float64Array | null;
  readonly mach: Float64Array | null;
  readonly pressureAltitudeM: Float64Array | null;
  readonly staticTemperatureK: Float64Array | null;
  readonly seconds: number;
  /** Middle of the time between two rows of the recorder. */
  readonly rowEveryS: number;
}

/** A recorder that writes a row every half minute still draws a line. */
const LONGEST_GAP_S = 30;
/** Longer than any flight: a time that is so far off is a slip of the recorder's clock. */
const LONGEST_S = 7 * 86_400;

/** @returns null without a row, or where the times span more than a week */
export function evenTrace(trace: RecorderTrace): EvenTrace | null {
  const { timesMs } = trace;
  const first = timesMs[0];
  const last = timesMs.at(-1);
  if (first === undefined || last === undefined) return null;
  const startMs = Math.floor(first / 1000) * 1000;
  const seconds = Math.floor((last - startMs) / 1000) + 1;
  if (seconds > LONGEST_S) return null;
  const even = (use: ChannelUse, engine: number | null = null): Float64Array | null => {
    const channel = trace.channels.find((one) => one.use === use && one.engine === engine);
    return channel === undefined ? null : everySecond(timesMs, channel.values, startMs, seconds);
  };
  const engineCount = Math.max(0, ...trace.channels.map(({ engine }) => engine ?? 0));
  const engines = Array.from({ length: engineCount }, (_, index) => even('fuelFlow', index + 1));
  const mach = even('mach');
  const total = even('totalAirTemp');
  return {
    startMs,
    seconds,
    engines: engines.every((values) => values !== null) ? engines : [],
    suctionUnit: even('suctionFuelFlow'),
    mach,
    pressureAltitudeM: even('pressureAltitude'),
    staticTemperatureK: even('staticAirTemp') ?? fromTotal(total, mach),
    rowEveryS: timesMs.length > 1 ? (last - first) / 1000 / (timesMs.length - 1) : 1,
  };
}

/** Sum of the engines, kg/s; NaN in a second in which one of them was not recorded. */
export function totalFlowOf({ engines, seconds }: EvenTrace): Float64Array {
  const total = new Float64Array(seconds).fill(engines.length === 0 ? Number.NaN : 0);
  for (const engine of engines) {
    for (let second = 0; second < seconds; second += 1) {
      total[second] = (total[second] ?? 0) + (engine[second] ?? Number.NaN);
    }
  }
  return total;
}

function everySecond(
  timesMs: Float64Array,
  values: Float32Array,
  startMs: number,
  seconds: number,
): Float64Array {
  const sums = new Float64Array(seconds);
  const counts = new Uint32Array(seconds);
  for (let row = 0; row < timesMs.length; row += 1) {
    const value = values[row] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const second = Math.floor(((timesMs[row] ?? 0) - startMs) / 1000);
    sums[second] = (sums[second] ?? 0) + value;
    counts[second] = (counts[second] ?? 0) + 1;
  }
  for (let second = 0; second < seconds; second += 1) {
    const count = counts[second] ?? 0;
    sums[second] = count === 0 ? Number.NaN : (sums[second] ?? 0) / count;
  }
  return bridged(sums);
}

/** Straight lines over short gaps; a long one stays empty. */
function bridged(values: Float64Array): Float64Array {
  let known = -1;
  for (let at = 0; at < values.length; at += 1) {
    const value = values[at] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const before = values[known] ?? Number.NaN;
    if (known >= 0 && at - known > 1 && at - known <= LONGEST_GAP_S) {
      for (let gap = known + 1; gap < at; gap += 1) {
        values[gap] = before + ((value - before) * (gap - known)) / (at - known);
      }
    }
    known = at;
  }
  return values;
}

/** As on the sheet: the probe's own recovery is in its calibration. */
function fromTotal(total: Float64Array | null, mach: Float64Array | null): Float64Array | null {
  if (total === null || mach === null) return null;
  return total.map((value, second) => value / (1 + 0.2 * (mach[second] ?? Number.NaN) ** 2));
}
