import { describe, expect, it } from 'vitest';
import { correctedReading } from '../../src/analysis/calibrate.ts';
import { laminarAt, laminarFraction, laminarOf } from '../../src/analysis/laminar.ts';
import { grossWeightAt } from '../../src/analysis/weight.ts';
import { epochMs } from '../../src/record/brand.ts';
import type { Entry, Reading } from '../../src/record/entry.ts';
import type { Instrument } from '../../src/record/sheet.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import {
  bodyOf,
  flightA,
  glanceOfLine,
  LB_PER_N,
  rewritten,
  sheetA,
  viewOfEntries,
} from './flights.ts';

const thermometer: Instrument = {
  id: 'SAT',
  name: 'static air temperature',
  quantity: 'staticAirTemp',
  unit: 'degC',
  format: { wholeDigits: 2, decimals: 1, signed: true },
  resolution: 0.5,
  repeatability: 0.2,
  calibration: {
    correction: 9,
    points: [
      { reading: 0, correction: 1 },
      { reading: -60, correction: -0.5 },
    ],
    residualStandardUncertainty: 0.3,
  },
  serviceable: true,
};

function valueOf(instrument: Instrument, reading: Reading): number {
  const corrected = correctedReading(instrument, reading);
  if (corrected.kind !== 'corrected') throw new RangeError(corrected.because);
  return corrected.valueSi;
}

describe('calibration', () => {
  it('runs on straight lines between its points, whatever their order', () => {
    // At -30 half way: (1 - 0.5)/2 = 0.25. -30 + 0.25 + 273.15.
    expect(valueOf(thermometer, { instrument: 'SAT', value: -30, unit: 'degC' })).toBeCloseTo(
      243.4,
      10,
    );
  });

  it('holds its end points beyond them', () => {
    expect(valueOf(thermometer, { instrument: 'SAT', value: -70, unit: 'degC' })).toBeCloseTo(
      273.15 - 70.5,
      10,
    );
    expect(valueOf(thermometer, { instrument: 'SAT', value: 20, unit: 'degC' })).toBeCloseTo(
      273.15 + 21,
      10,
    );
  });

  it('looks up its table in its own unit when the reading is in another', () => {
    // 243.15 K is -30 degC.
    expect(valueOf(thermometer, { instrument: 'SAT', value: 243.15, unit: 'K' })).toBeCloseTo(
      243.4,
      10,
    );
  });

  it('uses the single correction where the table has fewer than two rows', () => {
    const single = { ...thermometer, calibration: { correction: 2, points: [] } };
    expect(valueOf(single, { instrument: 'SAT', value: -50, unit: 'degC' })).toBeCloseTo(
      225.15,
      10,
    );
  });

  it('keeps what was read beside what it means, and steps without the zero of the scale', () => {
    const corrected = correctedReading(thermometer, {
      instrument: 'SAT',
      value: -60,
      unit: 'degC',
    });
    expect(corrected).toMatchObject({
      kind: 'corrected',
      asReadSi: 213.14999999999998,
      parts: { stepSi: 0.5, repeatabilitySi: 0.2, residualSi: 0.3 },
    });
  });

  it.each(['notRead', 'notApplicable', 'unserviceable'] as const)('%s is not zero', (blank) => {
    expect(correctedReading(thermometer, { instrument: 'SAT', blank })).toEqual({
      kind: 'uncorrected',
      because: blank,
    });
  });

  it('a unit of another quantity says nothing', () => {
    expect(correctedReading(thermometer, { instrument: 'SAT', value: 100, unit: 'lb' })).toEqual({
      kind: 'uncorrected',
      because: 'unitUnknown',
    });
  });
});

