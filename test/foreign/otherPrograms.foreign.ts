import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, describe, expect, it } from 'vitest';
import { timelineFileName } from '../../src/file/names.ts';
import { headerOf } from '../../src/file/timelineFile.ts';
import { handOver } from '../../src/handover/handOver.ts';
import { flightA } from '../analysis/flights.ts';
import { chainOf, OPENED } from '../file/smallFlight.ts';

/*
 * Files of a hand-over read by programs that nobody here wrote; DEVELOPERS.md names the packages. Not part of npm test,
 * which reads them back with libraries of the npm registry alone.
 */

const folder = mkdtempSync(join(tmpdir(), 'kneeline-foreign-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const position = (longitudeDeg: number, latitudeDeg: number) =>
  ({ kind: 'positionRead', body: { longitudeDeg, latitudeDeg, accuracyM: 8 } }) as const;
const tracked = chainOf([OPENED, position(11.1, 47.2), position(11.2, 47.3), position(11.4, 47.5)]);

for (const entries of [flightA.entries, tracked]) {
  for (const { name, content } of handOver(entries, { build: 'test', files: [] })) {
    writeFileSync(join(folder, name), content);
  }
}
const names = readdirSync(folder);
const STEM = timelineFileName(headerOf(flightA.entries)).replace(/\.jsonl$/, '');
const path = (ending: string): string => join(folder, `${STEM}-${ending}`);

type Row = Readonly<Record<string, string>>;
const rowsOf = (ending: string): readonly Row[] =>
  parse(readFileSync(path(ending)), { columns: true });
const sumOf = (rows: readonly Row[], column: string): number =>
  rows.reduce((total, row) => total + Number(row[column] || 0), 0);

const ran = (program: string, args: readonly string[]): string =>
  execFileSync(program, args, { encoding: 'utf8', cwd: folder, maxBuffer: 64 * 1024 * 1024 });

const PANDAS = `
import sys, json, pandas
t = pandas.read_csv(sys.argv[1])
print(json.dumps({'rows': len(t), 'sums': {c: float(t[c].sum()) for c in t.select_dtypes('number')}}))
`;

describe('every CSV', () => {
  const tables = names.filter((name) => name.startsWith(STEM) && name.endsWith('.csv'));

  it.each(tables)('has the same rows and sums in pandas: %s', (name) => {
    const read = JSON.parse(ran('/usr/bin/python3', ['-c', PANDAS, name]));
    const rows: readonly Row[] = parse(readFileSync(join(folder, name)), { columns: true });
    expect(read.rows).toBe(rows.length);
    for (const [column, sum] of Object.entries(read.sums)) {
      expect(Number(sum)).toBeCloseTo(sumOf(rows, column), 3);
    }
  });

  it.each(['points', 'entries', 'readings-fuel-flow', 'kind-squawk-raised'])(
    'is the same table in a spreadsheet: %s',
    (table) => {
      ran('soffice', [
        '--headless',
        `-env:UserInstallation=file://${join(folder, 'profile')}`,
        '--convert-to',
        // Fields parted by commas, text in quotation marks, UTF-8, every cell as it is shown.
        'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false',
        '--infilter=CSV:44,34,76,1',
        '--outdir',
        join(folder, 'sheet'),
        `${STEM}-${table}.csv`,
      ]);
      const shown: readonly Row[] = parse(
        readFileSync(join(folder, 'sheet', `${STEM}-${table}.csv`)),
        { columns: true },
      );
      const rows = rowsOf(`${table}.csv`);
      expect(shown).toHaveLength(rows.length);
      expect(Object.keys(shown[0] ?? {})).toEqual(Object.keys(rows[0] ?? {}));
      for (const column of Object.keys(rows[0] ?? {}).filter((one) =>
        /_(pct|lb_per_h)/.test(one),
      )) {
        expect(sumOf(shown, column)).toBeCloseTo(sumOf(rows, column), 1);
      }
    },
    120_000,
  );
});

describe('every Parquet file', () => {
  const packages = mkdtempSync(join(tmpdir(), 'kneeline-duckdb-'));
  afterAll(() => rmSync(packages, { recursive: true, force: true }));

  it('is a table of DuckDB, and many flights are asked as one', async () => {
    execFileSync('npm', ['install', '--prefix', packages, '@duckdb/node-api@1.5.6-r.1']);
    const { DuckDBInstance } = createRequire(join(packages, 'package.json'))('@duckdb/node-api');
    const database = await (await DuckDBInstance.create(':memory:')).connect();
    const ask = async (question: string): Promise<readonly Record<string, unknown>[]> =>
      (await database.runAndReadAll(question)).getRowObjectsJson();
    for (const table of ['entries', 'points', 'encounters', 'samples', 'fuel-books', 'losses']) {
      const [counted] = await ask(`select count(*) as n from '${path(`${table}.parquet`)}'`);
      expect(Number(counted?.['n'])).toBe(rowsOf(`${table}.csv`).length);
    }
    const [summed] = await ask(
      `select sum(fuel_reduction_pct) as s, sum(net_lb_per_h) as n from '${path('points.parquet')}'`,
    );
    const points = rowsOf('points.csv');
    expect(Number(summed?.['s'])).toBeCloseTo(sumOf(points, 'fuel_reduction_pct'), 6);
    expect(Number(summed?.['n'])).toBeCloseTo(sumOf(points, 'net_lb_per_h'), 6);
    const flights = await ask(
      `select flight, count(*) as n, min(time_utc)::varchar as first from '${folder}/*-entries.parquet' group by flight order by n`,
    );
    expect(flights.map(({ n }) => Number(n))).toEqual([tracked.length, flightA.entries.length]);
    expect(flights[1]?.['first']).toMatch(/^2032-06-02 /);
  }, 300_000);
});

describe('the track', () => {
  it('has a line and its points in GDAL, where they lie', () => {
    const track = names.find((name) => name.endsWith('track.geojson')) ?? '';
    const told = ran('ogrinfo', ['-al', '-so', track]);
    expect(told).toContain('Feature Count: 4');
    expect(told).toMatch(/Extent: \(11\.100000, 47\.200000\) - \(11\.400000, 47\.500000\)/);
    expect(told).toContain('WGS 84');
  });
});

describe('the lines of the timeline file and the JSON of results', () => {
  it('are counted and summed by jq', () => {
    const lines = join(folder, 'a.jsonl');
    writeFileSync(lines, flightA.entries.map(({ line }) => `${line}\n`).join(''));
    expect(Number(ran('jq', ['-s', 'length', lines]))).toBe(flightA.entries.length);
    const read = ran('jq', [
      '-s',
      '[.[] | .body.readings // [] | .[] | select(.instrument == "FF1") | .value] | add',
      lines,
    ]);
    const flows = rowsOf('readings-fuel-flow.csv').filter(({ instrument }) => instrument === 'FF1');
    expect(Number(read)).toBeCloseTo(sumOf(flows, 'as_read_lb_per_h'), 6);
    const points = ran('jq', ['.flights[0].results.points | length', path('results.json')]);
    expect(Number(points)).toBe(rowsOf('points.csv').length);
  });
});
