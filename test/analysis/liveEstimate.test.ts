import { describe, expect, it } from 'vitest';
import { liveEstimate, liveEstimateOf } from '../../src/analysis/liveEstimate.ts';
import type { LiveEstimate } from '../../src/analysis/results.ts';
import { startFlight, type FlightView } from '../../src/record/flight.ts';
import live from '../flights/scripts/flight-a-live.json' with { type: 'json' };
import { idOfLine } from '../flights/scriptToEntries.ts';
import { flightA, glanceOfLine, LB_PER_H_PER_KG_PER_S, LB_PER_N } from './flights.ts';

/*
 * Expected values: the worked example beside flight A, made by other code from the same entries
 * (test/flights/scripts/flight-a-live.json). Tolerances are its own `compareWithin`.
 */
const within = live.compareWithin;
type Row = (typeof live.readings)[number];

/** What is shown as each entry is written, looked at after every fuel reading; and the view at the end. */
function replay(): { readonly shown: ReadonlyMap<number, LiveEstimate>; readonly end: FlightView } {
  const flight = startFlight();
  const wanted = new Map(live.readings.map((row) => [idOfLine(flightA.idOf, row.n), row.n]));
  const shown = new Map<number, LiveEstimate>();
  for (const entry of flightA.entries) {
    const view = flight.add([entry]);
    const n = wanted.get(entry.id);
    if (n !== undefined) shown.set(n, liveEstimate(view));
  }
  return { shown, end: flight.view() };
}

const { shown, end } = replay();

function shownAt(n: number): LiveEstimate {
  const estimate = shown.get(n);
  if (estimate === undefined) throw new RangeError(`line ${n} must be a reading`);
  return estimate;
}

function relative(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}

