import { describe, expect, it } from 'vitest';
import { fuelBalance } from '../../../src/analysis/fuel/balance.ts';
import { flowBesideCounters } from '../../../src/analysis/fuel/flowBesideCounters.ts';
import { labour } from '../../../src/analysis/fuel/labour.ts';
import { suctionSpans } from '../../../src/analysis/fuel/spans.ts';
import oracle from '../../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { idOfLine } from '../../flights/scriptToEntries.ts';
import { answerOf, reasonOf, relative } from '../encounters/reading.ts';
import { flightA, LB_PER_H_PER_KG_PER_S, viewOfEntries } from '../flights.ts';
import { POUND_KG } from './steadyFlight.ts';

/*
 * Expected values: the worked debrief of flight A (test/flights/scripts/flight-a-oracle.json), tolerances its own
 * `compareWithin`; differences of flows are printed to 0.1 lb/h.
 */
const within = oracle.compareWithin;
const view = viewOfEntries(flightA.entries);

function kgOf(figure: { readonly kg: number } | { readonly because: string }): number {
  if ('because' in figure) throw new Error(`no figure: ${figure.because}`);
  return figure.kg;
}

describe('suction-on span of flight A', () => {
  const spans = suctionSpans(view);

  it('is one, on both wings', () => {
    expect(oracle.suctionOnSpans.length).toBe(1);
    expect(spans.map(({ wings }) => wings)).toEqual([['L', 'R']]);
  });

  it.each(oracle.suctionOnSpans)('from $from to $to', (row) => {
    const [span] = spans;
    if (span === undefined) throw new Error('a span must be found');
    // The record is on the tablet's clock, which the hacks put 0.6 to 1.1 s ahead of the master.
    expect(Math.abs(span.from - Date.parse(row.from))).toBeLessThan(1200);
    expect(Math.abs(span.to - Date.parse(row.to))).toBeLessThan(1200);
    expect(relative((span.to - span.from) / 3_600_000, row.hours)).toBeLessThan(
      within.spans_relative,
    );
    const saving = answerOf(span.saving);
    const { turbulent, gross, net } = saving;
    expect(relative(turbulent.kg / POUND_KG, row.turbulent_lb)).toBeLessThan(within.spans_relative);
    expect(saving.countedKg / POUND_KG).toBeCloseTo(row.counted_lb, 6);
    expect(relative(kgOf(gross) / POUND_KG, row.gross_lb)).toBeLessThan(within.spans_relative);
    expect((saving.suctionKg ?? 0) / POUND_KG).toBeCloseTo(row.unit_lb, 6);
    expect(saving.suctionFrom).toBe('counter');
    expect(relative(kgOf(net) / POUND_KG, row.net_lb)).toBeLessThan(within.spans_relative);
    if ('because' in gross || 'because' in net) throw new Error('both must be given');
    expect(relative(100 * gross.fraction, row.gross_pct)).toBeLessThan(within.spans_relative);
    expect(relative(100 * net.fraction, row.net_pct)).toBeLessThan(within.spans_relative);
    expect(relative(gross.standardUncertaintyKg / POUND_KG, row.u_gross_lb)).toBeLessThan(
      within.uncertainties_relative,
    );
    const [low = 0, high = 0] = row.gross_interval95_lb;
    expect(relative(gross.interval95.low / POUND_KG, low)).toBeLessThan(within.spans_relative);
    expect(relative(gross.interval95.high / POUND_KG, high)).toBeLessThan(within.spans_relative);
  });

  it('stands on a fit through both baselines and breaks no gate', () => {
    const saving = spans[0]?.saving;
    if (saving?.kind !== 'answer') throw new Error('the span must have numbers');
    expect(saving.how.method).toBe('fit');
    expect(saving.how.broken).toEqual([]);
    expect(saving.value.baselineRuns).toEqual(['TP01', 'TP09']);
    expect(saving.value.provisional).toEqual([]);
    // On, off and the readings that made the baseline.
    for (const line of [26, 27, 123, 21, 23, 24, 127, 128, 129]) {
      expect(saving.how.entries).toContain(idOfLine(flightA.idOf, line));
    }
  });

  it('doubts the calibration most: the baseline is gauged and the burn is counted', () => {
    const { uncertaintyPartsKg } = answerOf(spans[0]?.saving ?? missing());
    const { calibration, ...others } = uncertaintyPartsKg;
    expect(calibration).toBeGreaterThan(Math.max(...Object.values(others)));
  });
});

