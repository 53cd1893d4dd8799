import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import { smallFlight } from '../file/smallFlight.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { DEMO, typed } from './typed.ts';

type Row = Readonly<Record<string, string>>;

const outcome = typed('tables a.jsonl --into out/', { 'a.jsonl': DEMO });
const STEM = 'out/demo-2032-06-02-suction-effectiveness-five-legs-a11ce5ba';

/** The rows of one table, read by a parser that is not ours. */
function rowsOf(name: string): readonly Row[] {
  const file = outcome.files.find(({ path }) => path === `${STEM}-${name}.csv`);
  if (file === undefined) throw new Error(`no table ${name}`);
  return parse(file.content, { columns: true });
}

const numberIn = (row: Row | undefined, column: string): number => Number(row?.[column] ?? NaN);

describe('the tables of flight A', () => {
  it('are named after its timeline file, one a subject', () => {
    expect(outcome).toMatchObject({ code: 0, err: '' });
    const endings = outcome.files.map(({ path }) => path.replace(`${STEM}-`, ''));
    const csv = endings.filter((name) => name.endsWith('.csv'));
    expect(csv.filter((name) => !/^(?:kind|readings)-/.test(name))).toEqual([
      'entries.csv',
      'points.csv',
      'comparisons.csv',
      'suction-spans.csv',
      'encounters.csv',
      'losses.csv',
      'samples.csv',
      'probes.csv',
      'fuel-books.csv',
      'flow-beside-counters.csv',
    ]);
    expect(csv).toEqual(
      expect.arrayContaining(['readings-fuel-flow.csv', 'readings-mach.csv', 'kind-noted.csv']),
    );
    expect(endings).toEqual(expect.arrayContaining(['results.json', 'entries.parquet']));
    expect(outcome.out.trimEnd().split('\n')).toEqual(outcome.files.map(({ path }) => path));
  });

  it('have as many cells in each row as in the header', () => {
    for (const { path, content } of outcome.files) {
      if (!path.endsWith('.csv')) continue;
      const [header = [], ...rows]: readonly (readonly string[])[] = parse(content);
      expect(new Set(header).size).toBe(header.length);
      for (const row of rows) expect(row).toHaveLength(header.length);
    }
  });

  it('hold every entry and every reading, as read beside as corrected', () => {
    expect(rowsOf('entries')).toHaveLength(157);
    // Engine 2 keyed 910 and put right to 810; its gauge is corrected by +10 lb/h.
    const [keyed] = rowsOf('readings-fuel-flow').filter(
      ({ instrument, as_read_lb_per_h: read }) => instrument === 'FF2' && read === '910',
    );
    expect(keyed).toMatchObject({ as_amended_lb_per_h: '810', corrected_lb_per_h: '820' });
  });

  it('hold the fields of each kind, one unit a column, as amended beside as written', () => {
    const [uncovered] = rowsOf('kind-covers-released').filter(({ hung }) => hung === 'R4');
    expect(uncovered).toMatchObject({ wing: 'R', clear: 'R1 R2 R3 R5 R6' });
    expect(rowsOf('kind-levelled-off')[0]).toMatchObject({
      altitude_ft: '37000',
      gross_weight_lb: '40020',
    });
    const amended = rowsOf('kind-moisture-entered').filter(({ as_written: was }) => was !== '');
    for (const { as_written: was } of amended) expect(() => JSON.parse(was ?? '')).not.toThrow();
  });

  it('hold the points in the units of the flight sheet', () => {
    const points = rowsOf('points');
    const worked = oracle.points.filter((row) => 'fuelReduction_pct' in row);
    for (const row of worked) {
      const found = points.find(
        ({ point, run }) => point === row.testPoint && run === String(row.run),
      );
      const { reductions_pct: within } = oracle.compareWithin;
      const reduction = numberIn(found, 'fuel_reduction_pct');
      expect(Math.abs(reduction - row.fuelReduction_pct)).toBeLessThan(within);
      expect(numberIn(found, 'suction_lb_per_h')).toBeCloseTo(row.unit_lb_per_h, 0);
      expect(numberIn(found, 'fuel_reduction_low95_pct')).toBeLessThan(reduction);
    }
    expect(points).toHaveLength(worked.length + oracle.baseline.runs.length);
    expect(points[0]).toMatchObject({ kind: 'baseline', fuel_reduction_pct: '' });
  });

  it('hold each encounter as each wing saw it', () => {
    const [left, right] = rowsOf('encounters');
    expect(left).toMatchObject({
      encounter: 'M1',
      wing: 'L',
      look: 'thin cirrus, partial, no ice',
    });
    expect(right).toMatchObject({ encounter: 'M1', wing: 'R' });
    expect(numberIn(left, 'loss_lag_s')).toBeCloseTo(32, 0);
    expect(rowsOf('encounters')).toHaveLength(2 * oracle.encounters.length);
  });

  it('never name a cause that no person assigned', () => {
    const losses = rowsOf('losses');
    expect(losses.length).toBeGreaterThan(0);
    expect(losses.filter(({ causes_assigned: cause }) => cause !== '')).toEqual([]);
  });

  it('give laboratory results in the units of the laboratory', () => {
    const [, cloud] = rowsOf('samples');
    expect(cloud).toMatchObject({ sample: 'S-02', encounters: 'M1' });
    expect(numberIn(cloud, 'mean_size_micrometre')).toBeCloseTo(34, 9);
    expect(numberIn(cloud, 'number_per_litre')).toBeCloseTo(120, 9);
  });
});

describe('tables of what cannot be read', () => {
  it('are not written at all', () => {
    const { code, err, files } = typed('tables a gone --into out', {
      a: writeTimeline(smallFlight()),
    });
    expect(code).toBe(3);
    expect(err).toContain('gone: there is no such file.\nNothing was written.');
    expect(files).toEqual([]);
  });

  it('are written of every sound line of a damaged file, with the damage told', () => {
    const damaged = writeTimeline(smallFlight()).replace('covers on', 'covers oN');
    const { code, err, files } = typed('tables a --into out', { a: damaged });
    expect(code).toBe(1);
    expect(err).toContain('Line 3 was put aside');
    expect(files.length).toBeGreaterThan(2);
  });
});
