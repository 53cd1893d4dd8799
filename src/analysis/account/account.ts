import type { EntryId } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightResults } from '../flightResults.ts';
import { flyingTold } from './flying.ts';
import { groundTold } from './ground.ts';
import { saidTold } from './said.ts';
import {
  CHAPTERS,
  type AccountChapter,
  type Chapter,
  type Sentence,
  type Told,
} from './sentence.ts';
import { tellerOf } from './teller.ts';
import { testingTold } from './testing.ts';
import { weatherTold } from './weather.ts';

/**
 * The flight in words, made from its entries and the results worked out of them and from nothing else: each sentence names
 * the entries behind it. What people wrote stands between quotation marks, as they wrote it. Chapters with nothing to tell
 * are left out.
 */
export function accountOf(view: FlightView, results: FlightResults): readonly AccountChapter[] {
  const teller = tellerOf(view, results);
  const told = [
    ...flyingTold(teller),
    ...testingTold(teller),
    ...weatherTold(teller),
    ...saidTold(teller),
    ...groundTold(teller),
  ].filter(({ entries }) => entries.length > 0);
  const inOrder = told.toSorted((a, b) => placeOf(a) - placeOf(b));
  return CHAPTERS.map((chapter) => ({
    chapter,
    sentences: inOrder.filter((one) => chapterOf(view, one) === chapter).map(sentenceOf),
  })).filter(({ sentences }) => sentences.length > 0);
}

function placeOf({ at }: Told): number {
  return at === 'sum' ? Number.POSITIVE_INFINITY : at;
}

/** Without a lift-off nothing was flown: all of it stands before. */
function chapterOf(view: FlightView, { at }: Told): Chapter {
  const { takeOffRoll, liftOff, touchdown } = view.state.milestones;
  const off = takeOffRoll ?? liftOff;
  if (at === 'sum') return 'sum';
  if (off === undefined || at < off.at) return 'before';
  return touchdown !== undefined && at > touchdown.at ? 'after' : 'airborne';
}

function sentenceOf({ text, entries }: Told): Sentence {
  const once: readonly EntryId[] = [...new Set(entries)];
  return { text: text.charAt(0).toUpperCase() + text.slice(1), entries: once };
}
