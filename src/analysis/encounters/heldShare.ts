import { epochMs, type EpochMs } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import { items } from '../../record/trail.ts';
import { laminarAt } from '../laminar.ts';

/** Laminar share of the tapped area over a time, each state held until the next call on its wing. */
export interface HeldShare {
  readonly byAreaFraction: number;
  /** Time mean of the share of the area that somebody had called. */
  readonly observedFraction: number;
}

/** @returns null where nothing was called by then, or the time is empty */
export function heldShare(state: FlightState, from: EpochMs, to: EpochMs): HeldShare | null {
  const cuts = [from, ...callsBetween(state, from, to), to];
  let seenMs = 0;
  let laminarMs = 0;
  let observedMs = 0;
  for (const [place, start] of cuts.entries()) {
    const durationMs = (cuts[place + 1] ?? start) - start;
    const share = laminarAt(state, start);
    if (durationMs <= 0 || share.kind === 'notYet') continue;
    seenMs += durationMs;
    laminarMs += durationMs * share.byAreaFraction;
    observedMs += durationMs * share.observedFraction;
  }
  if (seenMs === 0) return null;
  return { byAreaFraction: laminarMs / seenMs, observedFraction: observedMs / (to - from) };
}

function callsBetween(state: FlightState, from: EpochMs, to: EpochMs): readonly EpochMs[] {
  const times = new Set<number>();
  for (const { at } of items(state.wingCalls)) if (at > from && at < to) times.add(at);
  return [...times].sort((a, b) => a - b).map(epochMs);
}
