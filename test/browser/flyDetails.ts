import type { Measure } from '../../src/record/measure.ts';
import { digitsOf, keyDigits, keyReading, type Boxes } from './flyPads.ts';
import type { Scribe } from './scribe.ts';
import type { Touchable } from './tablet.ts';

/** More pages than any panel has. */
const MOST_PAGES = 60;

/** Chooses a chip of a field by its words; a chip that is set already is left alone, and so is what was not said. */
export async function chooseChip(
  scribe: Scribe,
  field: string,
  words: string | undefined,
): Promise<void> {
  if (words === undefined) {
    return;
  }
  const chip = await seek(scribe, question(field), isChip(field, words));
  if (!chip.pressed) {
    await tapAndSave(scribe, chip.act);
  }
}

/** Puts words into a field: by their chip where one says just that, else by the keyboard. */
export async function putWords(
  scribe: Scribe,
  field: string,
  words: string | undefined,
): Promise<void> {
  if (words === undefined) {
    return;
  }
  const type = `type-${field}`;
  const found = await seek(
    scribe,
    question(field),
    (each) => each.act === type,
    isChip(field, words),
  );
  if (found.act !== type) {
    if (!found.pressed) {
      await tapAndSave(scribe, found.act);
    }
    return;
  }
  await scribe.tap(type);
  await scribe.type('text', words);
  await tapAndSave(scribe, 'text-enter');
}

export async function putNumber(
  scribe: Scribe,
  field: string,
  value: number | undefined,
  boxes: Boxes,
): Promise<void> {
  if (value === undefined) {
    return;
  }
  // Counts and heights need no leading zeros: these boxes may stay empty.
  const digits = boxes.decimals === 0 ? String(value) : digitsOf(value, boxes);
  await putDigits(scribe, field, digits);
}

/** A weight or a height: as many boxes as either ever needs. */
export async function putMeasure(
  scribe: Scribe,
  field: string,
  measure: Measure | undefined,
): Promise<void> {
  await putNumber(scribe, field, measure?.value, { wholeDigits: 5, decimals: 0 });
}

/** Digits as they stand, leading zeros and all: a runway, a clock. */
export async function putDigits(scribe: Scribe, field: string, digits: string): Promise<void> {
  await openPad(scribe, field);
  await keyDigits(scribe, digits);
  await tapAndSave(scribe, 'key-enter');
}

export async function putReading(
  scribe: Scribe,
  instrument: string,
  value: number,
  boxes: Boxes,
  at: { readonly enterMs?: number } = {},
): Promise<void> {
  await openPad(scribe, `reading-${instrument}`);
  await keyReading(scribe, value, boxes, at);
}

export async function openPad(scribe: Scribe, field: string): Promise<void> {
  const key = await seek(scribe, /^field-/, (each) => each.act === `field-${field}`);
  await scribe.tap(key.act);
}

async function tapAndSave(scribe: Scribe, act: string): Promise<void> {
  const before = await scribe.tablet.saved();
  await scribe.tap(act);
  await scribe.tablet.savedBeyond(before);
}

function question(field: string): RegExp {
  return new RegExp(`^(chip-${field}-|type-${field}$)`);
}

function isChip(field: string, words: string): (each: Touchable) => boolean {
  return (each) => each.act.startsWith(`chip-${field}-`) && each.words === words;
}

/**
 * Pages through the open panel until what is wanted stands on it. Where something better may stand on a further page of
 * the same question, those pages are looked at first.
 */
async function seek(
  scribe: Scribe,
  ofQuestion: RegExp,
  wanted: (each: Touchable) => boolean,
  better: (each: Touchable) => boolean = wanted,
): Promise<Touchable> {
  const seen = new Set<string>();
  await scribe.tablet.shown('panel-done');
  for (let page = 0; page < MOST_PAGES; page += 1) {
    const targets = await scribe.tablet.targets();
    const more = targets.find((each) => each.act === 'panel-more')?.words ?? '';
    const [, at = 1, of = 1] = (/(\d+)\/(\d+)/.exec(more) ?? []).map(Number);
    const isAsked = targets.some((each) => ofQuestion.test(each.act));
    const found = targets.find(better) ?? (at === of ? targets.find(wanted) : undefined);
    if (found !== undefined) {
      return found;
    }
    targets.forEach(({ act }) => seen.add(act));
    await scribe.tap(isAsked && at < of ? 'panel-more' : 'panel-next');
  }
  throw new Error(`the panel never offered ${ofQuestion}; it offered ${[...seen].join(' ')}`);
}
