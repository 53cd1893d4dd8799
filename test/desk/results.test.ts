import { describe, expect, it } from 'vitest';
import type { FlightResults } from '../../src/analysis/flightResults.ts';
import { lengthOf, PAGE_COLUMNS } from '../../src/desk/page/layout.ts';
import { RESULTS_FORMAT } from '../../src/desk/results.ts';
import { digestOf, writeTimeline } from '../../src/file/timelineFile.ts';
import { parseEntry } from '../../src/record/parse.ts';
import { chainOf, OPENED, OTHER_FLIGHT, smallFlight } from '../file/smallFlight.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { BUILD, DEMO, typed } from './typed.ts';

/** Pound per hour in kilograms per second, by the definition of the pound. */
const LB_PER_H = 0.45359237 / 3600;

interface Printed {
  readonly kneeline: string;
  readonly format: number;
  readonly build: string;
  readonly flights: readonly {
    readonly record: { readonly entries: number; readonly digest: string };
    readonly results: FlightResults;
  }[];
}

function printed(files: Readonly<Record<string, string>>): Printed {
  return JSON.parse(typed(`results --json ${Object.keys(files).join(' ')}`, files).out);
}

const entries = DEMO.trimEnd()
  .split('\n')
  .slice(1, -1)
  .flatMap((line) => {
    const read = parseEntry(line);
    return read.ok ? [read.value] : [];
  });
const document = printed({ 'a.jsonl': DEMO });
const [flight] = document.flights;
if (flight === undefined) throw new Error('the demonstration flight must be printed');
const { results } = flight;
const page = typed('results a.jsonl', { 'a.jsonl': DEMO });

describe('the results of flight A as JSON', () => {
  it('say what they are, of which record, and by which build', () => {
    expect(document).toMatchObject({ kneeline: 'results', format: RESULTS_FORMAT, build: BUILD });
    expect(flight.record).toMatchObject({ entries: 157, digest: digestOf(entries) });
  });

  const reductions = oracle.points.filter((row) => 'fuelReduction_pct' in row);

  it.each(reductions)('hold the worked numbers of $testPoint run $run', (row) => {
    const point = results.points.find((one) => one.point === row.testPoint && one.run === row.run);
    expect(point?.result.kind).toBe(row.status === 'valid' ? 'valid' : 'indicative');
    if (point === undefined || !('fuel' in point.result)) throw new Error('no reduction');
    const { fuel, drag, grossKgPerS, suctionUnitKgPerS, netKgPerS } = point.result;
    const { reductions_pct: within, flows_relative: share } = oracle.compareWithin;
    expect(Math.abs(100 * fuel.fraction - row.fuelReduction_pct)).toBeLessThan(within);
    expect(
      'fraction' in drag && Math.abs(100 * drag.fraction - row.dragReduction_pct),
    ).toBeLessThan(within);
    // A saving is the difference of two flows, each within its share of about 2,300 lb/h.
    const withinLbPerH = 2 * share * row.baselineAtThatWeight_lb_per_h;
    expect(Math.abs((grossKgPerS ?? 0) / LB_PER_H - row.gross_lb_per_h)).toBeLessThan(withinLbPerH);
    expect(Math.abs((suctionUnitKgPerS ?? 0) / LB_PER_H - row.unit_lb_per_h)).toBeLessThan(0.1);
    expect(Math.abs((netKgPerS ?? 0) / LB_PER_H - row.net_lb_per_h)).toBeLessThan(withinLbPerH);
    expect(point.readingsUsed).toHaveLength(row.readingsUsed.length);
    expect(point.readingsLeftOut).toHaveLength(row.readingsLeftOut.length);
  });

  it('are looked at for every worked point', () => {
    expect(reductions).toHaveLength(8);
    // Two suction-off runs beside them.
    expect(results.points).toHaveLength(10);
  });

  it.each(oracle.comparisons)('tell $testPoint from $against as worked', (row) => {
    const found = results.comparisons.find(
      ({ point, run }) => point === row.testPoint && run === row.run,
    );
    expect(found).toMatchObject({
      against: { point: row.against },
      fractionDiffers: row.perCentDiffers,
      savingDiffers: row.savingDiffers,
    });
  });

  it('count the cards and name the one to fly again', () => {
    const { planned, complete, refly } = results.completion;
    expect({ planned, complete }).toEqual({
      planned: oracle.completion.planned,
      complete: oracle.completion.complete,
    });
    expect(refly).toEqual([{ point: 'TP06', priority: 3, because: 'terminated' }]);
  });

  it.each(oracle.clocks)('fit the $clock', (row) => {
    const fit = results.clocks.fits.find(({ clock }) => clock === row.clock);
    expect(fit?.rate?.resolved).toBe(row.rateResolved);
    const { clockOffsets_s: within } = oracle.compareWithin;
    expect(Math.abs((fit?.middle?.offsetS ?? 99) - row.offsetAtMiddle_s)).toBeLessThan(within);
  });

  it('lead to entries that are in the file', () => {
    const known = new Set<string>(entries.map(({ id }) => id));
    const named = JSON.stringify(results).match(/"[0-9a-f]{64}"/g) ?? [];
    expect(named.length).toBeGreaterThan(100);
    expect(named.filter((id) => !known.has(id.slice(1, -1)))).toEqual([]);
  });

  it('are plain values: what JSON cannot say stands nowhere in them', () => {
    const unsayable: string[] = [];
    JSON.stringify(results, (key, value: unknown) => {
      if (typeof value === 'number' && !Number.isFinite(value)) unsayable.push(key);
      return value;
    });
    expect(unsayable).toEqual([]);
  });
});

