import { bad, good, type Result } from './result.ts';

/**
 * Dotted paths into a body, as amendments write them. In `readings` a row is named by its instrument
 * (`readings.FF2.value`, or `readings.FF2` for the row); in any other list by its place, from 0.
 */

/** Names that must never become keys: they would reach an object's prototype. */
const FORBIDDEN = ['__proto__', 'constructor', 'prototype'];

type Fields = Readonly<Record<string, unknown>>;

/** What stands at `path` now; `null` when there is nothing. */
export function fieldAt(body: unknown, path: string): unknown {
  const [head, rest] = firstStep(body, path, null);
  const found = own(body, head) ?? null;
  return rest === null ? found : fieldAt(found, rest);
}

/** The body with `path` set to `value`; `null` takes it out. The given body stays as it was. */
export function changedField(
  body: unknown,
  path: string,
  value: unknown,
): Result<unknown, 'noSuchPlace'> {
  return change(body, path, value, null);
}

function change(
  body: unknown,
  path: string,
  value: unknown,
  within: string | null,
): Result<unknown, 'noSuchPlace'> {
  if (path === '' || FORBIDDEN.some((name) => path.split('.').includes(name))) {
    return bad('noSuchPlace');
  }
  const [head, rest] = firstStep(body, path, within);
  const inner = own(body, head);
  const next: Result<unknown, 'noSuchPlace'> =
    rest === null ? good(value) : change(inner ?? empty(head), rest, value, head);
  if (!next.ok) {
    return next;
  }
  if (Array.isArray(body)) {
    return within === 'readings'
      ? good(withRow(body, head, next.value))
      : withItem(body, Number(head), next.value);
  }
  return isFields(body) ? good(withKey(body, head, next.value)) : bad('noSuchPlace');
}

/** The name of the first step and what is left. An instrument's name may hold dots, so the longest row name that fits wins. */
function firstStep(
  body: unknown,
  path: string,
  within: string | null,
): readonly [head: string, rest: string | null] {
  const named = isList(body) ? body.flatMap((row) => instrumentOf(row) ?? []) : [];
  const [longest] = named
    .filter((name) => path === name || path.startsWith(`${name}.`))
    .sort((a, b) => b.length - a.length);
  if (longest !== undefined) {
    return [longest, path === longest ? null : path.slice(longest.length + 1)];
  }
  // A row that is not there yet: in `readings` everything before the last dot is its name, if there is a dot.
  const dot = within === 'readings' ? path.lastIndexOf('.') : path.indexOf('.');
  return dot < 0 ? [path, null] : [path.slice(0, dot), path.slice(dot + 1)];
}

function own(body: unknown, head: string): unknown {
  if (isList(body)) {
    // The newest row of an instrument is the one that counts, so it is the one that is amended.
    return body.findLast((row) => instrumentOf(row) === head) ?? body[Number(head)];
  }
  return isFields(body) && Object.hasOwn(body, head) ? body[head] : undefined;
}

function empty(head: string): unknown {
  return head === 'readings' ? [] : {};
}

function withKey(body: Fields, key: string, value: unknown): Fields {
  const { [key]: _before, ...others } = body;
  return value === null ? others : { ...others, [key]: value };
}

function withRow(rows: readonly unknown[], instrument: string, value: unknown): readonly unknown[] {
  const last = rows.findLastIndex((row) => instrumentOf(row) === instrument);
  if (value === null) {
    return rows.filter((row) => instrumentOf(row) !== instrument);
  }
  const row = isFields(value) ? { ...value, instrument } : value;
  return last < 0 ? [...rows, row] : rows.with(last, row);
}

function withItem(
  items: readonly unknown[],
  index: number,
  value: unknown,
): Result<unknown, 'noSuchPlace'> {
  if (!Number.isInteger(index) || index < 0 || index > items.length) {
    return bad('noSuchPlace');
  }
  return good(items.toSpliced(index, 1, ...(value === null ? [] : [value])));
}

function instrumentOf(row: unknown): string | undefined {
  return isFields(row) && typeof row['instrument'] === 'string' ? row['instrument'] : undefined;
}

function isList(value: unknown): value is readonly unknown[] {
  return Array.isArray(value);
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
