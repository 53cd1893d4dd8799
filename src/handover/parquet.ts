import { parquetWriteBuffer, type ColumnSource } from 'hyparquet-writer';
import { parseIso } from '../aero/calendar.ts';
import type { Cell, Table } from '../file/csv.ts';

/** What names the flight in each row, so that files of many flights can be asked as one. */
export interface FlightColumns {
  readonly flight: string;
  readonly date: string;
  readonly nature: string;
  readonly aircraft: string;
  /** Code of the version signed, empty for a draft. */
  readonly signedCode: string;
}

/**
 * A table as a Parquet file: times as timestamps in milliseconds UTC, numbers as doubles, all else as text, and the flight
 * in the first columns. The type of a column goes by its name and never by its cells, so that files of many flights have
 * one schema: `_utc` is a time, a unit or a count is a number.
 *
 * @throws RangeError when a number stands in a column of text: its name lacks a unit
 * @see https://parquet.apache.org/docs/file-format/
 */
export function writeParquet(
  { header, rows }: Omit<Table, 'name'>,
  of: FlightColumns,
  build: string,
): Uint8Array<ArrayBuffer> {
  const own = header.map((name, index): ColumnSource => {
    const cells = rows.map((row) => row[index] ?? null);
    return { name, type: typeOf(name), data: cells.map((cell) => valueIn(name, cell)) };
  });
  const named = Object.entries({
    flight: of.flight,
    flight_date: of.date,
    flight_nature: of.nature,
    aircraft: of.aircraft,
    signed_code: of.signedCode,
  }).map(([name, value]): ColumnSource => ({ name, type: 'STRING', data: rows.map(() => value) }));
  const buffer = parquetWriteBuffer({
    columnData: [...named, ...own],
    createdBy: `Kneeline ${build}`,
    kvMetadata: [{ key: 'about', value: 'A record, not an instrument. Times in UTC.' }],
  });
  return new Uint8Array(buffer);
}

const NUMBER =
  /_(?:s|pct|lb|kg|lb_per_h|kg_per_h|micrometre|per_litre)$|^(?:run|against_run|of|laminar_before|laminar_after|readings_used|readings_left_out|clear_runs|not_laminar_runs|runs_at_setting|seq|amended|as_read|as_amended|corrected)$/;

function typeOf(name: string): 'TIMESTAMP' | 'DOUBLE' | 'STRING' {
  if (name.endsWith('_utc')) return 'TIMESTAMP';
  return NUMBER.test(name) ? 'DOUBLE' : 'STRING';
}

function valueIn(name: string, cell: Cell): bigint | number | string | null {
  if (cell === null) return null;
  switch (typeOf(name)) {
    case 'TIMESTAMP': {
      const at = parseIso(String(cell));
      return at.kind === 'ready' ? BigInt(at.value) : null;
    }
    case 'DOUBLE':
      return Number(cell);
    case 'STRING':
      if (typeof cell === 'number') {
        throw new RangeError(`a column of numbers must have a unit in its name, got ${name}`);
      }
      return cell;
  }
}
