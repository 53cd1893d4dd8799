import type { Dimension } from './sheetMeasure.ts';
import { dimensionOf, measureWords, numberWords } from './sheetMeasure.ts';
import type { Measure } from './measure.ts';
import type { SheetPath } from './sheetEdit.ts';

/** What is doubtful about a flight sheet: the field it hangs on and a sentence in the user's words. It never blocks. */
export interface SheetDoubt {
  readonly path: SheetPath;
  readonly words: string;
}

export function doubt(path: SheetPath, words: string): SheetDoubt {
  return { path, words };
}

const DIMENSION_WORDS: Readonly<Record<Dimension, string>> = {
  flow: 'a fuel flow',
  mass: 'a mass',
  length: 'a height',
  area: 'an area',
  speed: 'a speed',
  temperature: 'a temperature',
  ratio: 'a ratio',
  rate: 'a rate a minute',
  pressure: 'a pressure',
  force: 'a force',
  flowPerForce: 'a fuel flow per thrust',
  time: 'a time',
  density: 'a density',
  volume: 'a volume',
};

export function dimensionWords(dimension: Dimension): string {
  return DIMENSION_WORDS[dimension];
}

/** A measure that has to be above zero; 0 is how a blank stands where the record wants a number. */
export function* positiveMeasure(
  path: SheetPath,
  name: string,
  measure: Measure,
  dimension: Dimension,
): Generator<SheetDoubt> {
  if (measure.value === 0) {
    yield doubt(path, `${name}: not given yet.`);
  } else if (measure.value < 0) {
    yield doubt(path, `${name}: ${measureWords(measure)}, but it has to be above zero.`);
  }
  if (dimensionOf(measure.unit) !== dimension) {
    yield doubt(path, `${name}: ${measure.unit} is not ${DIMENSION_WORDS[dimension]}.`);
  }
}

/** A bare number with its usual span; outside it may be right, so the sentence asks. */
export function* withinSpan(
  path: SheetPath,
  name: string,
  value: number | undefined,
  [low, high]: readonly [number, number],
): Generator<SheetDoubt> {
  if (value !== undefined && !(value >= low && value <= high)) {
    yield doubt(
      path,
      `${name}: ${numberWords(value)}, usually ${numberWords(low)} to ${numberWords(high)}.`,
    );
  }
}

/** Ids that stand on more than one row; a reading or a touch could not be told apart. */
export function* doubledIds(
  base:
    | 'instruments'
    | 'panels'
    | 'probes'
    | 'testCards'
    | 'people'
    | 'clocks'
    | 'ownTiles'
    | 'baselineArchive',
  noun: string,
  rows: readonly { readonly id: string }[],
): Generator<SheetDoubt> {
  const seen = new Set<string>();
  for (const [index, row] of rows.entries()) {
    if (seen.has(row.id)) {
      yield doubt(`${base}.${index}.id`, `${noun} ${row.id} stands twice.`);
    }
    seen.add(row.id);
  }
}

/** `YYYY-MM-DD` that exists in the calendar. */
export function isCalendarDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) {
    return false;
  }
  const [, year = 0, month = 0, day = 0] = match.map(Number);
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && day >= 1 && day <= days;
}
