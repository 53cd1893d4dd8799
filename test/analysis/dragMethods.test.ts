import { describe, expect, it } from 'vitest';
import { liveEstimateOf } from '../../src/analysis/liveEstimate.ts';
import type { PointNumber } from '../../src/analysis/results.ts';
import { pointResults } from '../../src/analysis/testPoints.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import type { EngineTable } from '../../src/record/sheetAircraft.ts';
import oracle from '../flights/scripts/flight-a-oracle.json' with { type: 'json' };
import {
  flightA,
  glanceOfLine,
  LB_PER_H_PER_KG_PER_S,
  sheetA,
  viewOfEntries,
  without,
  withSheet,
} from './flights.ts';

/*
 * Flight A's own map is a line: 126 lb/h at no thrust, 0.748 lb/h for each lbf, 20 lb/h in doubt. TP02 by the worked
 * results: flow 1693.9, baseline 2328.8 lb/h at the card, fuel reduction 27.26 %, drag reduction 28.82 %.
 */
const worked = oracle.points.find(({ testPoint }) => testPoint === 'TP02');
const { engineMap: _line, ...mapless } = sheetA;

type Valid = Extract<PointNumber, { kind: 'valid' | 'indicative' }>;

function tp02(sheet: FlightSheet, entries = flightA.entries): Valid {
  const view = viewOfEntries(withSheet(entries, sheet));
  const result = pointResults(view).find(({ point }) => point === 'TP02')?.result;
  if (result?.kind !== 'valid') throw new RangeError(`must be valid, got ${result?.kind}`);
  return result;
}

function drag(of: Valid): Extract<Valid['drag'], { fraction: number }> {
  if ('because' in of.drag) throw new RangeError(of.drag.because);
  return of.drag;
}

/** Rows off a line of so much flow at no thrust, at these thrusts. */
function rowsOf(idleLbPerH: number, thrustsLbf: readonly number[]): EngineTable['rows'] {
  return thrustsLbf.map((lbf) => ({
    thrust: { value: lbf, unit: 'lbf' as const },
    flow: { value: idleLbPerH + 0.748 * lbf, unit: 'lb/h' as const },
  }));
}

const doubt = { value: 20, unit: 'lb/h' } as const;
const asLine = tp02(sheetA);

describe('an engine table', () => {
  const whole: EngineTable = {
    rows: rowsOf(126, [1000, 2500, 4000]),
    flowStandardUncertainty: doubt,
  };

  it('with its rows on the line says what the line says', () => {
    const table = tp02({ ...mapless, engineTables: [whole] });
    expect(table.madeOf.dragBy).toBe('engineTable');
    expect(asLine.madeOf.dragBy).toBe('engineMap');
    expect(drag(table).fraction).toBeCloseTo(drag(asLine).fraction, 9);
    expect(drag(table).standardUncertainty).toBeCloseTo(drag(asLine).standardUncertainty, 9);
    expect(table.fuel.fraction).toBeCloseTo(asLine.fuel.fraction, 9);
    expect(table.provisional).toEqual([]);
  });

  it('comes before a line, and one for all engines before one each', () => {
    expect(tp02({ ...sheetA, engineTables: [whole] }).madeOf.dragBy).toBe('engineTable');
    const odd: EngineTable = { engine: 1, rows: rowsOf(300, [500, 2000]) };
    const both = tp02({ ...mapless, engineTables: [odd, { ...odd, engine: 2 }, whole] });
    expect(drag(both).fraction).toBeCloseTo(drag(asLine).fraction, 9);
  });

  it('for each engine adds up: two that make half the thrust each', () => {
    const one: EngineTable = { engine: 1, rows: rowsOf(63, [500, 1250, 2000]) };
    const two: EngineTable = { engine: 2, rows: rowsOf(63, [400, 2100]) };
    const table = tp02({ ...mapless, engineTables: [one, two] });
    expect(table.madeOf.dragBy).toBe('engineTable');
    expect(drag(table).fraction).toBeCloseTo(drag(asLine).fraction, 9);
  });

  it('is read on the straight line between its rows', () => {
    // 1693.9 lb/h lies at 1500 + 800 (1693.9 - 1248)/(1850 - 1248) lbf, 2328.8 at 2300 + 900 (2328.8 - 1850)/(2560 - 1850).
    const rows = [
      [1500, 1248],
      [2300, 1850],
      [3200, 2560],
    ].map(([lbf = 0, lbPerH = 0]) => ({
      thrust: { value: lbf, unit: 'lbf' as const },
      flow: { value: lbPerH, unit: 'lb/h' as const },
    }));
    const thrust = 1500 + (800 * (1693.9 - 1248)) / (1850 - 1248);
    const base = 2300 + (900 * (2328.8 - 1850)) / (2560 - 1850);
    // The flows are levelled by this table's own slopes, a fiftieth of the correction apart: a tenth of a per cent.
    expect(drag(tp02({ ...mapless, engineTables: [{ rows }] })).fraction).toBeCloseTo(
      1 - thrust / base,
      3,
    );
  });

  it('that does not reach the baseline gives fuel alone and says so', () => {
    // 2500 lbf is 1996 lb/h; the baseline burns 2329.
    const table = tp02({ ...mapless, engineTables: [{ rows: rowsOf(126, [1000, 2500]) }] });
    expect(table.drag).toEqual({ because: 'outsideEngineMap' });
    expect(table.madeOf.dragBy).toBeNull();
    expect(table.provisional).toEqual(['outsideEngineMap', 'noLiftToDrag']);
    expect(table.fuel.fraction).toBeCloseTo(asLine.fuel.fraction, 2);
    const live = liveEstimateOf(
      viewOfEntries(
        withSheet(flightA.entries, {
          ...mapless,
          engineTables: [{ rows: rowsOf(126, [1000, 2500]) }],
        }),
      ),
      glanceOfLine(viewOfEntries(flightA.entries), 39),
    );
    expect('drag' in live && live.drag).toEqual({ because: 'outsideEngineMap' });
  });

  it.each([
    ['falls somewhere', [{ rows: [...rowsOf(126, [1000, 4000]), ...rowsOf(50, [4001])] }]],
    [
      'is of the wrong unit',
      [{ rows: rowsOf(126, [1000, 4000]).map((row) => ({ ...row, thrust: doubt })) }],
    ],
    ['leaves an engine out', [{ engine: 1, rows: rowsOf(63, [500, 2000]) }]],
    [
      'has no thrust that its engines share',
      [
        { engine: 1, rows: rowsOf(63, [500, 1000]) },
        { engine: 2, rows: rowsOf(63, [1500, 2000]) },
      ],
    ],
  ] as const)('that %s is no table: the line serves', (_, engineTables) => {
    expect(tp02({ ...sheetA, engineTables: [...engineTables] }).madeOf.dragBy).toBe('engineMap');
  });
});

