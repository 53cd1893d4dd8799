import { judgeReading } from '../../analysis/plausibility.ts';
import { historyOf } from '../../analysis/readingHistory.ts';
import type { EpochMs } from '../../record/brand.ts';
import type { Reading } from '../../record/entry.ts';
import type { Instrument } from '../../record/sheet.ts';
import { figure } from '../kit/number.ts';
import { isFull } from './boxes.ts';
import { change, type Change } from './field.ts';
import type { Fly } from './flyContext.ts';
import type { Query } from './flyState.ts';

/** A reading as it goes into the record, and what is asked about it, if anything is. */
export interface Judged {
  readonly reading: Extract<Reading, { readonly value: number }>;
  readonly query: Pick<Query, 'candidate' | 'words'> | null;
}

/** A value that lies outside its band, or is short of digits, is kept and marked; the question comes afterwards. */
export function judged(fly: Fly, instrument: Instrument, value: number, now: EpochMs): Judged {
  const { boxes } = fly.ui;
  const plain = {
    instrument: instrument.id,
    value,
    unit: instrument.unit,
    method: boxes.stepped ? ('steps' as const) : ('digits' as const),
  };
  if (!isFull(boxes, { ...instrument.format, exact: true })) {
    return {
      reading: { ...plain, queried: 'short' },
      query: { candidate: null, words: 'Short: a digit is missing.' },
    };
  }
  const past = historyOf(fly.view, instrument.id, now);
  const judgement = judgeReading({
    instrument,
    value,
    history: past.history,
    rangeLow: instrument.rangeLow,
    rangeHigh: instrument.rangeHigh,
    lastQueried: past.lastQueried,
    expected: past.expected,
  });
  if (judgement.kind !== 'query') {
    return { reading: plain, query: null };
  }
  return {
    reading: { ...plain, queried: 'outsideBand' },
    query: { candidate: judgement.candidate, words: queryWords(judgement, instrument) },
  };
}

const SLIP_WORDS = {
  timesTen: 'ten times too much?',
  tenth: 'a tenth of it?',
  swapped: 'two digits changed places?',
  doubledOrDropped: 'a digit doubled or dropped?',
  neighbourKey: 'the key beside it?',
} as const;

function queryWords(
  query: {
    readonly percentOff: number | null;
    readonly candidate: number | null;
    readonly cause: keyof typeof SLIP_WORDS | null;
  },
  instrument: Instrument,
): string {
  if (query.candidate !== null && query.cause !== null) {
    return `Read ${figure(query.candidate, instrument.format.decimals)}? ${SLIP_WORDS[query.cause]}`;
  }
  return query.percentOff === null
    ? 'Outside the range of the gauge.'
    : `${query.percentOff > 0 ? '+' : '\u2212'}${Math.abs(query.percentOff).toFixed(0)}\u00a0% from the last ones.`;
}

/** The row of an instrument, whole. */
export function readingChange(reading: Judged['reading']): Change {
  const { instrument, value, unit, method, queried } = reading;
  return change(`readings.${instrument}`, {
    instrument,
    value,
    unit,
    ...(method !== undefined && { method }),
    ...(queried !== undefined && { queried }),
  });
}
