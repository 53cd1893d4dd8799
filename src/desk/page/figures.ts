import type { Interval95, ReductionFigure } from '../../analysis/results.ts';
import { numberWords } from '../../record/readingWords.ts';

/** `27.3 (26.7 to 27.8)`, in per cent: a share of one with its 95 % interval. Per cent exists only on paper and screen. */
export function percentFigure({
  fraction,
  interval95,
}: Pick<ReductionFigure, 'fraction' | 'interval95'>): string {
  const places = placesFor(50 * (interval95.high - interval95.low));
  return `${numberWords(100 * fraction, places)} ${range(interval95, 100, places)}`;
}

/** `1 155 (1 114 to 1 196)` of a value with its interval, each multiplied by `scale` into the unit of the page. */
export function intervalFigure(
  value: number,
  interval95: Interval95,
  { scale = 1, places = 0 } = {},
): string {
  return `${numberWords(scale * value, places)} ${range(interval95, scale, places)}`;
}

function range({ low, high }: Interval95, scale: number, places: number): string {
  return `(${numberWords(scale * low, places)} to ${numberWords(scale * high, places)})`;
}

export function percent(fraction: number, places = 0): string {
  return numberWords(100 * fraction, places);
}

/** A change always shows its sign. */
export function signed(value: number, places: number): string {
  const words = numberWords(value, places);
  return words.startsWith('\u2212') ? words : `+${words}`;
}

/** Two significant digits of the doubt below a tenth, one from there on. */
function placesFor(halfWidth: number): number {
  if (!(halfWidth > 0)) return 1;
  return halfWidth >= 10 ? 0 : halfWidth < 0.1 ? 2 : 1;
}