describe('gauges beside counters on flight A', () => {
  const flows = flowBesideCounters(view);

  it('compares the runs with two readings side by side and no other', () => {
    const rows = oracle.balance.flowAgainstCounters;
    expect(rows.length).toBe(8);
    expect(
      flows.runs.flatMap(({ point, run, flows: told }) =>
        told.kind === 'answer' ? [`${point} ${run}`] : [],
      ),
    ).toEqual(rows.map(({ testPoint, run }) => `${testPoint} ${run}`));
    const others = flows.runs.filter(({ flows: told }) => told.kind === 'noAnswer');
    expect(others.map(({ point, flows: told }) => `${point} ${reasonOf(told)}`)).toEqual([
      'TP04 oneReading',
      'TP06 oneReading',
    ]);
  });

  it.each(oracle.balance.flowAgainstCounters)('$testPoint run $run', (row) => {
    const found = flows.runs.find(
      ({ point, run }) => point === row.testPoint && run === row.run,
    )?.flows;
    if (found === undefined) throw new Error('the run must be found');
    const told = answerOf(found);
    const lbPerH = (kgPerS: number): number => kgPerS * LB_PER_H_PER_KG_PER_S;
    expect(relative(lbPerH(told.gaugesKgPerS), row.gauges_lb_per_h)).toBeLessThan(
      within.flows_relative,
    );
    expect(relative(lbPerH(told.counterKgPerS), row.counterSlope_lb_per_h)).toBeLessThan(
      within.flows_relative,
    );
    expect(lbPerH(told.differenceKgPerS)).toBeCloseTo(row.difference_lb_per_h, 0);
    expect(lbPerH(told.counterStandardUncertaintyKgPerS)).toBeCloseTo(row.u_counter_lb_per_h, 1);
    expect(told.used).toBe('gauges');
    expect(told.agrees).toBe(true);
  });

  it('finds them apart by next to nothing in the mean, and nobody odd', () => {
    const mean = (flows.meanDifferenceKgPerS ?? NaN) * LB_PER_H_PER_KG_PER_S;
    expect(mean).toBeCloseTo(oracle.balance.meanDifference_lb_per_h, 0);
    expect(flows.oddRuns).toEqual([]);
    expect(flows.engines.map(({ gauge, counter, odd }) => [gauge, counter, odd])).toEqual([
      ['FF1', 'FU1', null],
      ['FF2', 'FU2', null],
    ]);
  });
});

describe('fuel books of flight A', () => {
  const { used, pairs, verdict } = fuelBalance(view);

  it('have counters and tanks apart by 25 lb', () => {
    const { balance } = oracle;
    expect(answerOf(used.counters).kg / POUND_KG).toBeCloseTo(balance.countersTotal, 6);
    expect(answerOf(used.tanks).kg / POUND_KG).toBeCloseTo(balance.tankDrop, 6);
    const pair = pairs.find(({ one, other }) => one === 'counters' && other === 'tanks');
    if (pair === undefined) throw new Error('the pair must be there');
    const { differenceKg, otherKg } = answerOf(pair.compared);
    expect(differenceKg / POUND_KG).toBeCloseTo(balance.difference, 6);
    expect((100 * differenceKg) / otherKg).toBeCloseTo(balance.difference_pct_of_tank, 2);
  });

  it('hold the tank gauges to the start that was loaded, and say so', () => {
    expect(used.tanks.kind === 'answer' && used.tanks.how.broken).toEqual(['startNotGauged']);
  });

  it('carry the gauges over the cruise alone, and agree', () => {
    const flow = answerOf(used.flow);
    expect(new Date(flow.from).toISOString().slice(0, 16)).toBe('2032-06-02T22:26');
    expect(new Date(flow.to).toISOString().slice(0, 16)).toBe('2032-06-03T00:52');
    expect(reasonOf(used.uplift)).toBe('noUplift');
    expect(verdict).toEqual({ kind: 'allAgree' });
  });
});

describe('labour of flight A', () => {
  const { work, perAirborneHour, perBlockHour } = labour(view);
  const expected = oracle.labour;

  it('adds up by panel and task', () => {
    const { labourH, asRaisedH, byPanel, byTask } = answerOf(work);
    expect(labourH).toBeCloseTo(expected.labour_h, 9);
    expect(asRaisedH).toBeCloseTo(expected.labour_h, 9);
    const found = Object.fromEntries(byPanel.map((row) => [row.panels.join(' '), row.labourH]));
    expect(found).toEqual(expected.byPanel);
    expect(byTask.map(({ squawk }) => squawk)).toEqual([
      'SQ-1',
      'SQ-2',
      'SQ-3',
      'SQ-4',
      'SQ-5',
      'SQ-6',
    ]);
  });

  it('comes to eight hours of work an hour in the air', () => {
    const airborne = answerOf(perAirborneHour);
    expect(airborne.flownH).toBeCloseTo(expected.airborne_h, 2);
    expect(airborne.labourPerFlownHour).toBeCloseTo(expected.labourPerAirborneHour, 2);
    expect(answerOf(perBlockHour).flownH).toBeCloseTo(expected.block_h, 2);
  });
});

function missing(): never {
  throw new Error('the span must be found');
}
