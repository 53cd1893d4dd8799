import * as v from 'valibot';
import { flightSheetSchema, type FlightSheet } from './sheet.ts';

type PathsOf<T> = T extends string | number | boolean | null | undefined
  ? never
  : T extends readonly (infer Item)[]
    ? `${number}` | `${number}.${PathsOf<Item>}`
    : {
        [Key in keyof T & string]:
          | Key
          | (PathsOf<NonNullable<T[Key]>> extends infer Inner extends string
              ? `${Key}.${Inner}`
              : never);
      }[keyof T & string];

/** Where a field stands in a flight sheet, by dots: `aircraft.mark`, `instruments.3.calibration.dueOn`. */
export type SheetPath = PathsOf<FlightSheet>;

/** What a field holds; undefined when it is absent or the path leads nowhere. */
export function valueAt(sheet: FlightSheet, path: SheetPath): unknown {
  let node: unknown = sheet;
  for (const step of path.split('.')) {
    if (Array.isArray(node)) {
      node = node[Number(step)];
    } else if (isFields(node) && Object.hasOwn(node, step)) {
      node = node[step];
    } else {
      return undefined;
    }
  }
  return node;
}

/**
 * The flight sheet with one field changed; `undefined` takes the field or the row away.
 *
 * @returns null when the record would not take the sheet so: an empty id, a name of more than 200 letters.
 */
export function withValue(sheet: FlightSheet, path: SheetPath, value: unknown): FlightSheet | null {
  const parsed = v.safeParse(flightSheetSchema, replaced(sheet, path.split('.'), value));
  return parsed.success ? parsed.output : null;
}

function replaced(node: unknown, steps: readonly string[], value: unknown): unknown {
  const [step, ...rest] = steps;
  if (step === undefined) {
    return value;
  }
  if (Array.isArray(node)) {
    const rows: unknown[] = [...node];
    const place = Number(step);
    const row = replaced(rows[place], rest, value);
    if (row === undefined) {
      rows.splice(place, 1);
    } else {
      rows[place] = row;
    }
    return rows;
  }
  const fields = new Map(Object.entries(isFields(node) ? node : {}));
  const inner = replaced(fields.get(step), rest, value);
  if (inner === undefined) {
    fields.delete(step);
  } else {
    fields.set(step, inner);
  }
  return Object.fromEntries(fields);
}

function isFields(node: unknown): node is Record<string, unknown> {
  return typeof node === 'object' && node !== null && !Array.isArray(node);
}
