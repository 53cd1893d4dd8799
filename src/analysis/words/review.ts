import { numberWords } from '../../record/readingWords.ts';
import type { ToReview } from '../review.ts';

type Told<One> = One extends unknown ? Omit<One, 'glance' | 'glances'> : never;

/** Why a reading is worth a look. It may well be right. */
export function reviewWords(one: Told<ToReview>): string {
  switch (one.kind) {
    case 'sameDigits':
      return `${one.instrument}: two readings have the same digits in another order`;
    case 'repeated':
      return `${one.instrument} read ${numberWords(one.value)} again and again: stuck, or not looked at?`;
    case 'enginesSwapped':
      return `${one.instruments.join(' and ')} would fit the other readings if they were exchanged`;
  }
}
