import { describe, expect, it } from 'vitest';
import type { FlightResults } from '../../src/analysis/flightResults.ts';
import { RESULTS_FORMAT } from '../../src/handover/resultsDocument.ts';
import { digestOf, writeTimeline } from '../../src/file/timelineFile.ts';
import { parseEntry } from '../../src/record/parse.ts';
import { chainOf, OPENED, OTHER_FLIGHT, smallFlight } from '../file/smallFlight.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { BUILD, DEMO, typed } from './typed.ts';

/** By the definition of the pound. */
const LB = 0.45359237;
const LB_PER_H = LB / 3600;

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

  it('value the span with suction on', () => {
    const [span] = results.suctionSpans;
    const [row] = oracle.suctionOnSpans;
    if (span?.saving.kind !== 'answer' || row === undefined) throw new Error('no span');
    const { turbulent, countedKg, gross, suctionKg, net } = span.saving.value;
    if ('because' in gross || 'because' in net) throw new Error('no gross or no net');
    const within = oracle.compareWithin.spans_relative;
    const told = [turbulent.kg, countedKg, gross.kg, suctionKg ?? 0, net.kg];
    const worked = [row.turbulent_lb, row.counted_lb, row.gross_lb, row.unit_lb, row.net_lb];
    for (const [place, kg] of told.entries()) {
      expect(Math.abs(kg / LB / (worked[place] ?? 0) - 1)).toBeLessThan(within);
    }
  });

  it('share out laminar area over time, in all air and in clear air', () => {
    const { allAir, clearAir } = results.laminar;
    if (allAir.kind !== 'answer' || clearAir.kind !== 'answer') throw new Error('no share');
    const { allAirShare, clearAirShare } = oracle.laminarFraction;
    const { laminarShare: within } = oracle.compareWithin;
    expect(Math.abs(allAir.value.byAreaFraction - allAirShare)).toBeLessThan(within);
    expect(Math.abs(clearAir.value.byAreaFraction - clearAirShare)).toBeLessThan(within);
  });

  it.each(oracle.encounters)('time loss and return in $encounter', (row) => {
    const met = results.encounters.find(({ label }) => label === row.encounter);
    const { lags_s: within } = oracle.compareWithin;
    for (const wing of ['L', 'R'] as const) {
      const { loss, recovery } = met?.wings[wing] ?? {};
      if (loss?.first.kind !== 'answer' || recovery?.toCount.kind !== 'answer') {
        throw new Error('no lag');
      }
      expect(Math.abs(loss.first.value.lagS - row.loss[wing].lag_s)).toBeLessThan(within);
      expect(Math.abs(recovery.toCount.value.lagS - row.recovery[wing].lag_s)).toBeLessThan(within);
    }
  });

  it('test what went together, and refuse what three samples cannot show', () => {
    const told = results.associations.map(({ test }) =>
      test.kind === 'answer' ? test.value.pTwoSided : null,
    );
    expect(told).toHaveLength(oracle.fisher.length);
    for (const [place, { p }] of oracle.fisher.entries()) {
      const found = told[place] ?? null;
      if (p === null) expect(found).toBeNull();
      else
        expect(Math.abs((found ?? 0) / p - 1)).toBeLessThan(
          oracle.compareWithin.p_relative + 0.005,
        );
    }
  });

  it('balance the fuel books', () => {
    const { counters, tanks } = results.fuelBalance.used;
    if (counters.kind !== 'answer' || tanks.kind !== 'answer') throw new Error('no books');
    // The script counts whole pounds.
    expect(counters.value.kg / LB).toBeCloseTo(oracle.balance.countersTotal, 6);
    expect(tanks.value.kg / LB).toBeCloseTo(oracle.balance.tankDrop, 6);
    expect(results.fuelBalance.verdict.kind).toBe('allAgree');
  });

  it('count labour for each hour airborne', () => {
    const { perAirborneHour } = results.labour;
    if (perAirborneHour.kind !== 'answer') throw new Error('no labour');
    expect(perAirborneHour.value.labourPerFlownHour).toBeCloseTo(
      oracle.labour.labourPerAirborneHour,
      2,
    );
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
