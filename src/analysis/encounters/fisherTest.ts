import { fisherExact, type TwoByTwo } from '../../aero/statistics/fisherExact.ts';
import type { EntryId } from '../../record/brand.ts';
import type { Answer } from '../answer.ts';

/** How likely so uneven a table is by chance alone. Ends without a bound have a name: a file cannot hold infinity. */
export interface FisherTest {
  readonly pTwoSided: number;
  readonly oddsRatio: number | 'infinite';
  readonly interval95: { readonly low: number; readonly high: number | 'infinite' };
}

export function fisherTest(
  table: TwoByTwo,
  entries: readonly EntryId[],
): Answer<FisherTest, 'zeroMargin', 'fisherExact'> {
  const result = fisherExact(table);
  if (result.kind === 'unavailable') {
    return { kind: 'noAnswer', because: result.because, entries };
  }
  const { pTwoSided, oddsRatio, oddsRatioInterval95 } = result.value;
  const [low, high] = oddsRatioInterval95;
  return {
    kind: 'answer',
    value: {
      pTwoSided,
      oddsRatio: bounded(oddsRatio),
      interval95: { low, high: bounded(high) },
    },
    how: { entries, method: 'fisherExact', broken: [] },
  };
}

function bounded(value: number): number | 'infinite' {
  return Number.isFinite(value) ? value : 'infinite';
}
