import { figure } from '../../kit/number.ts';
import { placesOf, rangeWords } from './answerDesk.ts';
import type { PlotFigure } from './plot/figures.ts';

/** What a page says first: a number with its interval, or why there is none. */
export type Headline =
  | {
      readonly kind: 'number';
      readonly value: string;
      readonly unit: string;
      /** "68 %: 28.4 to 29.0"; empty for a count, and for what is called and not measured. */
      readonly intervals: readonly string[];
      /** What the number is of. */
      readonly of: string;
      readonly isStruck: boolean;
    }
  | { readonly kind: 'none'; readonly because: string };

/** A number with both of its intervals, to the places that the wider one allows. */
export function measured(
  plotted: PlotFigure,
  { unit, of, isStruck = false }: { unit: string; of: string; isStruck?: boolean },
): Headline {
  const range95 = { low: plotted.low95, high: plotted.high95 };
  const places = placesOf(range95, 1);
  return {
    kind: 'number',
    value: figure(plotted.value, places),
    unit,
    intervals: [
      `95 %: ${rangeWords(range95, 1, places)}`,
      `68 %: ${rangeWords({ low: plotted.low68, high: plotted.high68 }, 1, places)}`,
    ],
    of,
    isStruck,
  };
}

/** A count, or a share that people called: no interval belongs to it. */
export function counted(value: string, unit: string, of: string): Headline {
  return { kind: 'number', value, unit, intervals: [], of, isStruck: false };
}

export function none(because: string): Headline {
  return { kind: 'none', because };
}
