import { median } from '../../aero/statistics/descriptive.ts';
import type { EvenTrace } from './trace.ts';

/** Things that both the scribe's hand and the recorder mark. */
export type MarkKind = 'engineStart' | 'engineStop' | 'suctionFlow' | 'liftOff' | 'touchdown';

/** Seconds before and after that a step must hold on each side. */
const SIDE_S = 5;
/** A step stands out of the scatter by so many standard deviations, and is so much of the channel's range (a choice). */
const OVER_SCATTER = 8;
const SHARE_OF_RANGE = 0.04;
/** Well under idle, well over the noise of a channel that reads nothing (a choice). */
const RUNNING_SHARE = 0.1;
/** The aircraft has left the ground, and is clearly away from it. */
const OFF_GROUND_M = 15;
const AWAY_M = 150;

/** Seconds since the trace's start at which the recorder shows each kind of mark. */
export function recordedMarks(even: EvenTrace): Readonly<Record<MarkKind, readonly number[]>> {
  const turns = even.engines.map(runningTurns);
  const height = even.pressureAltitudeM === null ? null : groundTurns(even.pressureAltitudeM);
  return {
    engineStart: turns.flatMap(({ on }) => on),
    engineStop: turns.flatMap(({ off }) => off),
    suctionFlow: even.suctionUnit === null ? [] : stepsIn(even.suctionUnit),
    liftOff: height === null ? [] : [height.left],
    touchdown: height?.back === undefined ? [] : [height.back],
  };
}

/** Seconds at which a series goes to another level and stays: each the first second of the new level. */
export function stepsIn(values: Float64Array): readonly number[] {
  const differences = sampled(values, (at) => (values[at] ?? 0) - (values[at - 1] ?? Number.NaN));
  if (differences.length === 0) return [];
  // 1.4826 makes the median of the sizes the standard deviation of a normal scatter; a difference has two readings.
  const scatter = (1.4826 * median(differences.map(Math.abs))) / Math.SQRT2;
  const level = sampled(values, (at) => values[at] ?? Number.NaN).toSorted((a, b) => a - b);
  const range = (level.at(-1) ?? 0) - (level[0] ?? 0);
  const least = Math.max(OVER_SCATTER * scatter * Math.sqrt(2 / SIDE_S), SHARE_OF_RANGE * range);
  const rise = jumps(values);
  const found: number[] = [];
  for (let at = SIDE_S; at <= values.length - SIDE_S; at += 1) {
    const size = Math.abs(rise[at] ?? 0);
    if (!(size > least)) continue;
    const around = rise.subarray(Math.max(0, at - SIDE_S), at + SIDE_S + 1);
    const largest = around.reduce((most, one) => Math.max(most, Math.abs(one) || 0), 0);
    if (size === largest && at - (found.at(-1) ?? -SIDE_S) >= SIDE_S) found.push(at);
  }
  return found;
}

/** Mean of the seconds after less mean of the seconds before each. */
function jumps(values: Float64Array): Float64Array {
  const jump = new Float64Array(values.length).fill(Number.NaN);
  for (let at = SIDE_S; at <= values.length - SIDE_S; at += 1) {
    let sum = 0;
    for (let side = 0; side < SIDE_S; side += 1) {
      sum += (values[at + side] ?? Number.NaN) - (values[at - 1 - side] ?? Number.NaN);
    }
    jump[at] = sum / SIDE_S;
  }
  return jump;
}

/** At most ten thousand values at even places: a scatter needs no more. */
function sampled(values: Float64Array, of: (at: number) => number): readonly number[] {
  const every = Math.max(1, Math.floor(values.length / 10_000));
  const taken: number[] = [];
  for (let at = 1; at < values.length; at += every) {
    const value = of(at);
    if (!Number.isNaN(value)) taken.push(value);
  }
  return taken;
}

function runningTurns(flow: Float64Array): { on: readonly number[]; off: readonly number[] } {
  const flows = sampled(flow, (at) => flow[at] ?? Number.NaN).filter((value) => value > 0);
  if (flows.length === 0) return { on: [], off: [] };
  const least = RUNNING_SHARE * median(flows);
  const on: number[] = [];
  const off: number[] = [];
  for (let at = 1; at < flow.length; at += 1) {
    const before = flow[at - 1] ?? Number.NaN;
    const now = flow[at] ?? Number.NaN;
    if (before <= least && now > least) on.push(at);
    if (before > least && now <= least) off.push(at);
  }
  return { on, off };
}

/** Last second at the field's height before the flight and first after it; null where it never left. */
function groundTurns(heightM: Float64Array): { left: number; back?: number } | null {
  const start = heightM.findIndex((value) => !Number.isNaN(value));
  const ground = heightM[start] ?? Number.NaN;
  const away = heightM.findIndex((value) => value > ground + AWAY_M);
  if (start < 0 || away < 0) return null;
  let left = away;
  while (left > start && (heightM[left] ?? 0) > ground + OFF_GROUND_M) left -= 1;
  const end = heightM.findLastIndex((value) => !Number.isNaN(value));
  const field = heightM[end] ?? Number.NaN;
  const last = heightM.findLastIndex((value) => value > field + AWAY_M);
  if (last === end || end - last < 2) return { left };
  let back = last;
  while (back < end && (heightM[back] ?? 0) > field + OFF_GROUND_M) back += 1;
  return { left, back };
}
