import { describe, expect, it } from 'vitest';
import { liveEstimate, liveEstimateOf } from '../../src/analysis/liveEstimate.ts';
import type { Missing, NoDrag, PointNumber, Provisional } from '../../src/analysis/results.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import type { Draft, Entry, Reading } from '../../src/record/entry.ts';
import { startFlight, type FlightView } from '../../src/record/flight.ts';
import type { FlightSheet, Instrument } from '../../src/record/sheet.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import { idOfLine } from '../flights/scriptToEntries.ts';
import {
  bodyOf,
  flightA,
  glanceOfLine,
  rewritten,
  sealed,
  sheetA,
  touchAt,
  viewOfEntries,
  without,
  withSheet,
} from './flights.ts';

/*
 * One flight for each reason that a number of a test point may have to be missing or doubtful. The tables are keyed by
 * the unions themselves: a reason without a flight does not compile.
 */

const whole = viewOfEntries(flightA.entries);
const { engineMap: _line, ...mapless } = sheetA;
const { borrowedBaseline: _law, ...lawless } = sheetA;

function sheeted(sheet: FlightSheet, entries: readonly Entry[] = flightA.entries): FlightView {
  return viewOfEntries(withSheet(entries, sheet));
}

function gauged(id: string, change: (gauge: Instrument) => Instrument): FlightSheet {
  const instruments = sheetA.instruments.map((gauge) => (gauge.id === id ? change(gauge) : gauge));
  return { ...sheetA, instruments };
}

function dropping(...lines: readonly number[]): readonly Entry[] {
  const ids = lines.map((n) => idOfLine(flightA.idOf, n));
  return without(flightA.entries, ({ id }) => ids.includes(id));
}

/** Flight A with the rows of these lines changed; null takes a row away. */
function reread(
  lines: readonly number[],
  change: (row: Reading) => Reading | null,
  entries: readonly Entry[] = flightA.entries,
): readonly Entry[] {
  const walls = lines.map((n) => wallOf(n));
  return rewritten(entries, (entry) => {
    if (entry.kind !== 'fuelRead' || !walls.includes(entry.wall)) return bodyOf(entry);
    const readings = (entry.body.readings ?? []).map(change).filter((row) => row !== null);
    return { ...entry.body, readings };
  });
}

function wallOf(n: number): number {
  const id = idOfLine(flightA.idOf, n);
  return flightA.entries.find((entry) => entry.id === id)?.wall ?? NaN;
}

function beside(...drafts: readonly Draft[]): FlightView {
  return viewOfEntries([...flightA.entries, ...sealed(drafts)]);
}

function numberOf(view: FlightView, point = 'TP05'): PointNumber {
  const found = pointResults(view).find((one) => one.point === point);
  if (found === undefined) throw new RangeError(`${point} must have been flown`);
  return found.result;
}

function missing(view: FlightView, point = 'TP05'): string {
  const number = numberOf(view, point);
  return number.kind === 'none' ? number.because : number.kind;
}

/** Lines of TP05's readings, used or not. */
const worked = oracle.points.find(({ testPoint }) => testPoint === 'TP05');
const TP05 = [
  ...(worked?.readingsUsed ?? []),
  ...(worked?.readingsLeftOut ?? []).map(({ n }) => n),
];
const FLOWS = ['FF1', 'FF2'];
const AIR = ['MACH', 'ALT', 'SAT'];

