import { describe, expect, it } from 'vitest';
import { encounters, type Encounter } from '../../../src/analysis/encounters/encounters.ts';
import { WINGS, type FlightSheet } from '../../../src/record/sheet.ts';
import oracle from '../../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { idOfLine } from '../../flights/scriptToEntries.ts';
import { flightA, sheetA, viewOfEntries, withSheet } from '../flights.ts';
import { answerOf, POUND_KG, relative } from './reading.ts';

/*
 * Expected values: the worked debrief of flight A (test/flights/scripts/flight-a-oracle.json), tolerances its own
 * `compareWithin`; doubts are printed to 0.1 s and fuel to 0.1 lb.
 */
const within = oracle.compareWithin;
const found = encounters(viewOfEntries(flightA.entries));

function encounterOf(label: string): Encounter {
  const encounter = found.find((one) => one.label === label);
  if (encounter === undefined) throw new RangeError(`${label} must be found`);
  return encounter;
}

describe('encounters of flight A', () => {
  it('finds every encounter and no other', () => {
    expect(found.map(({ label }) => label)).toEqual(oracle.encounters.map((row) => row.encounter));
    expect(oracle.encounters.length).toBe(3);
  });

  it.each(oracle.encounters)('$encounter: time in moisture and how it looked', (row) => {
    const { entry, inMoisture, look } = encounterOf(row.encounter);
    expect(entry.standardUncertaintyS).toBe(row.entryDoubt_s);
    expect(Math.abs(answerOf(inMoisture).durationS - row.inMoisture_s)).toBeLessThan(within.lags_s);
    expect(look).toBe(row.look);
  });

  it.each(oracle.encounters)('$encounter: loss and recovery of each wing', (row) => {
    const { wings } = encounterOf(row.encounter);
    for (const wing of WINGS) {
      const { loss, recovery } = wings[wing];
      const first = answerOf(loss.first);
      expect(Math.abs(first.lagS - row.loss[wing].lag_s)).toBeLessThan(within.lags_s);
      expect(first.lagStandardUncertaintyS).toBeCloseTo(row.loss[wing].doubt_s, 1);
      expect(first.from?.laminar).toBe(row.loss[wing].countFrom);
      expect(first.to?.laminar).toBe(row.loss[wing].countTo);
      // Each wing came back in one call, so the first back and all back are the same moment here.
      for (const back of [answerOf(recovery.toCount), answerOf(recovery.sustained)]) {
        expect(Math.abs(back.lagS - row.recovery[wing].lag_s)).toBeLessThan(within.lags_s);
        expect(back.lagStandardUncertaintyS).toBeCloseTo(row.recovery[wing].doubt_s, 1);
        expect(back.count?.laminar).toBe(row.loss[wing].countFrom);
      }
    }
  });

  it.each(oracle.encounters)('$encounter: laminar area before and while lost', (row) => {
    const { area, lost } = encounterOf(row.encounter);
    const { before, during } = answerOf(area);
    expect(Math.abs(before.byAreaFraction - row.shareBefore)).toBeLessThan(within.laminarShare);
    expect(Math.abs(during.byAreaFraction - row.shareDuring)).toBeLessThan(within.laminarShare);
    expect(before.observedFraction).toBe(1);
    expect(Math.abs(answerOf(lost).lostForS - row.lostFor_s)).toBeLessThan(within.lags_s);
  });

  it.each(oracle.encounters)('$encounter: fuel forgone', (row) => {
    const { fuelForgone } = encounterOf(row.encounter);
    const { fuelKg, fuelStandardUncertaintyKg, runs } = answerOf(fuelForgone);
    expect(relative(fuelKg / POUND_KG, row.fuelForgone_lb)).toBeLessThan(within.flows_relative);
    const expected = row.encounter === 'M1' ? ['TP04'] : ['TP02', 'TP07', 'TP08'];
    expect(runs.map(({ point }) => point)).toEqual(expected);
    // Of the saving: the worked doubt of each run times its baseline. Of the time: two calls of 2 s doubt each.
    const own = oracle.points.filter(
      ({ testPoint, status }) => status === 'valid' && expected.includes(testPoint),
    );
    const mean = (of: (point: (typeof own)[number]) => number): number =>
      own.reduce((total, point) => total + of(point), 0) / own.length;
    const savingDoubt = mean(
      (point) => (point.u_1sigma_pct / 100) * point.baselineAtThatWeight_lb_per_h,
    );
    const saving = mean((point) => point.gross_lb_per_h);
    const doubt_lb =
      (1 - row.shareDuring / row.shareBefore) *
      Math.hypot((savingDoubt * row.lostFor_s) / 3600, (saving * Math.hypot(2, 2)) / 3600);
    expect(relative(fuelStandardUncertaintyKg / POUND_KG, doubt_lb)).toBeLessThan(
      within.uncertainties_relative,
    );
  });

  it('takes what the engines save where they drive the suction themselves', () => {
    const bleed: FlightSheet = {
      ...sheetA,
      aircraft: { ...sheetA.aircraft, suctionDrive: 'bleed' },
    };
    const driven = encounters(viewOfEntries(withSheet(flightA.entries, bleed)));
    expect(driven.length).toBe(oracle.encounters.length);
    for (const [place, row] of oracle.encounters.entries()) {
      const own = driven[place];
      const fuelKg = own === undefined ? NaN : answerOf(own.fuelForgone).fuelKg;
      expect(relative(fuelKg / POUND_KG, row.fuelForgone_lb)).toBeLessThan(within.flows_relative);
    }
  });

  it('leads from a lag back to the two touches', () => {
    const { loss } = encounterOf('M2').wings.L;
    if (loss.first.kind === 'noAnswer') throw new Error(loss.first.because);
    const [entry, lost] = [101, 96].map((n) => idOfLine(flightA.idOf, n));
    expect(loss.first.how.entries).toEqual(expect.arrayContaining([entry, lost]));
    expect(loss.first.how.broken).toEqual([]);
  });
});
