import type { LiveEstimate } from '../../analysis/results.ts';

/** A reading that gave a figure, struck or not. */
export type Given = Extract<LiveEstimate, { readonly kind: 'value' | 'struck' }>;

export interface PlotScale {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
}

/** Zero is always on the axis; it grows in tens of per cent with what it must hold. */
export function plotScale(
  given: readonly Given[],
  target: number | null,
  predicted: { readonly fraction: number; readonly half: number | null } | null,
): PlotScale {
  const ends = given.flatMap(({ fuel }) => [fuel.interval95.low, fuel.interval95.high]);
  if (predicted !== null) {
    ends.push(predicted.fraction + (predicted.half ?? 0));
  }
  const step = 0.1;
  const high = Math.max(0.4, Math.ceil(Math.max(0, target ?? 0, ...ends) / step) * step);
  const low = Math.min(0, Math.floor(Math.min(0, ...ends) / step) * step);
  const count = Math.round((high - low) / step);
  const every = count > 6 ? 2 : 1;
  const ticks = Array.from({ length: count + 1 }, (_, index) =>
    Number((low + index * step).toFixed(1)),
  ).filter((tick) => Math.round(tick / step) % every === 0);
  return { low, high, ticks };
}

/** Width of two figures of the axis and of the space between them, in mm at text size 1. */
const LABEL_MM = 6.4;

/** The ticks that are named: each clear of the one before it, of the last one and of the target, whose figure comes first. */
export function clearTicks(
  { low, high, ticks }: PlotScale,
  target: number | null,
  widthMm: number,
): readonly number[] {
  const apart = (LABEL_MM / widthMm) * (high - low);
  const inside = (value: number): number =>
    Math.min(high - apart / 2, Math.max(low + apart / 2, value));
  const isClear = (a: number, b: number): boolean => Math.abs(inside(a) - inside(b)) >= apart;
  const named: number[] = [];
  for (const tick of [...ticks.slice(0, 1), ...ticks.slice(-1), ...ticks.slice(1, -1)]) {
    const others = target === null ? named : [...named, target];
    if (others.every((other) => isClear(tick, other))) {
      named.push(tick);
    }
  }
  return named.toSorted((a, b) => a - b);
}

export function acrossPercent(scale: PlotScale, fraction: number): number {
  const share = (fraction - scale.low) / (scale.high - scale.low);
  return Math.min(100, Math.max(0, share * 100));
}

/** Unbroken stretches: a struck reading, and a gap of more than two reading intervals, part them. */
export function stretches(
  history: readonly LiveEstimate[],
  gapMs: number,
): readonly (readonly Given[])[] {
  const parts: Given[][] = [];
  let open: Given[] | null = null;
  for (const each of history) {
    if (each.kind !== 'value') {
      open = null;
      continue;
    }
    const last: Given | undefined = open?.at(-1);
    if (open === null || (last !== undefined && each.at - last.at > gapMs)) {
      open = [];
      parts.push(open);
    }
    open.push(each);
  }
  return parts;
}