describe('live figure of flight A, entry by entry', () => {
  it('has all 31 readings to compare with', () => {
    expect(live.readings.length).toBe(31);
    expect(shown.size).toBe(31);
  });

  it.each(live.readings)('line $n is $state', (row: Row) => {
    const estimate = shownAt(row.n);
    expect(estimate.kind).toBe(row.state);
    expect(estimate.at).not.toBeNull();
  });

  const compared = live.readings.filter((row) => row.fuelReduction_pct !== null);

  it.each(compared)('line $n saves $fuelReduction_pct % of fuel', (row: Row) => {
    const estimate = shownAt(row.n);
    if (estimate.kind !== 'value' && estimate.kind !== 'struck') throw new Error(estimate.kind);
    const limit = row.state === 'struck' ? within.struckReadings_pct : within.reductions_pct;
    expect(Math.abs(estimate.fuel.fraction * 100 - (row.fuelReduction_pct ?? NaN))).toBeLessThan(
      limit,
    );
    expect(relative(estimate.fuel.standardUncertainty * 100, row.u_1sigma_pct ?? NaN)).toBeLessThan(
      within.uncertainties_relative,
    );
    if (!('kgPerS' in estimate.savings.gross)) throw new Error(estimate.savings.gross.because);
    // At the temperature flown, which is within 1 % of the card's in its root.
    const saved = estimate.madeOf.baselineAtThatWeightKgPerS - estimate.madeOf.flowAtCardKgPerS;
    expect(relative(estimate.savings.gross.kgPerS, saved)).toBeLessThan(0.01);
    const [low = NaN, high = NaN] = row.interval95_pct ?? [];
    // Interval ends carry the tolerance of the reduction and of twice its doubt: 0.2 points is well inside.
    expect(Math.abs(estimate.fuel.interval95.low * 100 - low)).toBeLessThan(0.2);
    expect(Math.abs(estimate.fuel.interval95.high * 100 - high)).toBeLessThan(0.2);
    if ('because' in estimate.drag) throw new Error(estimate.drag.because);
    expect(Math.abs(estimate.drag.fraction * 100 - (row.dragReduction_pct ?? NaN))).toBeLessThan(
      limit,
    );
  });

  it.each(compared)('line $n is made of the flows, weights and runs it names', (row: Row) => {
    const estimate = shownAt(row.n);
    if (estimate.kind !== 'value' && estimate.kind !== 'struck') throw new Error(estimate.kind);
    const { madeOf } = estimate;
    expect(madeOf.method).toBe(row.method);
    expect(madeOf.baselineRuns).toEqual(row.baselineRuns);
    expect(madeOf.borrowedFrom).toBe(live.borrowedBaseline.from);
    const flowLbPerH = madeOf.flowAtCardKgPerS * LB_PER_H_PER_KG_PER_S;
    expect(relative(flowLbPerH, row.flowAtCard_lb_per_h)).toBeLessThan(within.flows_relative);
    const baseline = madeOf.baselineAtThatWeightKgPerS * LB_PER_H_PER_KG_PER_S;
    expect(relative(baseline, row.baselineAtThatWeight_lb_per_h ?? NaN)).toBeLessThan(
      within.flows_relative,
    );
    expect(relative(madeOf.weightN * LB_PER_N, row.weight_lb)).toBeLessThan(
      within.weights_relative,
    );
    expect(relative(madeOf.weightAtCardN * LB_PER_N, row.weightAtCard_lb)).toBeLessThan(
      within.weights_relative,
    );
    expect(madeOf.entries).toContain(idOfLine(flightA.idOf, row.n));
    expect(madeOf.entries).toContain(idOfLine(flightA.idOf, 21));
  });

  it.each(compared)('line $n names its first broken gate and all the others', (row: Row) => {
    const estimate = shownAt(row.n);
    if (estimate.kind !== 'value' && estimate.kind !== 'struck') throw new Error(estimate.kind);
    expect(estimate.broken[0] ?? null).toBe(row.because[0] ?? null);
    // The limit on the energy correction is a gate of this product beside those of the example.
    expect(estimate.broken.filter((gate) => gate !== 'energyCorrectionTooLarge')).toEqual(
      row.because,
    );
    expect(estimate.point).toBe(row.testPoint ?? null);
    expect(estimate.run).toBe(row.run ?? null);
    expect(estimate.notes.includes('noRunOpen')).toBe(row.notes?.includes('noRunOpen') ?? false);
    expect(estimate.notes.includes('airDataOfAnotherReading')).toBe(
      row.notes?.some((note) => note.startsWith('air data of entry')) ?? false,
    );
    expect(estimate.provisional).toEqual([]);
  });

  const baselines = live.readings.filter((row) => row.state === 'baselineReading');

  it.each(baselines)('line $n makes the baseline', (row: Row) => {
    const estimate = shownAt(row.n);
    if (estimate.kind !== 'baselineReading') throw new Error(estimate.kind);
    const flowLbPerH = estimate.flowAtCardKgPerS * LB_PER_H_PER_KG_PER_S;
    expect(relative(flowLbPerH, row.flowAtCard_lb_per_h)).toBeLessThan(within.flows_relative);
    expect(relative(estimate.weightN * LB_PER_N, row.weight_lb)).toBeLessThan(
      within.weights_relative,
    );
    expect(estimate.broken).toEqual([]);
    expect(estimate.provisional).toEqual([]);
    expect(estimate.entries).toContain(idOfLine(flightA.idOf, row.n));
    const earlier = row.againstEarlierBaseline;
    if (earlier === undefined) {
      expect(estimate.againstEarlier).toBeNull();
      return;
    }
    const moved = (estimate.againstEarlier?.movedKgPerS ?? NaN) * LB_PER_H_PER_KG_PER_S;
    expect(relative(moved, earlier.moved_lb_per_h)).toBeLessThan(within.flows_relative);
    const difference = (estimate.againstEarlier?.differenceFraction ?? NaN) * 100;
    expect(Math.abs(difference - earlier.difference_pct)).toBeLessThan(within.reductions_pct);
    expect(Math.abs((estimate.againstEarlier?.overU ?? NaN) - earlier.overU)).toBeLessThan(0.15);
  });

  it('counts the readings of the baseline run as they come', () => {
    const counts = [21, 23, 24].map((n) => {
      const estimate = shownAt(n);
      return estimate.kind === 'baselineReading' ? estimate.readingsInRun : 0;
    });
    expect(counts).toEqual([1, 2, 3]);
  });
});

describe('the same reading once an amendment is written', () => {
  const amended = live.readings.flatMap((row) =>
    (row.later ?? []).map((after) => ({ n: row.n, ...after })),
  );

  it('has both amendments of the flight', () => {
    expect(amended.map(({ n }) => n)).toEqual([51, 106]);
  });

  it.each(amended)('line $n shows $state after $by', ({ n, by, ...after }) => {
    const amendment = idOfLine(flightA.idOf, Number(by.replace('amendment ', '')));
    const flight = startFlight();
    const position = flightA.entries.findIndex((entry) => entry.id === amendment);
    const view = flight.add(flightA.entries.slice(0, position + 1));
    const estimate = liveEstimateOf(view, glanceOfLine(view, n));
    if (estimate.kind !== 'value' && estimate.kind !== 'struck') throw new Error(estimate.kind);
    expect(estimate.kind).toBe(after.state);
    expect(estimate.broken).toEqual(after.because);
    expect(estimate.madeOf.method).toBe(after.method);
    expect(Math.abs(estimate.fuel.fraction * 100 - after.fuelReduction_pct)).toBeLessThan(
      within.reductions_pct,
    );
    expect(relative(estimate.fuel.standardUncertainty * 100, after.u_1sigma_pct)).toBeLessThan(
      within.uncertainties_relative_afterSecondBaseline,
    );
  });

  it('strikes the reading in cloud once the late moisture entry is written', () => {
    const estimate = liveEstimateOf(end, glanceOfLine(end, 98));
    expect(estimate.kind).toBe('struck');
    expect('broken' in estimate && estimate.broken).toEqual(['moisture']);
  });
});
