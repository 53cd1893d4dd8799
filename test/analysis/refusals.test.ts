import { describe, expect, it } from 'vitest';
import { liveEstimate, liveEstimateOf } from '../../src/analysis/liveEstimate.ts';
import type { LiveEstimate, PointNumber } from '../../src/analysis/results.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import type { Entry, Reading } from '../../src/record/entry.ts';
import { startFlight, type FlightView } from '../../src/record/flight.ts';
import type { FlightSheet, Instrument } from '../../src/record/sheet.ts';
import { items } from '../../src/record/trail.ts';
import {
  bodyOf,
  flightA,
  glanceOfLine,
  rewritten,
  sheetA,
  viewOfEntries,
  without,
  withSheet,
} from './flights.ts';

type Number = Extract<LiveEstimate, { kind: 'value' | 'struck' }>;

/** The live figure after each fuel reading, by the time of the reading. */
function shownAfterEach(entries: readonly Entry[]): readonly LiveEstimate[] {
  const flight = startFlight();
  const shown: LiveEstimate[] = [];
  for (const entry of entries) {
    const view = flight.add([entry]);
    if (entry.kind === 'fuelRead') shown.push(liveEstimate(view));
  }
  return shown;
}

/** Flight A with the readings of one line changed; the worked results no longer apply. */
function reading(n: number, change: (row: Reading) => Reading | null): FlightView {
  const id = flightA.idOf.get(n);
  return viewOfEntries(
    rewritten(flightA.entries, (entry) => {
      if (entry.id !== id || entry.kind !== 'fuelRead') return bodyOf(entry);
      const rows = (entry.body.readings ?? []).map(change).filter((row) => row !== null);
      return { ...entry.body, readings: rows };
    }),
  );
}

function estimateAt(view: FlightView, atLine: number): LiveEstimate {
  const index = glanceOfLine(viewOfEntries(flightA.entries), atLine);
  return liveEstimateOf(view, index);
}

function numberOf(estimate: LiveEstimate): Number {
  if (estimate.kind === 'value' || estimate.kind === 'struck') return estimate;
  throw new RangeError(`must be a number, got ${JSON.stringify(estimate)}`);
}

function because(estimate: LiveEstimate): string {
  return estimate.kind === 'notYet' ? estimate.because : estimate.kind;
}

function withInstrument(id: string, change: Partial<Instrument>): FlightSheet {
  return {
    ...sheetA,
    instruments: sheetA.instruments.map((gauge) =>
      gauge.id === id ? { ...gauge, ...change } : gauge,
    ),
  };
}

describe('before any baseline', () => {
  const start = flightA.entries.find((entry) => entry.kind === 'suctionTurnedOn')?.wall ?? 0;
  const noHeavy = without(
    flightA.entries,
    (entry) => entry.kind === 'fuelRead' && entry.wall < start,
  );

  it('every suction-on reading says that there is none', () => {
    const shown = shownAfterEach(noHeavy);
    // 31 readings less 3 of the heavy baseline, the last 3 of which make the light one.
    expect(shown.length).toBe(28);
    expect(shown.slice(0, 25).map(because)).toEqual(Array.from({ length: 25 }, () => 'noBaseline'));
    expect(shown.slice(25).map(because)).toEqual(
      Array.from({ length: 3 }, () => 'baselineReading'),
    );
  });

  it('uses the light baseline for the same readings once it is flown', () => {
    const view = viewOfEntries(noHeavy);
    const glances = [...items(view.state.glances)];
    const last = glances.findLastIndex(
      ({ readings, circumstances }) => readings['FF1'] !== undefined && circumstances.suctionOn,
    );
    const estimate = numberOf(liveEstimateOf(view, last));
    expect(estimate.madeOf.baselineRuns).toEqual(['TP09']);
    expect(estimate.madeOf.method).toBe('pair');
    // TP08 at 28.66 by the worked results; one reading, one run and a borrowed elasticity widen it.
    expect(Math.abs(estimate.fuel.fraction * 100 - 28.66)).toBeLessThan(1);
  });
});