const WITHOUT_A_NUMBER: Readonly<Record<Missing | 'noUsableReading', () => string>> = {
  noFlightSheet: () => {
    const live = liveEstimate(startFlight().view());
    return live.kind === 'notYet' ? live.because : live.kind;
  },
  noReading: () => missing(viewOfEntries(dropping(...TP05))),
  readingIncomplete: () =>
    missing(viewOfEntries(reread(TP05, (row) => (row.instrument === 'FF2' ? null : row)))),
  readingQueried: () =>
    missing(
      viewOfEntries(
        reread(TP05, (row) =>
          row.instrument === 'FF1' && 'value' in row ? { ...row, queried: 'outsideBand' } : row,
        ),
      ),
    ),
  noBaseline: () => missing(viewOfEntries(dropping(21, 23, 24, 127, 128, 129))),
  bracketDrifts: () =>
    missing(
      sheeted(
        lawless,
        reread(
          [127],
          (row) =>
            FLOWS.includes(row.instrument) && 'value' in row ? { ...row, value: 1700 } : row,
          dropping(23, 24, 128, 129),
        ),
      ),
    ),
  noAirData: () => {
    const blind = rewritten(flightA.entries, (entry) => {
      if (entry.kind === 'unrecognised' || entry.body.readings === undefined) return bodyOf(entry);
      const readings = entry.body.readings.filter((row) => !AIR.includes(row.instrument));
      return { ...entry.body, readings };
    });
    return missing(viewOfEntries(blind));
  },
  noWeight: () => {
    const unread = rewritten(flightA.entries, (entry) => {
      if (entry.kind === 'unrecognised' || entry.body.readings === undefined) return bodyOf(entry);
      const readings = entry.body.readings.filter((row) => row.instrument !== 'FU1');
      return { ...entry.body, readings };
    });
    return missing(viewOfEntries(unread));
  },
  unitUnknown: () =>
    missing(
      viewOfEntries(
        reread(TP05, (row) =>
          row.instrument === 'FF1' && 'value' in row ? { ...row, unit: 'ft' } : row,
        ),
      ),
    ),
  instrumentUnserviceable: () =>
    missing(sheeted(gauged('FF1', (gauge) => ({ ...gauge, serviceable: false })))),
  outsideAtmosphere: () =>
    missing(
      viewOfEntries(
        reread(TP05, (row) =>
          row.instrument === 'ALT' && 'value' in row ? { ...row, value: 90_000 } : row,
        ),
      ),
    ),
  noUsableReading: () =>
    missing(
      viewOfEntries(
        reread(TP05, (row) =>
          row.instrument === 'MACH' && 'value' in row ? { ...row, value: 0.8 } : row,
        ),
      ),
    ),
};

const bench = { calibratedOn: '2032-06-20', condition: 'asFound', reason: 'bench' } as const;
const narrow = [1000, 2500].map((lbf) => ({
  thrust: { value: lbf, unit: 'lbf' as const },
  flow: { value: 126 + 0.748 * lbf, unit: 'lb/h' as const },
}));
/** Fits the worked aircraft: see the tests of ways to drag. */
const polar = { zeroLiftDrag: 0.021, liftFactor: 0.055, from: 'flights 3 to 7' };
const polared: FlightSheet = { ...mapless, aircraft: { ...mapless.aircraft, polar } };
const ALL_LAMINAR = { of: 24, turbulentProbes: [] };

const PROVISIONAL_BY: Readonly<Record<Provisional, () => FlightView>> = {
  borrowedElasticity: () => viewOfEntries(dropping(127, 128, 129)),
  noBorrowedElasticity: () => sheeted(lawless, dropping(127, 128, 129)),
  noEngineMap: () => sheeted(mapless),
  noRepeatability: () => sheeted(gauged('FF1', ({ repeatability: _stated, ...gauge }) => gauge)),
  baselineInMoisture: () =>
    beside(
      { kind: 'moistureEntered', body: {}, stamp: touchAt(wallOf(21) - 1000) },
      { kind: 'moistureExited', body: {}, stamp: touchAt(wallOf(24) + 1000) },
    ),
  baselineNotOnCondition: () =>
    viewOfEntries(without(flightA.entries, ({ kind }) => kind === 'conditionReached')),
  baselineNotTurbulent: () =>
    beside({
      kind: 'probesRead',
      body: { wings: { L: ALL_LAMINAR, R: ALL_LAMINAR } },
      stamp: touchAt(wallOf(21) - 1000),
    }),
  oneBaselineReading: () => viewOfEntries(dropping(23, 24, 127, 128, 129)),
  calibrationPastDue: () =>
    sheeted(
      gauged('FF1', (gauge) => ({
        ...gauge,
        calibration: { ...gauge.calibration, dueOn: '2032-01-31' },
      })),
    ),
  calibratedAfterFlight: () =>
    beside({
      kind: 'instrumentCalibrated',
      body: { instrument: 'FF1', correction: -22, ...bench },
      stamp: touchAt(wallOf(129) + 3_600_000),
    }),
  noCalibrationDoubt: () =>
    sheeted(gauged('FF1', (gauge) => ({ ...gauge, calibration: { correction: -20 } }))),
  outsideEngineMap: () => sheeted({ ...mapless, engineTables: [{ rows: narrow }] }),
  dragSlopeOfBaseline: () => sheeted(polared),
  noLiftToDrag: () => sheeted(mapless),
};