describe('a stated slope of consumption', () => {
  const tsfcSlope = { slope: -0.2, standardUncertainty: 0.05, from: 'engine deck' };
  const bySlope = tp02({ ...mapless, tsfcSlope });

  it('serves where there is no map', () => {
    // r_D = 1 - (1 - r_F)^(1/(1 + s)), physics of jet fuel-flow standardization.
    const left = 1 - bySlope.fuel.fraction;
    expect(drag(bySlope).fraction).toBeCloseTo(1 - left ** (1 / 0.8), 12);
    expect(bySlope.madeOf.dragBy).toBe('statedSlope');
    expect(tp02({ ...sheetA, tsfcSlope }).madeOf.dragBy).toBe('engineMap');
  });

  it('brings its own doubt', () => {
    const left = 1 - bySlope.fuel.fraction;
    const dragLeft = left ** (1 / 0.8);
    const perFuel = dragLeft / (0.8 * left);
    const perSlope = (dragLeft * Math.log(left)) / 0.8 ** 2;
    const u = Math.hypot(perFuel * bySlope.fuel.standardUncertainty, perSlope * 0.05);
    expect(drag(bySlope).standardUncertainty).toBeCloseTo(u, 9);
  });

  it('corrects no excess force, which is said', () => {
    expect(bySlope.provisional).toEqual(['noEngineMap', 'noLiftToDrag']);
  });

  it('at which less thrust burns no less is a slip of the pen', () => {
    const slip = { ...tsfcSlope, slope: -1 };
    expect(tp02({ ...mapless, tsfcSlope: slip }).drag).toEqual({ because: 'noEngineMap' });
  });
});

describe('the slope that the baseline shows', () => {
  /*
   * A polar that fits the aircraft: drag (2328.8 - 126)/0.748 = 2945 lbf at 39 239 lb, q S 100 480 lbf; flow goes with
   * weight to the 0.54, so drag to the 0.54 x 2328.8/2202.8 = 0.571, of which half, 0.285, comes with lift.
   */
  const qS = 100_480;
  const total = 2945 / qS;
  const liftFactor = (0.285 * total) / (39_239 / qS) ** 2;
  const polar = { zeroLiftDrag: 0.715 * total, liftFactor, from: 'flights 3 to 7' };
  const sheet: FlightSheet = { ...mapless, aircraft: { ...mapless.aircraft, polar } };

  it('serves where a polar is given, always provisional', () => {
    const found = tp02(sheet);
    expect(found.madeOf.dragBy).toBe('slopeOfBaseline');
    expect(found.provisional).toContain('dragSlopeOfBaseline');
    // The two runs tell 1 + s to a few hundredths: its doubt must cover what the line says.
    const apart = Math.abs(drag(found).fraction - (worked?.dragReduction_pct ?? NaN) / 100);
    expect(apart).toBeLessThan(2 * drag(found).standardUncertainty);
    expect(drag(found).standardUncertainty).toBeGreaterThan(found.fuel.standardUncertainty);
  });

  it('gives way to a stated slope', () => {
    const stated = { slope: -0.05, standardUncertainty: 0.02, from: 'deck' };
    expect(tp02({ ...sheet, tsfcSlope: stated }).madeOf.dragBy).toBe('statedSlope');
  });

  it('cannot be had from one baseline run', () => {
    const light = flightA.entries.find(
      (entry) => entry.kind === 'testPointStarted' && entry.body.point === 'TP09',
    );
    const heavyOnly = without(
      flightA.entries,
      (entry) => entry.kind === 'fuelRead' && entry.wall >= (light?.wall ?? Infinity),
    );
    expect(tp02(sheet, heavyOnly).drag).toEqual({ because: 'noSlopeInBaseline' });
  });
});

