import { epochMs, type EpochMs } from '../../../record/brand.ts';

/** The part of the flight that the axis shows; `to` is after `from`. */
export interface TimeWindow {
  readonly from: EpochMs;
  readonly to: EpochMs;
}

/** A window laid over a width: every lane and the axis share one. */
export interface TimeScale {
  readonly window: TimeWindow;
  readonly widthPx: number;
}

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
export const NARROWEST_MS = MINUTE_MS;
const WIDEST_MS = DAY_MS;

/** Steps that a person reads without arithmetic; nothing between them is ever used. */
export const TICK_STEPS_MIN = [1, 2, 5, 10, 30, 60] as const;

/** Ticks stand on whole steps from `zero`; the steps rise. */
export interface TickGrid {
  readonly zero: EpochMs;
  readonly stepsMs: readonly number[];
}

/** Whole minutes of the UTC day. */
export const UTC_GRID: TickGrid = {
  zero: epochMs(0),
  stepsMs: TICK_STEPS_MIN.map((minutes) => minutes * MINUTE_MS),
};

export function xOf({ window, widthPx }: TimeScale, at: EpochMs): number {
  return ((at - window.from) / (window.to - window.from)) * widthPx;
}

export function timeAt({ window, widthPx }: TimeScale, xPx: number): EpochMs {
  return epochMs(Math.round(window.from + (xPx / widthPx) * (window.to - window.from)));
}

/** The window that fits between the limits: slid inside where it can be, cut to them where it cannot. */
export function windowWithin(window: TimeWindow, limits: TimeWindow): TimeWindow {
  const widest = Math.max(NARROWEST_MS, Math.min(WIDEST_MS, limits.to - limits.from));
  const durationMs = Math.min(Math.max(window.to - window.from, NARROWEST_MS), widest);
  const latestStart = Math.max(limits.from, limits.to - durationMs);
  const from = Math.round(Math.min(Math.max(window.from, limits.from), latestStart));
  return { from: epochMs(from), to: epochMs(from + Math.round(durationMs)) };
}

/** Narrows (`factor` below 1) or widens the window; what stood at `about` stays under the finger. */
export function zoomed(
  window: TimeWindow,
  { factor, about, limits }: { factor: number; about: EpochMs; limits: TimeWindow },
): TimeWindow {
  const before = window.to - window.from;
  const durationMs = Math.min(Math.max(before * factor, NARROWEST_MS), WIDEST_MS);
  const share = (about - window.from) / before;
  const from = epochMs(Math.round(about - share * durationMs));
  return windowWithin({ from, to: epochMs(from + Math.round(durationMs)) }, limits);
}

export function panned(window: TimeWindow, byMs: number, limits: TimeWindow): TimeWindow {
  const shift = Math.round(byMs);
  return windowWithin(
    { from: epochMs(window.from + shift), to: epochMs(window.to + shift) },
    limits,
  );
}

/** The window moved just so far that `at` is inside it, with a margin of an eighth. */
export function revealing(window: TimeWindow, at: EpochMs, limits: TimeWindow): TimeWindow {
  const margin = (window.to - window.from) / 8;
  if (at < window.from + margin) {
    return panned(window, at - margin - window.from, limits);
  }
  if (at > window.to - margin) {
    return panned(window, at + margin - window.to, limits);
  }
  return window;
}

export interface Tick {
  readonly at: EpochMs;
  /** Labels thin out before they touch; the tick itself stays. */
  readonly labelled: boolean;
  readonly midnight: boolean;
}

/** Ticks on whole steps of the grid: the finest step whose labels still stand apart. */
export function ticks(
  { window, widthPx }: TimeScale,
  labelWidthPx: number,
  { zero, stepsMs }: TickGrid = UTC_GRID,
): { readonly stepMs: number; readonly ticks: readonly Tick[] } {
  const pxPerMs = widthPx / (window.to - window.from);
  const stepMs =
    stepsMs.find((step) => step * pxPerMs >= labelWidthPx) ?? stepsMs.at(-1) ?? MINUTE_MS;
  const labelEvery = Math.max(1, Math.ceil(labelWidthPx / (stepMs * pxPerMs)));
  const isOfDay = zero === UTC_GRID.zero;
  const found: Tick[] = [];
  const first = Math.ceil((window.from - zero) / stepMs);
  for (let at = zero + first * stepMs; at <= window.to; at += stepMs) {
    const midnight = isOfDay && at % DAY_MS === 0;
    // Hours thin out anew from each midnight, so that a day reads like the next.
    const count = (isOfDay ? at % DAY_MS : at - zero) / stepMs;
    found.push({ at: epochMs(at), labelled: midnight || count % labelEvery === 0, midnight });
  }
  return { stepMs, ticks: found };
}
