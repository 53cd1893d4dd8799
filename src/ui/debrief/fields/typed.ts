import { epochMs, type EpochMs } from '../../../record/brand.ts';
import { bad, good, type Result } from '../../../record/result.ts';
import { readNumber } from '../../kit/Ground.tsx';
import { isoDate } from '../../kit/time.ts';
import { clockWords, typedInstant } from '../timeWords.ts';
import { isUnitWord, type FieldForm } from './fieldForms.ts';

/** Turns tablet time into time as shown and back, and says which day a bare clock time means. */
export interface TypedTime {
  readonly shown: (raw: EpochMs) => EpochMs;
  readonly raw: (shown: EpochMs) => EpochMs;
  /** A clock time without a date is the one nearest to this. */
  readonly near: EpochMs;
}

const DAY_MS = 86_400_000;

/** A value of the record as it stands in its input; empty where there is none. */
export function typedOf(form: FieldForm, value: unknown, time: TypedTime): string {
  if (value === null || value === undefined) {
    return '';
  }
  switch (form.form) {
    case 'time':
      return typeof value === 'number' ? timeTyped(time.shown(epochMs(value)), time.near) : '';
    case 'yesNo':
      return value === true ? 'yes' : 'no';
    case 'list':
    case 'numbers':
      return Array.isArray(value) ? value.join(' ') : '';
    case 'measure':
      return isMeasure(value) ? `${value.value} ${value.unit}` : '';
    case 'findings':
      return Array.isArray(value)
        ? value
            .filter(isFinding)
            .map(({ panel, finding }) => `${panel}: ${finding}`)
            .join('\n')
        : '';
    default:
      return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
  }
}

/** What was typed as a value of the record: null where nothing was; the error is a sentence for the person. */
export function valueOf(form: FieldForm, typed: string, time: TypedTime): Result<unknown, string> {
  const text = typed.trim();
  if (text === '') {
    return good(form.form === 'list' && form.isRequired ? [] : null);
  }
  switch (form.form) {
    case 'number':
      return numberOf(text);
    case 'time': {
      const at = instantOf(text, time.near);
      return at === null ? bad('A time is HH:MM:SS, in UTC.') : good(time.raw(at));
    }
    case 'yesNo':
      return good(text === 'yes');
    case 'list':
      return good(text.split(/[\s,;]+/).filter((word) => word !== ''));
    case 'numbers':
      return numbersOf(text);
    case 'measure':
      return measureOf(text);
    case 'findings':
      return findingsOf(text);
    case 'words':
    case 'longWords':
    case 'choice':
      return good(text);
  }
}

/** A typed time of day on the day nearest to `near`, or on the day that was typed before it. */
export function instantOf(text: string, near: EpochMs): EpochMs | null {
  const dated = /^(\d{4}-\d{2}-\d{2})[T ]+(.+)$/.exec(text.trim());
  if (dated !== null) {
    return typedInstant(dated[1] ?? '', dated[2] ?? '');
  }
  const sameDay = typedInstant(isoDate(near), text);
  if (sameDay === null) {
    return null;
  }
  return epochMs(sameDay + DAY_MS * Math.round((near - sameDay) / DAY_MS));
}

function timeTyped(shown: EpochMs, near: EpochMs): string {
  return instantOf(clockWords(shown), near) === null || Math.abs(shown - near) > DAY_MS / 2
    ? `${isoDate(shown)} ${clockWords(shown)}`
    : clockWords(shown);
}

function numberOf(text: string): Result<unknown, string> {
  const read = readNumber(text);
  return read.kind === 'number' ? good(read.value) : bad('Give a number, as 1234 or 0.72.');
}

function numbersOf(text: string): Result<unknown, string> {
  const read = text.split(/[\s,;]+/).map((word) => readNumber(word));
  const values = read.flatMap((one) => (one.kind === 'number' ? [one.value] : []));
  return values.length === read.length ? good(values) : bad('Give numbers parted by spaces.');
}

function measureOf(text: string): Result<unknown, string> {
  const [, number = '', unit = ''] = /^(.*?)\s*([^\d\s.,−+-][^\s]*)$/.exec(text) ?? [];
  const read = readNumber(number);
  return read.kind === 'number' && isUnitWord(unit)
    ? good({ value: read.value, unit })
    : bad('Give a number and its unit, as 4100 ft.');
}

function findingsOf(text: string): Result<unknown, string> {
  const rows = text.split('\n').filter((row) => row.trim() !== '');
  const read = rows.flatMap((row) => {
    const [, panel, finding] = /^\s*([^:]+?)\s*:\s*(.+?)\s*$/.exec(row) ?? [];
    return panel === undefined || finding === undefined ? [] : [{ panel, finding }];
  });
  return read.length === rows.length ? good(read) : bad('One line a panel, as L1: clean.');
}

function isMeasure(value: unknown): value is { readonly value: number; readonly unit: string } {
  return typeof value === 'object' && value !== null && 'value' in value && 'unit' in value;
}

function isFinding(value: unknown): value is { readonly panel: string; readonly finding: string } {
  return typeof value === 'object' && value !== null && 'panel' in value && 'finding' in value;
}
