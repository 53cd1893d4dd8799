import { grouped } from './grouped.ts';
import type { StandingEntry } from '../record/flightState.ts';
import type { FlightSheet } from '../record/sheet.ts';
import type { Cell, Table } from './csv.ts';
import { readingsTable, type Meaning } from './tables.ts';

const KEPT = ['time_utc', 'time_base_utc', 'instrument'] as const;
const AFTER = ['blank', 'queried', 'standing', 'id'] as const;
const VALUES = ['as_read', 'as_amended', 'corrected'] as const;

/** Readings by quantity, as read beside as amended beside as corrected, one unit a column. */
export function readingTables(
  standing: readonly StandingEntry[],
  sheet: FlightSheet | null,
  meaning: Meaning,
): readonly Table[] {
  const { header, rows } = readingsTable(standing, sheet, meaning);
  const place = new Map(header.map((name, index) => [name, index]));
  const cell = (row: readonly Cell[], name: string): Cell => row[place.get(name) ?? -1] ?? null;
  const byQuantity = grouped(rows, (row) => String(cell(row, 'quantity') ?? 'other'));
  return [...byQuantity].map(([quantity, own]) => {
    const units = [...new Set(own.flatMap((row) => cell(row, 'unit') ?? []))].map(String).sort();
    return {
      name: `readings-${kebab(quantity)}`,
      header: [
        ...KEPT,
        ...units.flatMap((unit) => VALUES.map((value) => `${value}_${unitName(unit)}`)),
        ...AFTER,
      ],
      rows: own.map((row) => [
        ...KEPT.map((name) => cell(row, name)),
        ...units.flatMap((unit) =>
          VALUES.map((value) => (cell(row, 'unit') === unit ? cell(row, value) : null)),
        ),
        ...AFTER.map((name) => cell(row, name)),
      ]),
    };
  });
}

const UNIT_NAMES: Readonly<Record<string, string>> = { '1': 'ratio', '1/min': 'per_min' };

/** `lb_per_h`: a unit as part of the name of a column. */
export function unitName(unit: string): string {
  return UNIT_NAMES[unit] ?? unit.replaceAll('/', '_per_').replace(/[^A-Za-z0-9_]+/g, '_');
}

/** `fuelFlow` as `fuel-flow`. */
export function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