describe('what is missing is said', () => {
  const first: (view: FlightView) => string = (view) => because(estimateAt(view, 39));

  it.each([
    ['readingIncomplete', (row: Reading) => (row.instrument === 'FF2' ? null : row)],
    [
      'readingIncomplete',
      (row: Reading): Reading =>
        row.instrument === 'FF2' ? { instrument: 'FF2', blank: 'notRead' } : row,
    ],
    [
      'instrumentUnserviceable',
      (row: Reading): Reading =>
        row.instrument === 'FF2' ? { instrument: 'FF2', blank: 'unserviceable' } : row,
    ],
    [
      'unitUnknown',
      (row: Reading): Reading =>
        row.instrument === 'FF2' && 'value' in row ? { ...row, unit: 'ft' } : row,
    ],
    [
      'readingQueried',
      (row: Reading): Reading =>
        row.instrument === 'FF2' && 'value' in row ? { ...row, queried: 'outsideBand' } : row,
    ],
  ] as const)('%s', (reason, change) => {
    expect(first(reading(39, change))).toBe(reason);
  });

  it('leaves a queried reading out of its run as well, and names it', () => {
    const view = reading(39, (row) =>
      row.instrument === 'FF2' && 'value' in row ? { ...row, queried: 'outsideBand' } : row,
    );
    const result = pointResults(view).find(({ point }) => point === 'TP02');
    expect(result?.readingsUsed.length).toBe(2);
    expect(result?.readingsLeftOut.map(({ broken }) => broken)).toContainEqual(['queried']);
  });

  it('an unserviceable instrument gives no reading whatever was keyed', () => {
    const sheet = withInstrument('FF1', { serviceable: false });
    expect(first(viewOfEntries(withSheet(flightA.entries, sheet)))).toBe('instrumentUnserviceable');
  });

  it('an engine without a gauge leaves every total incomplete', () => {
    const sheet = { ...sheetA, aircraft: { ...sheetA.aircraft, engineCount: 3 } };
    expect(first(viewOfEntries(withSheet(flightA.entries, sheet)))).toBe('readingIncomplete');
  });

  it('no weight without a ramp weight', () => {
    const { ramp: _, ...weights } = sheetA.weights;
    const entries = rewritten(flightA.entries, (entry) => {
      if (entry.kind === 'flightOpened') {
        return { ...entry.body, sheet: { ...entry.body.sheet, weights } };
      }
      if (entry.kind !== 'preflightDone') return bodyOf(entry);
      const { rampWeight: _weighed, ...body } = entry.body;
      return body;
    });
    expect(first(viewOfEntries(entries))).toBe('noWeight');
  });

  it('a card outside the atmosphere gives no number', () => {
    const sheet: FlightSheet = {
      ...sheetA,
      condition: { mach: 0.72, pressureAltitude: { value: 90_000, unit: 'ft' } },
    };
    expect(first(viewOfEntries(withSheet(flightA.entries, sheet)))).toBe('outsideAtmosphere');
  });

  it('says so where there is no flight sheet and no reading', () => {
    expect(because(liveEstimate(startFlight().view()))).toBe('noFlightSheet');
    expect(because(liveEstimate(viewOfEntries(flightA.entries.slice(0, 1))))).toBe('noReading');
  });
});

