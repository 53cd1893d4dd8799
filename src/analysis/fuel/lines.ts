import type { EpochMs } from '../../record/brand.ts';

/** A value seen at an instant. */
export interface Seen {
  readonly at: EpochMs;
  readonly value: number;
}

/** On straight lines between what was seen, held before the first and after the last; in order of time, at least one. */
export function valueOnLines(seen: readonly Seen[], at: number): number {
  let low = 0;
  let high = seen.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if ((seen[middle]?.at ?? Infinity) < at) low = middle + 1;
    else high = middle;
  }
  const after = seen[low] ?? seen.at(-1);
  const before = seen[low - 1] ?? after;
  if (after === undefined || before === undefined) {
    throw new RangeError('a line needs at least one value, got 0');
  }
  if (after.at <= before.at || at >= after.at) return after.value;
  return before.value + ((at - before.at) / (after.at - before.at)) * (after.value - before.value);
}

/** Instants inside a stretch and its two ends, rising, each once. */
export function cornersWithin(
  instants: readonly EpochMs[],
  from: EpochMs,
  to: EpochMs,
): readonly EpochMs[] {
  const inside = instants.filter((at) => at > from && at < to);
  return [...new Set([from, ...inside, to])].sort((a, b) => a - b);
}

/** Longest step of the rule below: a flow against weight bends less than its doubt within it. */
const LONGEST_STEP_MS = 120_000;
/** A foreign file may put years between two readings; the answer must not take as long. */
const MOST_STEPS = 100;

/**
 * Integral over time of several values at once, per second, by Simpson's rule between corners where they may bend.
 *
 * @param corners rising; fewer than two give zeros
 */
export function integrated(
  corners: readonly EpochMs[],
  valuesAt: (at: number) => readonly number[],
): readonly number[] {
  const [first] = corners;
  if (first === undefined) return [];
  const totals = valuesAt(first).map(() => 0);
  for (const [index, end] of corners.entries()) {
    const start = corners[index - 1];
    if (start === undefined) continue;
    const steps = Math.min(MOST_STEPS, Math.max(1, Math.ceil((end - start) / LONGEST_STEP_MS)));
    const stepMs = (end - start) / steps;
    for (let step = 0; step < steps; step += 1) {
      const from = start + step * stepMs;
      const [a, middle, b] = [from, from + stepMs / 2, from + stepMs].map(valuesAt);
      totals.forEach((total, term) => {
        const sum = (a?.[term] ?? 0) + 4 * (middle?.[term] ?? 0) + (b?.[term] ?? 0);
        totals[term] = total + (sum * stepMs) / 6000;
      });
    }
  }
  return totals;
}