describe('what suction costs', () => {
  const lbPerH = (kgPerS: number): number => kgPerS * LB_PER_H_PER_KG_PER_S;
  const driven = (suctionDrive: 'bleed' | 'shaft', bleed?: object): FlightSheet => {
    const aircraft = { ...sheetA.aircraft, suctionDrive, ...bleed };
    return { ...sheetA, aircraft };
  };

  it('from a unit of its own: gross, unit and net each with their doubt', () => {
    const { gross, suction, net, netReduction } = asLine;
    if (!('kgPerS' in gross) || !('kgPerS' in net)) throw new RangeError('must be measured');
    expect(gross.kgPerS - (suction?.kgPerS ?? NaN)).toBeCloseTo(net.kgPerS, 12);
    // u of the run 0.222 % and of the baseline 0.164 % x Fb/F of 2328.8 lb/h; calibration cancels in a difference.
    const u = Math.hypot(0.00222 * 2328.8, 0.00164 * 2328.8 * (2328.8 / 1693.9));
    expect(lbPerH(gross.standardUncertaintyKgPerS) / u).toBeCloseTo(1, 1);
    // Gauge step 2, repeatability 0.6, three readings, and 1 left by calibration.
    const unit = Math.hypot(Math.hypot(2 / Math.sqrt(12), 0.6) / Math.sqrt(3), 1);
    expect(lbPerH(suction?.standardUncertaintyKgPerS ?? NaN)).toBeCloseTo(unit, 6);
    expect(net.standardUncertaintyKgPerS).toBeCloseTo(
      Math.hypot(gross.standardUncertaintyKgPerS, suction?.standardUncertaintyKgPerS ?? NaN),
      12,
    );
    expect(netReduction?.fraction).toBeCloseTo(asLine.netFraction ?? NaN, 12);
    expect(net.interval95KgPerS.low).toBeLessThan(net.kgPerS);
  });

  it('from bleed of a known cost: net as gauged, gross with the cost added back once', () => {
    const bleed = {
      flowFractionPerPercent: 0.012,
      percentTaken: 2,
      standardUncertainty: 0.005,
      from: 'engine deck',
    };
    const found = tp02(driven('bleed', { bleed }));
    const { gross, suction, net } = found;
    if (!('kgPerS' in gross) || !('kgPerS' in net)) throw new RangeError('must be measured');
    expect(net.kgPerS).toBeCloseTo('kgPerS' in asLine.gross ? asLine.gross.kgPerS : NaN, 12);
    // F = 1.024 x the flow without bleed.
    const flown =
      found.madeOf.flowAtCardKgPerS *
      (net.kgPerS / (found.madeOf.baselineAtThatWeightKgPerS - found.madeOf.flowAtCardKgPerS));
    expect(suction?.kgPerS).toBeCloseTo((flown * 0.024) / 1.024, 12);
    expect(suction?.standardUncertaintyKgPerS).toBeCloseTo((flown * 0.005) / 1.024 ** 2, 12);
    expect(gross.kgPerS).toBeCloseTo(net.kgPerS + (suction?.kgPerS ?? NaN), 12);
    expect(gross.standardUncertaintyKgPerS).toBeGreaterThan(
      suction?.standardUncertaintyKgPerS ?? NaN,
    );
    // Drag goes by the flow that the engines would have burnt without it: (Fb - F/1.024)/(Fb - 126 lb/h).
    const { baselineAtThatWeightKgPerS: baseline, flowAtCardKgPerS: flow } = found.madeOf;
    const idle = 126 / LB_PER_H_PER_KG_PER_S;
    expect(drag(found).fraction).toBeCloseTo((baseline - flow / 1.024) / (baseline - idle), 9);
  });

  it.each([
    ['bleed', 'bleedDriven'],
    ['shaft', 'shaftDriven'],
  ] as const)(
    'from %s of unknown cost: gross and drag are not given, net stands',
    (drive, because) => {
      const found = tp02(driven(drive));
      expect(found.gross).toEqual({ because });
      expect(found.drag).toEqual({ because });
      expect(found.suction).toBeNull();
      expect(found.netReduction).toEqual(found.fuel);
    },
  );

  it('from a unit whose gauge nobody read: net is not given', () => {
    const sheet: FlightSheet = {
      ...sheetA,
      instruments: sheetA.instruments.map((gauge) =>
        gauge.id === 'SU' ? { ...gauge, serviceable: false } : gauge,
      ),
    };
    const found = tp02(sheet);
    expect(found.net).toEqual({ because: 'unitFuelNotRead' });
    expect(found.netReduction).toBeNull();
    expect('kgPerS' in found.gross).toBe(true);
  });
});
