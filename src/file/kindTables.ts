import { grouped } from './grouped.ts';
import type { KnownEntry } from '../record/entry.ts';
import type { StandingEntry } from '../record/flightState.ts';
import type { Cell, Table } from './csv.ts';
import { kebab, unitName } from './readingTables.ts';
import { iso, type Meaning } from './tables.ts';

const HEAD = ['time_utc', 'time_base_utc', 'standing', 'author', 'seq', 'id'] as const;
/** Stand in the table of entries, or in tables of their own. */
const ELSEWHERE = new Set(['at', 'doubtS', 'glance', 'readings', 'sheet', 'strokes']);
/** The body as it was first written, where an amendment changed it. */
const AS_WRITTEN = 'as_written';

/** A table for each kind of entry that says more than that it happened: its fields as they stand, one unit a column. */
export function kindTables(
  standing: readonly StandingEntry[],
  { toBase }: Pick<Meaning, 'toBase'>,
): readonly Table[] {
  const byKind = grouped(
    standing.flatMap((row) => {
      const { effective } = row;
      return effective.kind === 'unrecognised' ? [] : [{ row, effective }];
    }),
    ({ effective }) => effective.kind,
  );
  return [...byKind].flatMap(([kind, own]): readonly Table[] => {
    const filled = own.map(({ row, effective }) => ({ row, fields: fieldsOf(effective) }));
    const names = [...new Set(filled.flatMap(({ fields }) => [...fields.keys()]))].sort();
    if (names.length === 0) return [];
    return [
      {
        name: `kind-${kebab(kind)}`,
        header: [...HEAD, ...names, AS_WRITTEN],
        rows: filled.map(({ row, fields }) => [
          iso(row.at),
          iso(toBase(row.at, row.entry.rec)),
          row.standing,
          row.entry.author,
          row.entry.seq,
          row.entry.id,
          ...names.map((name) => fields.get(name) ?? null),
          row.entry.kind === 'unrecognised' || row.amendedBy.length === 0
            ? null
            : JSON.stringify(row.entry.body),
        ]),
      },
    ];
  });
}

function fieldsOf({ body }: KnownEntry): ReadonlyMap<string, Cell> {
  const fields = new Map<string, Cell>();
  for (const [name, value] of Object.entries(body)) {
    if (!ELSEWHERE.has(name)) take(fields, snake(name), value);
  }
  return fields;
}

/** A measure gives its unit to the name of its column, a list of names stands in one cell, other lists as JSON. */
function take(fields: Map<string, Cell>, name: string, value: unknown): void {
  if (typeof value === 'string' || typeof value === 'number') {
    fields.set(name, value);
  } else if (typeof value === 'boolean') {
    fields.set(name, value ? 'yes' : 'no');
  } else if (Array.isArray(value)) {
    const isPlain = value.every((part) => typeof part !== 'object');
    fields.set(name, isPlain ? value.join(' ') : JSON.stringify(value));
  } else if (typeof value === 'object' && value !== null) {
    if ('value' in value && 'unit' in value && typeof value.unit === 'string') {
      take(fields, `${name}_${unitName(value.unit)}`, value.value);
      return;
    }
    for (const [part, inner] of Object.entries(value)) {
      take(fields, `${name}_${snake(part)}`, inner);
    }
  }
}

function snake(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}
