import type { EpochMs } from '../../record/brand.ts';

/** A time from an instant to a later one. */
export interface Stretch {
  readonly from: EpochMs;
  readonly to: EpochMs;
}

/** In order of time, with no two that meet. */
export function united(stretches: readonly Stretch[]): readonly Stretch[] {
  const sorted = stretches.filter(({ from, to }) => to > from).toSorted((a, b) => a.from - b.from);
  const whole: Stretch[] = [];
  for (const next of sorted) {
    const last = whole.at(-1);
    if (last === undefined || last.to < next.from) whole.push(next);
    else if (next.to > last.to) whole[whole.length - 1] = { from: last.from, to: next.to };
  }
  return whole;
}

/** What both have. */
export function common(ones: readonly Stretch[], others: readonly Stretch[]): readonly Stretch[] {
  return united(
    ones.flatMap((one) =>
      others.map((other) => ({
        from: one.from > other.from ? one.from : other.from,
        to: one.to < other.to ? one.to : other.to,
      })),
    ),
  );
}

/** What the first have and the others have not. */
export function without(ones: readonly Stretch[], others: readonly Stretch[]): readonly Stretch[] {
  return united(others).reduce<readonly Stretch[]>(
    (left, gone) =>
      left.flatMap(({ from, to }) => {
        if (gone.to <= from || gone.from >= to) return [{ from, to }];
        return [
          { from, to: gone.from },
          { from: gone.to, to },
        ].filter((rest) => rest.to > rest.from);
      }),
    united(ones),
  );
}

export function secondsOf(stretches: readonly Stretch[]): number {
  return stretches.reduce((total, { from, to }) => total + (to - from) / 1000, 0);
}