describe('without an engine map', () => {
  const { engineMap: _, ...mapless } = sheetA;
  const vouched: FlightSheet = {
    ...mapless,
    aircraft: { ...mapless.aircraft, liftToDragAtMost: 18 },
  };
  const view = viewOfEntries(withSheet(flightA.entries, vouched));

  it('reports fuel only and says so', () => {
    const estimate = numberOf(estimateAt(view, 72));
    expect(estimate.drag).toEqual({ because: 'noEngineMap' });
    expect(estimate.provisional).toContain('noEngineMap');
    expect(estimate.provisional).not.toContain('noLiftToDrag');
  });

  it('widens by the excess force that lift to drag allows, and corrects nothing', () => {
    const withMap = numberOf(estimateAt(viewOfEntries(flightA.entries), 74));
    const bare = numberOf(estimateAt(view, 74));
    // Line 74: climb 20 ft/min at M 0.719, 216.7 K. hdot/V = 20*0.00508*(217.15/216.65)/(0.719*295.4) = 4.80e-4,
    // half-range 4.80e-4 * 18 = 0.86 %, over sqrt 3 = 0.50 % of the flow, times 1 - R = 0.73: 0.36 points.
    expect(bare.madeOf.uncertaintyParts.run).toBeGreaterThan(0.0036);
    expect(bare.fuel.standardUncertainty).toBeGreaterThan(withMap.fuel.standardUncertainty);
    expect(bare.madeOf.flowAtCardKgPerS).toBeGreaterThan(withMap.madeOf.flowAtCardKgPerS);
  });

  it('takes a generous bound and says so where nobody vouched for one', () => {
    const unvouched = viewOfEntries(withSheet(flightA.entries, mapless));
    const estimate = numberOf(estimateAt(unvouched, 74));
    expect(estimate.provisional).toContain('noLiftToDrag');
    expect(estimate.fuel.standardUncertainty).toBeGreaterThan(
      numberOf(estimateAt(view, 74)).fuel.standardUncertainty,
    );
  });
});

describe('suction driven by the engines', () => {
  const sheet: FlightSheet = {
    ...sheetA,
    aircraft: { ...sheetA.aircraft, suctionDrive: 'bleed' },
  };
  const view = viewOfEntries(withSheet(flightA.entries, sheet));
  const asked = pointResults(view).find(({ point }) => point === 'TP02')?.result;

  it('is net already: nothing is subtracted and the gross saving is not known', () => {
    const number = valid(asked);
    expect(number.grossKgPerS).toBeNull();
    expect(number.suctionUnitKgPerS).toBeNull();
    expect(number.netFraction).toBeCloseTo(number.fuel.fraction, 12);
    expect(number.drag).toEqual({ because: 'bleedDriven' });
  });

  it('has no second net figure in flight', () => {
    expect(numberOf(estimateAt(view, 39)).net).toBeNull();
  });
});

describe('gauges whose repeatability nobody declared', () => {
  const undeclared: FlightSheet = {
    ...sheetA,
    instruments: sheetA.instruments.map((gauge) => {
      if (gauge.id !== 'FF1' && gauge.id !== 'FF2') return gauge;
      const { repeatability: _stated, ...rest } = gauge;
      return rest;
    }),
  };
  const view = viewOfEntries(withSheet(flightA.entries, undeclared));

  it('fall back on the scatter seen in the runs, and say so', () => {
    const number = valid(pointResults(view).find(({ point }) => point === 'TP02')?.result);
    const declared = valid(
      pointResults(viewOfEntries(flightA.entries)).find(({ point }) => point === 'TP02')?.result,
    );
    expect(number.provisional).toContain('noRepeatability');
    expect(number.fuel.fraction).toBeCloseTo(declared.fuel.fraction, 3);
    expect(number.fuel.standardUncertainty).not.toBe(declared.fuel.standardUncertainty);
  });

  it("widen by Student's t while only one run shows scatter", () => {
    const position = flightA.entries.findIndex((entry) => entry.id === flightA.idOf.get(39));
    const early = withSheet(flightA.entries.slice(0, position + 1), undeclared);
    const { fuel, provisional } = numberOf(liveEstimate(viewOfEntries(early)));
    expect(provisional).toContain('noRepeatability');
    // Three readings leave two degrees of freedom: t is 4.30, diluted by the stated doubts.
    expect((fuel.interval95.high - fuel.interval95.low) / 2).toBeGreaterThan(
      2.02 * fuel.standardUncertainty,
    );
  });
});

function valid(
  number: PointNumber | undefined,
): Extract<PointNumber, { kind: 'valid' | 'indicative' }> {
  if (number?.kind !== 'valid') throw new RangeError(`must be valid, got ${number?.kind}`);
  return number;
}