const NO_DRAG_BY: Readonly<Record<NoDrag, () => FlightView>> = {
  noEngineMap: () => sheeted(mapless),
  outsideEngineMap: () => sheeted({ ...mapless, engineTables: [{ rows: narrow }] }),
  noSlopeInBaseline: () => sheeted(polared, dropping(127, 128, 129)),
  bleedDriven: () =>
    sheeted({ ...sheetA, aircraft: { ...sheetA.aircraft, suctionDrive: 'bleed' } }),
  shaftDriven: () =>
    sheeted({ ...sheetA, aircraft: { ...sheetA.aircraft, suctionDrive: 'shaft' } }),
};

describe('a test point without a number says why', () => {
  it.each(Object.entries(WITHOUT_A_NUMBER))('%s', (because, reason) => {
    expect(reason()).toBe(because);
  });
});

describe('a test point with a doubtful number gives it and says why', () => {
  it.each(Object.entries(PROVISIONAL_BY))('%s', (doubt, view) => {
    const number = numberOf(view());
    if (number.kind !== 'valid') throw new RangeError(JSON.stringify(number));
    expect(number.provisional).toContain(doubt);
    expect(number.fuel.fraction).toBeGreaterThan(0.2);
  });

  it('gives none of these reasons for the flight as it was flown', () => {
    const number = numberOf(whole);
    expect(number.kind === 'valid' && number.provisional).toEqual([]);
  });
});

describe('a fuel reduction that is not called drag says why', () => {
  it.each(Object.entries(NO_DRAG_BY))('%s', (because, view) => {
    const number = numberOf(view());
    if (number.kind !== 'valid') throw new RangeError(JSON.stringify(number));
    expect(number.drag).toEqual({ because });
    expect(number.madeOf.dragBy).toBeNull();
    expect(number.fuel.standardUncertainty).toBeGreaterThan(0);
  });
});

describe('a weight beyond the baseline', () => {
  const LIGHTER_LB = 3000;

  /** TP08 with as much more fuel burnt by engine 1: lighter than the light baseline. */
  function lighter(sheet: FlightSheet): PointNumber {
    const started = flightA.entries.find(
      (entry) => entry.kind === 'testPointStarted' && entry.body.point === 'TP08',
    );
    const ended = flightA.entries.find(
      (entry) => entry.kind === 'testPointEnded' && entry.body.point === 'TP08',
    );
    const entries = rewritten(withSheet(flightA.entries, sheet), (entry) => {
      if (entry.kind === 'unrecognised' || entry.body.readings === undefined) return bodyOf(entry);
      if (entry.wall < (started?.wall ?? Infinity) || entry.wall > (ended?.wall ?? 0)) {
        return bodyOf(entry);
      }
      const readings = entry.body.readings.map((row) =>
        row.instrument === 'FU1' && 'value' in row
          ? { ...row, value: row.value + LIGHTER_LB }
          : row,
      );
      return { ...entry.body, readings };
    });
    return numberOf(viewOfEntries(entries), 'TP08');
  }

  it('strikes the number and names the gate, where nothing carries it there', () => {
    const number = lighter(lawless);
    if (number.kind !== 'valid') throw new RangeError(number.kind);
    expect(number.broken).toEqual(['outsideBaseline']);
    expect(Number.isFinite(number.fuel.fraction)).toBe(true);
  });

  it('is carried by a borrowed weight law, which is said', () => {
    const number = lighter(sheetA);
    if (number.kind !== 'valid') throw new RangeError(number.kind);
    expect(number.broken).toEqual([]);
    expect(number.provisional).toContain('borrowedElasticity');
  });
});

describe('in the air', () => {
  it('the same reasons are given at the reading', () => {
    const index = glanceOfLine(whole, 84);
    const because = (view: FlightView): string => {
      const live = liveEstimateOf(view, index);
      return live.kind === 'notYet' ? live.because : live.kind;
    };
    const unserviceable = gauged('FF1', (gauge) => ({ ...gauge, serviceable: false }));
    expect(because(sheeted(unserviceable))).toBe('instrumentUnserviceable');
    const unit = reread([84], (row) =>
      row.instrument === 'FF1' && 'value' in row ? { ...row, unit: 'ft' } : row,
    );
    expect(because(viewOfEntries(unit))).toBe('unitUnknown');
    expect(because(whole)).toBe('value');
  });
});