describe('the page of flight A', () => {
  it('opens with what the meeting asks first', () => {
    expect(page.code).toBe(0);
    expect(page.out).toMatch(/^Suction effectiveness, five legs {2}\(DEMO\)\n/);
    expect(page.out).toMatch(/Airborne {3}22:00:14Z to 01:10:40Z, 3 h 10 min \[\d+ \d+\]/);
    expect(page.out).toContain('Cards      8 of 9 complete; to fly again: TP06');
  });

  it('gives each number its interval and unit, in the units of the flight sheet', () => {
    // TP08: 28.66 % (28.05 to 29.27), gross 633, unit 88, net 545 lb/h in the worked results.
    expect(page.out).toMatch(/TP08 r1 +complete +3 +28\.7 \(28\.0 to 29\.3\) .* 633 +88 +545\n/);
    expect(page.out).toContain('Gross lb/h');
  });

  it('names the gate that left a reading out, and the entry', () => {
    expect(page.out).toMatch(/left out \[38\] Mach drift, before on condition/);
    expect(page.out).toMatch(/\[38\] {2}2032-06-02 22:37:45Z Fuel 920, 850 lb\/h/);
  });

  it('explains every entry that it cites', () => {
    const [body = '', list = ''] = page.out.split('\nEntries cited');
    const cited = [...body.matchAll(/\[([\d ]+)\]/g)].flatMap(([, numbers = '']) =>
      numbers.split(' '),
    );
    expect(cited.length).toBeGreaterThan(20);
    expect(cited.filter((number) => !list.includes(`\n[${number}]`))).toEqual([]);
  });

  it('never says cause, and defers in its foot', () => {
    expect(page.out).toContain('Association is not cause');
    expect(page.out.replace(/\s+/g, ' ')).toContain(
      'A record, not an instrument: not for flying, navigating, fuel planning or fuel state. The operator’s approval and ' +
        'the test safety plan overrule this page',
    );
  });

  it('keeps to the width of the paper', () => {
    const tooLong = page.out.split('\n').filter((line) => lengthOf(line) > PAGE_COLUMNS);
    expect(tooLong).toEqual([]);
  });
});

describe('results of several files', () => {
  const halves = {
    b: writeTimeline(entries.filter(({ seq }) => seq <= 80)),
    a: DEMO,
  };

  it('of one flight are those of the flight, in whatever order the files are named', () => {
    const of = (line: string) => JSON.parse(typed(line, halves).out).flights[0].results;
    expect(of('results --json b a')).toEqual(results);
    expect(of('results --json a b')).toEqual(results);
  });

  it('of several flights stand one after the other, by date', () => {
    const files = {
      a: DEMO,
      s: writeTimeline(smallFlight()),
      o: writeTimeline(chainOf([OPENED], { flight: OTHER_FLIGHT })),
    };
    const { code, out } = typed('results a s o', files);
    expect(code).toBe(0);
    const titles = [...out.matchAll(/^(Slot check|Suction effectiveness)/gm)].map(([, t]) => t);
    expect(titles).toEqual(['Slot check', 'Slot check', 'Suction effectiveness']);
  });

  it('with a damaged one are given, and the damage is told on standard error', () => {
    const damaged = DEMO.replace('"value":910', '"value":810');
    const { code, out, err } = typed('results a', { a: damaged });
    expect(code).toBe(1);
    expect(out).toContain('TP08 r1');
    expect(err).toMatch(/^a: Line \d+ was put aside: it was changed after it was written/);
  });

  it('of nothing that can be read are nothing', () => {
    expect(typed('results gone')).toMatchObject({
      code: 3,
      out: '',
      err: 'gone: there is no such file.\n',
    });
  });
});

describe('a flight with hardly anything in it', () => {
  it('gets a page that says what is missing', () => {
    const { code, out } = typed('results s', { s: writeTimeline(smallFlight()) });
    expect(code).toBe(0);
    expect(out).toContain('No test point was started.');
    expect(out).toContain('No lift-off was marked.');
    expect(out).toContain('No time hack was taken');
    expect(out).toContain('Draft: the flight is not closed.');
    expect(out).not.toMatch(/NaN|undefined|null/);
  });
});
