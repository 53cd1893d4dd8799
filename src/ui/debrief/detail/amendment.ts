import type { Body, Entry, KnownEntry } from '../../../record/entry.ts';
import { bodyFrom } from '../../../record/envelope.ts';
import { changedField, fieldAt } from '../../../record/fieldPath.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { bad, good, type Result } from '../../../record/result.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { readNumber } from '../../kit/Ground.tsx';
import { bodyFields } from '../fields/bodyFields.ts';
import { fieldFormsOf, type FieldForm } from '../fields/fieldForms.ts';
import { typedOf, valueOf, type TypedTime } from '../fields/typed.ts';

export type Change = Body<'entryAmended'>['changes'][number];
export type AmendCode = Body<'entryAmended'>['code'];

export const AMEND_CODES: readonly { readonly code: AmendCode; readonly words: string }[] = [
  { code: 'misKeyed', words: 'mis-keyed digit' },
  { code: 'swapped', words: 'swapped' },
  { code: 'wrongButton', words: 'wrong button' },
  { code: 'backDated', words: 'time put right' },
  { code: 'kept', words: 'query kept as read' },
  { code: 'detail', words: 'detail added' },
  { code: 'other', words: 'other' },
];

/** One input of the amend form: a field of the body, or a reading by its instrument. */
export type AmendField =
  | {
      readonly kind: 'field';
      readonly path: string;
      readonly form: FieldForm;
      readonly value: unknown;
    }
  | {
      readonly kind: 'reading';
      readonly path: string;
      readonly instrument: string;
      readonly unit: string;
      readonly row: unknown;
      readonly value: number | null;
      readonly isQueried: boolean;
    };

/** Fields that hold something come first; `absent` may be added. */
export function amendFields(
  entry: Entry,
  sheet: FlightSheet | null,
): { readonly present: readonly AmendField[]; readonly absent: readonly AmendField[] } {
  if (entry.kind === 'unrecognised') {
    return { present: [], absent: [] };
  }
  const readings = readingFields(entry, sheet);
  const fields = fieldFormsOf(entry.kind).map((form): AmendField => {
    const value = fieldAt(entry.body, form.path);
    return { kind: 'field', path: form.path, form, value: value ?? null };
  });
  const holds = (field: AmendField): boolean =>
    field.kind === 'reading' ? field.row !== null : field.value !== null;
  const all = [...readings, ...fields];
  return { present: all.filter(holds), absent: all.filter((field) => !holds(field)) };
}

function readingFields(entry: KnownEntry, sheet: FlightSheet | null): readonly AmendField[] {
  const rows = new Map(
    bodyFields(entry)
      .filter(({ path }) => path.startsWith('readings.'))
      .map(({ path, value }) => [path.slice('readings.'.length), value]),
  );
  const known = (sheet?.instruments ?? []).map(({ id, unit }) => ({ id, unit: String(unit) }));
  const ids = new Map([
    ...known.map(({ id, unit }): [string, string] => [id, unit]),
    ...[...rows].map(([id, row]): [string, string] => [
      id,
      unitOf(known, id, fieldAt(row, 'unit')),
    ]),
  ]);
  return [...ids].map(([instrument, unit]) => {
    const row = rows.get(instrument) ?? null;
    const value = fieldAt(row, 'value');
    return {
      kind: 'reading',
      path: `readings.${instrument}.value`,
      instrument,
      unit,
      row,
      value: typeof value === 'number' ? value : null,
      isQueried: fieldAt(row, 'queried') !== null,
    };
  });
}

function unitOf(
  known: readonly { readonly id: string; readonly unit: string }[],
  id: string,
  written: unknown,
): string {
  if (typeof written === 'string') {
    return written;
  }
  return known.find((one) => one.id === id)?.unit ?? '1';
}

export function typedField(field: AmendField, time: TypedTime): string {
  if (field.kind === 'reading') {
    return field.value === null ? '' : String(field.value);
  }
  return typedOf(field.form, field.value, time);
}

/** What the amendment would change; faults by path where something typed cannot be read. */
export function changesOf(
  fields: readonly AmendField[],
  typed: ReadonlyMap<string, string>,
  time: TypedTime,
): { readonly changes: readonly Change[]; readonly faults: ReadonlyMap<string, string> } {
  const changes: Change[] = [];
  const faults = new Map<string, string>();
  for (const field of fields) {
    const text = typed.get(field.path);
    if (text !== undefined && text !== typedField(field, time)) {
      const read =
        field.kind === 'reading' ? readingChanges(field, text) : fieldChanges(field, text, time);
      if (read.ok) {
        changes.push(...read.value);
      } else {
        faults.set(field.path, read.error);
      }
    }
  }
  return { changes, faults };
}

function fieldChanges(
  field: Extract<AmendField, { kind: 'field' }>,
  text: string,
  time: TypedTime,
): Result<readonly Change[], string> {
  const read = valueOf(field.form, text, time);
  return read.ok ? good([{ field: field.path, old: field.value, new: read.value }]) : read;
}

/** A new number takes the query with it: whoever amends it has looked again. */
function readingChanges(
  field: Extract<AmendField, { kind: 'reading' }>,
  text: string,
): Result<readonly Change[], string> {
  const { instrument, unit, row } = field;
  const path = `readings.${instrument}`;
  const read = readNumber(text);
  if (read.kind === 'fault') {
    return bad('Give the figure as the gauge shows it.');
  }
  if (read.kind === 'blank') {
    return good([{ field: path, old: row, new: { instrument, blank: 'notRead' } }]);
  }
  if (field.value === null) {
    return good([{ field: path, old: row, new: { instrument, value: read.value, unit } }]);
  }
  const value: Change = { field: `${path}.value`, old: field.value, new: read.value };
  const query: Change = { field: `${path}.queried`, old: fieldAt(row, 'queried'), new: null };
  return good(field.isQueried ? [value, query] : [value]);
}

/** Takes the query off a reading and leaves the figure as it was read. */
export function keepChange(field: Extract<AmendField, { kind: 'reading' }>): Change {
  return {
    field: `readings.${field.instrument}.queried`,
    old: fieldAt(field.row, 'queried'),
    new: null,
  };
}

/** The path of the first field that the kind would not hold so; null when the amended body stands. */
export function unfitField(entry: Entry, changes: readonly Change[]): string | null {
  if (entry.kind === 'unrecognised') {
    return 'body';
  }
  let body: unknown = entry.body;
  for (const change of changes) {
    const changed = changedField(body, change.field, change.new);
    if (!changed.ok) {
      return change.field;
    }
    body = changed.value;
  }
  const read = bodyFrom(entry.kind, body);
  return read.ok ? null : read.error;
}

/** What an amendment knew: everything that stands on its target now. */
export function replacesOf(standing: StandingEntry): Body<'entryAmended'>['replaces'] {
  return standing.amendedBy;
}
