import type { EntryId, EpochMs } from '../../record/brand.ts';
import { valueOnLines } from './lines.ts';

/** One look at a flow, corrected, in SI. */
export interface FlowLook {
  readonly at: EpochMs;
  readonly by: readonly EntryId[];
  readonly kgPerS: number;
  readonly standardUncertaintyKgPerS: number;
}

/** Fuel by a gauge that was looked at now and then. */
export interface FlowIntegral {
  readonly kg: number;
  /** Of the displays: each look counts for the time it stands for. */
  readonly displaysKg: number;
  /** Of what the flow did while nobody looked. */
  readonly gapsKg: number;
  readonly longestGapS: number;
  readonly by: readonly EntryId[];
}

/**
 * Straight lines between looks, held outside them. Between two looks the flow lies between what they show; where
 * something was logged that changes it, anywhere between the least and the greatest that was read.
 *
 * @param looks in order of time
 * @param bends instants at which the flow may have changed, in order of time
 * @returns null without a look
 */
export function flowIntegral(
  looks: readonly FlowLook[],
  [from, to]: readonly [from: EpochMs, to: EpochMs],
  bends: readonly EpochMs[],
): FlowIntegral | null {
  if (looks.length === 0 || to <= from) return null;
  const flows = looks.map(({ at, kgPerS }) => ({ at, value: kgPerS }));
  const spread = spreadOf(looks.map(({ kgPerS }) => kgPerS));
  const stands = new Map<number, number>();
  const times = looks.map(({ at }) => at);
  const inside = times.filter((at) => at > from && at < to);
  const corners = [from, ...inside, to];
  let kg = 0;
  let gaps = 0;
  let longestGapS = 0;
  for (const [place, end] of corners.entries()) {
    const start = corners[place - 1];
    if (start === undefined || end === start) continue;
    const seconds = (end - start) / 1000;
    const [a, b] = [valueOnLines(flows, start), valueOnLines(flows, end)];
    const isBent = isWithin(bends, start, end) || isHeld(looks, start, end);
    kg += ((a + b) / 2) * seconds;
    // Anywhere inside a range is range/√12.
    gaps += (((isBent ? spread : Math.abs(b - a)) * seconds) / Math.sqrt(12)) ** 2;
    longestGapS = Math.max(longestGapS, seconds);
    for (const corner of [start, end]) {
      const nearest = nearestTo(times, corner);
      stands.set(nearest, (stands.get(nearest) ?? 0) + seconds / 2);
    }
  }
  const counted = looks.map((look, index) => ({ look, seconds: stands.get(index) ?? 0 }));
  return {
    kg,
    displaysKg: Math.hypot(
      ...counted.map(({ look, seconds }) => look.standardUncertaintyKgPerS * seconds),
    ),
    gapsKg: Math.sqrt(gaps),
    longestGapS,
    by: [...new Set(counted.flatMap(({ look, seconds }) => (seconds > 0 ? look.by : [])))],
  };
}

function spreadOf(flows: readonly number[]): number {
  const [least, greatest] = flows.reduce(
    ([low, high], flow) => [Math.min(low, flow), Math.max(high, flow)],
    [Infinity, -Infinity],
  );
  return greatest - least;
}

/** Before the first look or after the last: the flow is held, and nothing bounds it but what was read at all. */
function isHeld(looks: readonly FlowLook[], start: EpochMs, end: EpochMs): boolean {
  const [first] = looks;
  const last = looks.at(-1);
  return first === undefined || last === undefined || start < first.at || end > last.at;
}

function isWithin(instants: readonly EpochMs[], start: EpochMs, end: EpochMs): boolean {
  const next = instants[firstAtOrAfter(instants, start + 1)];
  return next !== undefined && next < end;
}

function nearestTo(instants: readonly EpochMs[], at: EpochMs): number {
  const after = firstAtOrAfter(instants, at);
  const [before, next] = [instants[after - 1], instants[after]];
  if (next === undefined) return after - 1;
  return before !== undefined && at - before < next - at ? after - 1 : after;
}

function firstAtOrAfter(instants: readonly EpochMs[], at: number): number {
  let low = 0;
  let high = instants.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if ((instants[middle] ?? Infinity) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}
