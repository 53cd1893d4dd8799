import { judgeReading } from '../../analysis/plausibility.ts';
import { historyOf } from '../../analysis/readingHistory.ts';
import { likelySlips, type Slip } from '../../analysis/slips.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Reading } from '../../record/entry.ts';
import type { Instrument } from '../../record/sheet.ts';
import { itemsBackwards } from '../../record/trail.ts';
import { figure } from '../kit/number.ts';
import { isFull } from './boxes.ts';
import { change, type Change, type NumberSpec } from './field.ts';
import type { Fly } from './flyContext.ts';
import type { Query } from './flyState.ts';

/** A reading as it goes into the record, and what is asked about it, if anything is. */
export interface Judged {
  readonly reading: Extract<Reading, { readonly value: number }>;
  readonly query: Pick<Query, 'candidate' | 'words'> | null;
  /** The entry before it, that was asked about and is now borne out: both are kept. */
  readonly bearsOut: EntryId | null;
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
      bearsOut: null,
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
    const bearsOut = judgement.kind === 'realChange' ? newestQueried(fly, instrument.id) : null;
    return { reading: plain, query: null, bearsOut };
  }
  return {
    reading: { ...plain, queried: 'outsideBand' },
    query: { candidate: judgement.candidate, words: queryWords(judgement, instrument) },
    bearsOut: null,
  };
}

/** The entry that holds the newest reading of this instrument, which was queried. */
function newestQueried({ view }: Fly, instrument: string): EntryId | null {
  for (const glance of itemsBackwards(view.state.glances)) {
    if (glance.readings[instrument] === undefined) continue;
    const by = glance.by.findLast((id) => {
      const entry = view.byId(id)?.effective;
      return (
        entry !== undefined &&
        entry.kind !== 'unrecognised' &&
        (entry.body.readings ?? []).some((reading) => reading.instrument === instrument)
      );
    });
    return by ?? null;
  }
  return null;
}

const SLIP_WORDS = {
  timesTen: 'ten times too much?',
  tenth: 'a tenth of it?',
  swapped: 'two digits changed places?',
  doubledOrDropped: 'a digit doubled or dropped?',
  neighbourKey: 'the key beside it?',
} as const;

const TENFOLD: readonly Slip[] = ['timesTen', 'tenth'];

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

/** What may be wrong with a number that is no reading, beside the one that stood there before; null when nothing is. */
export function slipWords(spec: NumberSpec, value: number): string | null {
  if (spec.last === null || spec.clock === true) {
    return null;
  }
  const { title, unit, format, step, last } = spec;
  const likeness: Instrument = {
    id: title,
    name: title,
    quantity: 'tankFuel',
    unit: '1',
    format: { ...format, wholeDigits: Math.min(7, format.wholeDigits) },
    resolution: step,
    calibration: { correction: 0 },
    serviceable: true,
  };
  const slip = likelySlips(likeness, value).find(
    (meant) =>
      TENFOLD.includes(meant.cause) && Math.abs(meant.value - last) <= 0.3 * Math.abs(last),
  );
  const isFar = value > 3 * last || 3 * value < last;
  return slip === undefined || !isFar
    ? null
    : `${title} ${figure(value, format.decimals)} ${unit}: ${SLIP_WORDS[slip.cause]}`;
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
