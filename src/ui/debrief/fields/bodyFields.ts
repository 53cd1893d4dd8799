import type { Entry } from '../../../record/entry.ts';

export interface BodyField {
  readonly path: string;
  readonly value: unknown;
}

/** The body as a list of fields: readings one a row, wings one a wing and part, the rest as they stand. */
export function bodyFields(entry: Entry): readonly BodyField[] {
  if (entry.kind === 'unrecognised') {
    return [{ path: 'body', value: JSON.stringify(entry.raw) }];
  }
  return Object.entries(entry.body).flatMap(([name, value]): readonly BodyField[] => {
    if (
      name === 'sheet' ||
      name === 'target' ||
      name === 'replaces' ||
      name === 'heads' ||
      name === 'glance' ||
      name === 'strokes'
    ) {
      return [];
    }
    if (name === 'readings') {
      return rowsOf(value);
    }
    if (name === 'wings') {
      return nested(name, value, 2);
    }
    return [{ path: name, value }];
  });
}

function rowsOf(readings: unknown): readonly BodyField[] {
  if (!Array.isArray(readings)) {
    return [];
  }
  return readings.flatMap((row: unknown) =>
    typeof row === 'object' && row !== null && 'instrument' in row
      ? [{ path: `readings.${String(row.instrument)}`, value: row }]
      : [],
  );
}

function nested(path: string, value: unknown, depth: number): readonly BodyField[] {
  if (depth === 0 || typeof value !== 'object' || value === null || Array.isArray(value)) {
    return [{ path, value }];
  }
  return Object.entries(value).flatMap(([name, inner]) =>
    nested(`${path}.${name}`, inner, depth - 1),
  );
}