describe('gross weight', () => {
  /** Flight A with the counters left out of one reading. */
  function withoutCounters(n: number): readonly Entry[] {
    return rewritten(flightA.entries, (entry) =>
      entry.kind === 'fuelRead' && entry.id === flightA.idOf.get(n)
        ? {
            ...entry.body,
            readings: (entry.body.readings ?? []).filter(
              ({ instrument }) => !instrument.startsWith('FU'),
            ),
          }
        : bodyOf(entry),
    );
  }
  const whole = viewOfEntries(flightA.entries);

  it('is the ramp weight less every counter, the suction unit too', () => {
    // Line 42: 42 050 - 1455 - 1430 - 31.
    const weight = grossWeightAt(whole, glanceOfLine(whole, 42));
    if (weight.kind !== 'weight') throw new Error(weight.because);
    expect(weight.weightN * LB_PER_N).toBeCloseTo(39_134, 6);
    expect(weight.method).toBe('counters');
  });

  it('is carried on with the flow where the counters were not read', () => {
    const view = viewOfEntries(withoutCounters(42));
    const weight = grossWeightAt(view, glanceOfLine(whole, 42));
    if (weight.kind !== 'weight') throw new Error(weight.because);
    expect(weight.method).toBe('flow');
    // The counters it was denied; two of them step by 1 lb over 148 s.
    expect(Math.abs(weight.weightN * LB_PER_N - 39_134)).toBeLessThan(3);
  });

  it('follows an amended ramp weight', () => {
    const heavier = rewritten(flightA.entries, (entry) =>
      entry.kind === 'preflightDone'
        ? { ...entry.body, rampWeight: { value: 42_150, unit: 'lb' } }
        : bodyOf(entry),
    );
    const weight = grossWeightAt(viewOfEntries(heavier), glanceOfLine(whole, 42));
    expect(weight.kind === 'weight' && weight.weightN * LB_PER_N).toBeCloseTo(39_234, 6);
  });

  it('says when a counter was never read or is too old', () => {
    const never = rewritten(flightA.entries, (entry) => ({
      ...bodyOf(entry),
      ...('readings' in bodyOf(entry) && {
        readings: readingsOf(entry).filter(({ instrument }) => instrument !== 'FU2'),
      }),
    }));
    expect(grossWeightAt(viewOfEntries(never), glanceOfLine(whole, 42))).toEqual({
      kind: 'noWeight',
      because: 'counterNeverRead',
    });
    const onlyAtFirst = rewritten(flightA.entries, (entry) => ({
      ...bodyOf(entry),
      ...('readings' in bodyOf(entry) && {
        readings: readingsOf(entry).filter(
          ({ instrument }) => instrument !== 'FU2' || entry.id === flightA.idOf.get(21),
        ),
      }),
    }));
    // Line 21 is at 22:26, line 50 33 minutes later, line 35 12 minutes.
    expect(grossWeightAt(viewOfEntries(onlyAtFirst), glanceOfLine(whole, 50))).toEqual({
      kind: 'noWeight',
      because: 'countersTooOld',
    });
    expect(grossWeightAt(viewOfEntries(onlyAtFirst), glanceOfLine(whole, 35))).toMatchObject({
      kind: 'weight',
      method: 'flow',
    });
  });

  function readingsOf(entry: Entry): readonly Reading[] {
    return entry.kind === 'unrecognised' ? [] : (entry.body.readings ?? []);
  }
});

describe('laminar share of flight A', () => {
  const view = viewOfEntries(flightA.entries);
  const tablet = (iso: string): ReturnType<typeof epochMs> => epochMs(Date.parse(iso));

  it.each(oracle.encounters)('$encounter: before the loss', (row) => {
    const before = laminarAt(view.state, tablet(row.entry));
    if (before.kind !== 'laminar') throw new Error(before.because);
    expect(Math.abs(before.byAreaFraction - row.shareBefore)).toBeLessThan(
      oracle.compareWithin.laminarShare,
    );
    expect(before.observedFraction).toBe(1);
  });

  it.each([
    // Probes 9 to 12 stand for 9.25 ft2 each, all panels for 396: L10, L11, R09; then L11, R09, R10; then none.
    ['M1', '2032-06-02T23:16:20Z', (3 * 9.25) / 396],
    ['M2', '2032-06-03T00:07:45Z', (3 * 9.25) / 396],
    ['M3', '2032-06-03T00:29:25Z', 0],
  ] as const)('%s: when it is left', (_, exit, share) => {
    const after = laminarAt(view.state, tablet(exit));
    expect(after.kind === 'laminar' && after.byAreaFraction).toBeCloseTo(share, 12);
  });

  it('is nothing at the end, after suction off', () => {
    expect(laminarFraction(view.state)).toEqual({
      kind: 'laminar',
      byAreaFraction: 0,
      observedFraction: 1,
    });
  });

  it('counts an intermittent probe half, by area and not by number', () => {
    // L01 stands for 11.5 ft2, L24 for 4.25: (11.5 + 4.25/2) / (11.5 + 4.25).
    const share = laminarOf(sheetA, { L01: 'laminar', L24: 'intermittent' }, {});
    if (share.kind !== 'laminar') throw new Error(share.because);
    expect(share.byAreaFraction).toBeCloseTo((11.5 + 2.125) / 15.75, 12);
  });

  it('leaves out what nobody called: unknown is not turbulent', () => {
    const share = laminarOf(sheetA, { L01: 'laminar', L02: 'notAssessed' }, {});
    if (share.kind !== 'laminar') throw new Error(share.because);
    expect(share.byAreaFraction).toBe(1);
    // 11.5 of 396 ft2, the sum of the panels.
    expect(share.observedFraction).toBeCloseTo(11.5 / 396, 12);
    expect(laminarOf(sheetA, {}, {})).toEqual({ kind: 'notYet', because: 'notAssessed' });
  });

  it('leaves out a probe that does not work', () => {
    const sheet = {
      ...sheetA,
      probes: sheetA.probes.map((probe) =>
        probe.id === 'L01' ? { ...probe, serviceable: false } : probe,
      ),
    };
    const share = laminarOf(sheet, { L01: 'turbulent', L02: 'laminar' }, {});
    expect(share.kind === 'laminar' && share.byAreaFraction).toBe(1);
  });

  it('takes panels where there are no probes', () => {
    const share = laminarOf({ ...sheetA, probes: [] }, {}, { L1: 'laminar', L6: 'turbulent' });
    // 46 and 17 ft2.
    expect(share.kind === 'laminar' && share.byAreaFraction).toBeCloseTo(46 / 63, 12);
  });
});
