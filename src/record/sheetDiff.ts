import type { FlightSheet } from './sheet.ts';
import { measureWords, numberWords, unitWords } from './sheetMeasure.ts';
import { UNITS, type Unit } from './measure.ts';

/** Rows of these lists are told apart by their own id. */
const ROW_NOUNS: Readonly<Record<string, string>> = {
  people: 'person',
  panels: 'panel',
  probes: 'probe',
  instruments: 'instrument',
  testCards: 'test card',
  clocks: 'clock',
  ownTiles: 'own event',
  baselineArchive: 'archived point',
};

const FIELD_WORDS: Readonly<Record<string, string>> = {
  massUnit: 'unit of mass',
  heightUnit: 'unit of height',
  localOffsetH: 'local time, hours from UTC',
  engineMap: 'engine map',
  engineTables: 'engine tables',
  tsfcSlope: 'slope of consumption',
  machHoldStandardUncertainty: 'doubt of the Mach hold',
  targetReductionFraction: 'target',
  testCards: 'test cards',
  tilePages: 'tiles',
  ownTiles: 'own events',
  tileWords: 'words on tiles',
  rolePages: 'tiles of a role',
  positionAllowed: 'position of the tablet kept',
  treatedDragShare: 'drag share of the treated strips',
  wingArea: 'wing area',
  machRatePerMin: 'Mach rate a minute',
  mach: 'Mach',
  dueOn: 'due on',
  asLeft: 'as-left table',
  points: 'as-found table',
  readingEveryS: 'seconds between fuel readings',
  samplerPlannedS: 'seconds of a sampler exposure',
  coversAfterGearUpS: 'seconds from gear up to covers',
  residualStandardUncertainty: 'doubt left after calibration',
  independentStandardUncertainty: 'doubt anew with each reading',
  plausibleRatePerMin: 'plausible rate a minute',
};

/** Kept beside the sheet or counted by hand: no change in what is flown. */
const NOT_COMPARED: readonly string[] = ['id', 'revisions', 'basis'];

/**
 * What changed from one flight sheet to another, a sentence each: "Instrument FF1, resolution: 10, was 5."
 * Rows are followed by their id, so an order that changed without a value is not told.
 */
export function sheetChanges(before: FlightSheet, after: FlightSheet): readonly string[] {
  return [...changes('', before, after)].map(
    (told) => `${told.charAt(0).toUpperCase()}${told.slice(1)}.`,
  );
}

function* changes(name: string, before: unknown, after: unknown): Generator<string> {
  if (Object.is(before, after)) return;
  if (before === undefined) {
    yield `${name}: ${words(after)}, was not given`;
  } else if (after === undefined) {
    yield `${name}: taken away, was ${words(before)}`;
  } else if (isFields(before) && isFields(after) && !isMeasure(before) && !isMeasure(after)) {
    for (const key of new Set([...Object.keys(before), ...Object.keys(after)])) {
      if (name === '' && NOT_COMPARED.includes(key)) continue;
      const noun = ROW_NOUNS[key];
      if (name === '' && noun !== undefined) {
        yield* rowChanges(noun, rowsOf(before[key]), rowsOf(after[key]));
      } else {
        yield* changes(joined(name, fieldWords(key)), before[key], after[key]);
      }
    }
  } else if (Array.isArray(before) && Array.isArray(after)) {
    yield* listChanges(name, before, after);
  } else if (words(before) !== words(after)) {
    yield `${name}: ${words(after)}, was ${words(before)}`;
  }
}

function* listChanges(
  name: string,
  before: readonly unknown[],
  after: readonly unknown[],
): Generator<string> {
  const isFlat = [...before, ...after].every((row) => !isFields(row));
  if (isFlat) {
    const [was, is] = [listWords(before), listWords(after)];
    if (was !== is) yield `${name}: ${is}, was ${was}`;
    return;
  }
  for (let place = 0; place < Math.max(before.length, after.length); place += 1) {
    yield* changes(`${name}, row ${place + 1}`, before[place], after[place]);
  }
}

function* rowChanges(
  noun: string,
  before: readonly Row[],
  after: readonly Row[],
): Generator<string> {
  const old = new Map(before.map((row) => [row.id, row]));
  const now = new Map(after.map((row) => [row.id, row]));
  for (const [id, row] of now) {
    const was = old.get(id);
    if (was === undefined) {
      yield `${noun} ${id} is new`;
    } else {
      yield* changes(`${noun} ${id}`, was, row);
    }
  }
  for (const id of old.keys()) {
    if (!now.has(id)) yield `${noun} ${id} is gone`;
  }
}

type Row = { readonly id: string } & Readonly<Record<string, unknown>>;

function rowsOf(value: unknown): readonly Row[] {
  return Array.isArray(value) ? value.filter(isRow) : [];
}

function isRow(value: unknown): value is Row {
  return isFields(value) && typeof value['id'] === 'string';
}

function words(value: unknown): string {
  if (typeof value === 'number') return numberWords(value);
  if (typeof value === 'string') {
    return value === '' ? 'nothing' : isUnit(value) ? unitWords(value) || value : value;
  }
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (isMeasure(value)) return measureWords(value);
  if (Array.isArray(value)) {
    return value.every((row) => !isFields(row)) ? listWords(value) : `${value.length} rows`;
  }
  return isFields(value)
    ? Object.entries(value)
        .map(([key, one]) => `${fieldWords(key)} ${words(one)}`)
        .join(', ')
    : 'empty';
}

function listWords(rows: readonly unknown[]): string {
  return rows.length === 0 ? 'none' : rows.map(words).join(' / ');
}

function fieldWords(key: string): string {
  return (
    FIELD_WORDS[key] ??
    key
      .replace(/StandardUncertainty$/, 'Doubt')
      .replace(/([A-Z])/g, ' $1')
      .toLowerCase()
  );
}

function joined(name: string, field: string): string {
  return name === '' ? field : `${name}, ${field}`;
}

function isUnit(text: string): text is Unit {
  return UNITS.some((unit) => unit === text);
}

function isMeasure(value: unknown): value is { value: number; unit: Unit } {
  return (
    isFields(value) &&
    typeof value['value'] === 'number' &&
    typeof value['unit'] === 'string' &&
    isUnit(value['unit'])
  );
}

function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
