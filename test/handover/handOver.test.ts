import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import { describe, expect, it } from 'vitest';
import { handOver, type HandedFile } from '../../src/handover/handOver.ts';
import type { Entry } from '../../src/record/entry.ts';
import { viewOf } from '../../src/record/flight.ts';
import { signedVersions } from '../../src/record/signatures.ts';
import { chainOf, note, OPENED } from '../file/smallFlight.ts';
import { flightA } from '../analysis/flights.ts';
import { anyLog } from '../record/anyLog.ts';

const files = handOver(flightA.entries, { build: 'test', files: ['a.jsonl'] });

function named(ending: string, among: readonly HandedFile[] = files): HandedFile {
  const found = among.find((file) => file.ending === ending);
  if (found === undefined) throw new Error(`no file ${ending}`);
  return found;
}

type Row = Readonly<Record<string, unknown>>;

/** Read by a library that is not the one that wrote it. */
async function parquetRows(ending: string): Promise<readonly Row[]> {
  const { content } = named(ending);
  if (typeof content === 'string') throw new Error('Parquet must be bytes');
  return parquetReadObjects({ file: content.buffer });
}

const csvRows = (ending: string, among = files): readonly Readonly<Record<string, string>>[] =>
  parse(named(ending, among).content, { columns: true });

const sum = (rows: readonly Row[], column: string): number =>
  rows.reduce((total, row) => total + Number(row[column] ?? 0), 0);

describe('the Parquet files of flight A', () => {
  const tables = files
    .filter(({ ending }) => ending.endsWith('.parquet'))
    .map(({ ending }) => ending.replace('.parquet', ''));

  it('hold each table of the flight: entries, readings and results', () => {
    expect(tables).toEqual(expect.arrayContaining(['entries', 'readings', 'points', 'samples']));
    expect(tables.length).toBeGreaterThan(9);
  });

  it.each(tables)('agree with the CSV on rows and sums of numbers: %s', async (name) => {
    const rows = await parquetRows(`${name}.parquet`);
    if (name === 'readings') {
      const quantities = files.filter(({ ending }) => /^readings-.*\.csv$/.test(ending));
      expect(quantities.length).toBeGreaterThan(5);
      expect(rows).toHaveLength(
        quantities.reduce((count, { ending }) => count + csvRows(ending).length, 0),
      );
      return;
    }
    const csv = csvRows(`${name}.csv`);
    expect(rows).toHaveLength(csv.length);
    const numbers = Object.keys(csv[0] ?? {}).filter((column) =>
      rows.some((row) => typeof row[column] === 'number'),
    );
    for (const column of numbers) expect(sum(rows, column)).toBeCloseTo(sum(csv, column), 6);
    if (name === 'points') expect(numbers).toContain('fuel_reduction_pct');
  });

  it('name the flight and the version signed in every row, and times as times', async () => {
    const [first] = await parquetRows('entries.parquet');
    const code = signedVersions(viewOf(flightA.entries)).at(-1)?.code;
    expect(first).toMatchObject({ flight_date: '2032-06-02', signed_code: code });
    expect(first?.['time_utc']).toBeInstanceOf(Date);
  });

  it('have the schema of any other flight, whatever is in them', () => {
    const schemaOf = (of: readonly HandedFile[], ending: string) => {
      const { content } = named(ending, of);
      if (typeof content === 'string') throw new Error('Parquet must be bytes');
      return parquetMetadata(content.buffer).schema.map(({ name, type }) => ({ name, type }));
    };
    const small = handOver(chainOf([OPENED, note('haze')]), { build: 'test', files: [] });
    expect(schemaOf(small, 'entries.parquet')).toEqual(schemaOf(files, 'entries.parquet'));
    expect(schemaOf(small, 'readings.parquet')).toEqual(schemaOf(files, 'readings.parquet'));
  });
});

describe('a hand-over', () => {
  const whole = (entries: readonly Entry[]): void => {
    const made = handOver(entries, { build: 'test', files: [] });
    expect(new Set(made.map(({ name }) => name)).size).toBe(made.length);
    expect(csvRows('entries.csv', made)).toHaveLength(viewOf(entries).standing.length);
    for (const { ending, content } of made) {
      if (ending.endsWith('.csv')) {
        const [header = [], ...rows]: readonly (readonly string[])[] = parse(content);
        expect(new Set(header).size).toBe(header.length);
        for (const row of rows) expect(row).toHaveLength(header.length);
      }
    }
  };

  it('can be made of whatever two recorders may have written', () => {
    fc.assert(fc.property(anyLog({ minLength: 1, maxLength: 40 }), whole), { numRuns: 40 });
  }, 60_000);

  it('leaves no formula in a cell, in whatever field it was typed', () => {
    const hostile = '=HYPERLINK("http://example.invalid")';
    const made = handOver(chainOf([OPENED, note(hostile)]), { build: 'test', files: [] });
    const [row] = csvRows('kind-noted.csv', made);
    expect(row?.['words']).toBe(`'${hostile}`);
  });
});
