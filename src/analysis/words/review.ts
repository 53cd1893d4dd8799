import { numberWords } from '../../record/readingWords.ts';
import type { ToReview } from '../review.ts';
import type { Slip } from '../slips.ts';
import type { Suspicion, Witness } from '../suspicion/suspected.ts';

type Told<One> = One extends unknown ? Omit<One, 'glance' | 'glances' | 'entries'> : never;

const SLIPS: Readonly<Record<Slip, string>> = {
  timesTen: 'ten times too much',
  tenth: 'a tenth of it',
  swapped: 'two digits exchanged',
  doubledOrDropped: 'a digit doubled or dropped',
  neighbourKey: 'a key beside it',
};

const WITNESSES: Readonly<Record<Witness, string>> = {
  lastValue: 'the readings beside it',
  otherEngine: 'the other engines',
  counterSlope: 'its counter',
};

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

/** What may have been meant by a reading, and what says so. It stays as it is until a person amends it. */
export function suspicionWords(one: Told<Suspicion>): string {
  switch (one.kind) {
    case 'enginesSwapped': {
      const [first, second] = one.instruments;
      return `${first} and ${second} may be exchanged: ${one.candidates.map((value) => numberWords(value)).join(' and ')} would fit`;
    }
    case 'digitSlip':
      return (
        `${one.instrument} read ${numberWords(one.value)}: ${numberWords(one.candidate)} would fit ` +
        `${one.against.map((witness) => WITNESSES[witness]).join(' and ')} (${SLIPS[one.cause]})`
      );
  }
}
