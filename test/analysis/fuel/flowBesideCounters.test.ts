import { describe, expect, it } from 'vitest';
import { flowBesideCounters } from '../../../src/analysis/fuel/flowBesideCounters.ts';
import type { FlowsOfRun } from '../../../src/analysis/fuel/counterResults.ts';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import { answerOf, reasonOf } from '../encounters/reading.ts';
import {
  changed,
  flightOf,
  fuelRead,
  LB_PER_H_PER_KG_PER_S,
  runLines,
  STAGES,
  steadyLines,
  steadySheet,
  unread,
  type Line,
  type Row,
} from './steadyFlight.ts';

/** The steady flight: 2400 lb/h in TP01 and TP03, 1800 lb/h in TP02, gauges and counters at one. */
function told(lines: readonly Line[], sheet?: FlightSheet): ReturnType<typeof flowBesideCounters> {
  return flowBesideCounters(flightOf(lines, sheet));
}

function runOf(found: ReturnType<typeof told>, point: string): FlowsOfRun {
  const run = found.runs.find((one) => one.point === point);
  if (run === undefined) throw new Error(`${point} must be found`);
  return answerOf(run.flows);
}

/** Every reading of one instrument changed, from a second on to another. */
function shifted(
  instrument: string,
  shift: (value: number, line: Line) => number,
  [fromS, toS]: readonly [number, number] = [-Infinity, Infinity],
  lines: readonly Line[] = steadyLines(),
): readonly Line[] {
  return changed(lines, (line) =>
    line.body?.readings === undefined || line.atS < fromS || line.atS > toS
      ? line
      : {
          ...line,
          body: {
            ...line.body,
            readings: line.body.readings.map((row): Row =>
              row.instrument === instrument ? { ...row, value: shift(row.value, line) } : row,
            ),
          },
        },
  );
}

const noTanks = (lines: readonly Line[]): readonly Line[] =>
  changed(lines, (line) => unread(line, 'TANK'));

describe('the flow of a run told twice', () => {
  it('agrees where gauges and counters do', () => {
    const found = told(steadyLines());
    const run = runOf(found, 'TP02');
    expect(run.gaugesKgPerS * LB_PER_H_PER_KG_PER_S).toBeCloseTo(1800, 6);
    expect(run.counterKgPerS * LB_PER_H_PER_KG_PER_S).toBeCloseTo(1800, 6);
    expect(run.agrees).toBe(true);
    // Two counters, √2 x 1 lb/√12 each over the four minutes between the first reading and the last.
    expect(run.counterStandardUncertaintyKgPerS * LB_PER_H_PER_KG_PER_S).toBeCloseTo(
      (Math.SQRT2 * Math.SQRT2) / Math.sqrt(12) / (240 / 3600),
      6,
    );
    expect(found.meanDifferenceKgPerS).toBeCloseTo(0, 12);
    expect(found.engines.map(({ odd }) => odd)).toEqual([null, null]);
    expect(found.oddRuns).toEqual([]);
  });

  it('weighs each reading by the time it stands for', () => {
    // 1000 lb/h read at the last of 60, 180, 300 and 600 s: it stands for 150 of 540 s, the others at 900 for the rest.
    const last = shifted(
      'FF1',
      () => 1000,
      [4200, 4200],
      [
        ...changed(steadyLines(), (line) =>
          line.kind === 'testPointEnded' && line.atS === 3960 ? { ...line, atS: 4300 } : line,
        ),
        fuelRead(STAGES, 4200),
      ],
    );
    const [engine] = runOf(told(last), 'TP02').engines;
    expect((engine?.gaugeKgPerS ?? 0) * LB_PER_H_PER_KG_PER_S).toBeCloseTo(
      900 + (100 * 150) / 540,
      6,
    );
  });

  it('uses the gauges, as counters of 1 lb are coarser over minutes', () => {
    expect(runOf(told(steadyLines()), 'TP02')).toMatchObject({
      used: 'gauges',
      because: 'countersCoarser',
    });
  });

  it('uses the gauges even where the counters are finer: the baseline is gauged', () => {
    const sheet = steadySheet();
    const fine = {
      ...sheet,
      instruments: sheet.instruments.map((gauge) =>
        gauge.quantity === 'fuelUsed' ? { ...gauge, resolution: 0.01 } : gauge,
      ),
    };
    expect(runOf(told(steadyLines(), fine), 'TP02')).toMatchObject({
      used: 'gauges',
      because: 'baselineIsGauged',
    });
  });

  it('leaves out a reading that a gate breaks, and what lies on its other side', () => {
    const lines = shifted('CLIMB', () => 110, [3780, 3780]);
    const found = told(lines).runs.find(({ point }) => point === 'TP02');
    expect(found && reasonOf(found.flows)).toBe('oneReading');
  });

  it('says why there is nothing to tell twice', () => {
    const reasons = (lines: readonly Line[]): string => {
      const found = told(lines).runs.find(({ point }) => point === 'TP02');
      return found === undefined ? 'not flown' : reasonOf(found.flows);
    };
    const inRun = ({ atS }: Line): boolean => atS > 3600 && atS < 3960;
    expect(
      reasons(changed(steadyLines(), (line) => (inRun(line) && line.atS > 3700 ? null : line))),
    ).toBe('oneReading');
    expect(
      reasons(changed(steadyLines(), (line) => (inRun(line) ? unread(line, 'FU1') : line))),
    ).toBe('countersNotRead');
    expect(reasons(shifted('FU1', () => 5, [3900, 3900]))).toBe('counterWentBack');
    expect(
      reasons(changed(steadyLines(), (line) => (inRun(line) ? unread(line, 'FF1') : line))),
    ).toBe('noUsableReading');
  });
});

describe('the odd one out in one run', () => {
  it('is a counter that jumps: the share of that engine among the counters jumps with it', () => {
    const found = told(shifted('FU1', (value) => value + 40, [3900, Infinity]));
    expect(found.oddRuns).toMatchObject([
      { point: 'TP02', engine: 1, odd: 'counter', toldBy: 'otherEngines' },
    ]);
    // 40 lb in the four minutes between the first reading and the last.
    const [odd] = found.oddRuns;
    expect((odd?.jumpKgPerS ?? 0) * LB_PER_H_PER_KG_PER_S).toBeCloseTo(-40 / (240 / 3600), 6);
    // The other runs of that engine stand together without it.
    expect(found.engines.map(({ runs, odd: verdict }) => [runs, verdict])).toEqual([
      [2, null],
      [3, null],
    ]);
  });

  it('is a gauge that reads off: the share of that engine among the gauges moves with it', () => {
    const found = told(shifted('FF2', (value) => value + 60, [3600, 3960]));
    expect(found.oddRuns).toMatchObject([
      { point: 'TP02', engine: 2, odd: 'gauge', toldBy: 'otherEngines' },
    ]);
  });

  it('cannot be told when both counters jump alike', () => {
    const both = shifted(
      'FU2',
      (value) => value + 40,
      [3900, Infinity],
      shifted('FU1', (value) => value + 40, [3900, Infinity]),
    );
    expect(told(both).oddRuns.map(({ engine, odd, toldBy }) => [engine, odd, toldBy])).toEqual([
      [1, 'nobodyCanTell', null],
      [2, 'nobodyCanTell', null],
    ]);
  });

  it('is not asked of two runs: either could be the odd one', () => {
    const two = changed(
      shifted('FU1', (value) => value + 40, [3900, Infinity]),
      (line) => (line.atS >= 7200 && line.atS <= 7560 ? null : line),
    );
    expect(told(two).oddRuns).toEqual([]);
  });
});

describe('the odd one out over the flight', () => {
  it('is the gauge where the tanks agree with the counters', () => {
    const [first, second] = told(shifted('FF1', (value) => value + 40)).engines;
    expect(first).toMatchObject({ gauge: 'FF1', counter: 'FU1', odd: 'gauge', toldBy: 'tanks' });
    expect((first?.differenceKgPerS ?? 0) * LB_PER_H_PER_KG_PER_S).toBeCloseTo(40, 6);
    expect(second?.odd).toBeNull();
  });

  it('is the counter where the tanks agree with the gauge', () => {
    const [first] = told(shifted('FU1', (value) => value * 0.96)).engines;
    expect(first).toMatchObject({ odd: 'counter', toldBy: 'tanks' });
  });

  it('cannot be told without the tanks', () => {
    const [first] = told(noTanks(shifted('FF1', (value) => value + 40))).engines;
    expect(first).toMatchObject({ odd: 'nobodyCanTell', toldBy: null });
  });

  it('cannot be told by tanks too coarse for it', () => {
    const sheet = steadySheet();
    const coarse = {
      ...sheet,
      instruments: sheet.instruments.map((gauge) =>
        gauge.quantity === 'tankFuel' ? { ...gauge, resolution: 200, repeatability: 100 } : gauge,
      ),
    };
    const [first] = told(
      shifted('FF1', (value) => value + 40),
      coarse,
    ).engines;
    expect(first?.odd).toBe('nobodyCanTell');
  });

  it('is nobody within what calibration leaves', () => {
    // 6 lb/h is one standard uncertainty of what calibration leaves.
    const [first] = told(shifted('FF1', (value) => value + 6)).engines;
    expect(first?.odd).toBeNull();
  });
});

describe('a flight with one engine', () => {
  it('has no other engine to tell by', () => {
    const whole = steadySheet();
    const sheet = {
      ...whole,
      aircraft: { ...whole.aircraft, engineCount: 1 },
      instruments: whole.instruments.filter(({ consumer }) => consumer !== 2),
    };
    const lines = changed(
      [
        ...noTanks(shifted('FU1', (value) => value + 40, [3900, Infinity])),
        ...runLines(STAGES, 'TP02', 5000),
      ],
      (line) => unread(line, 'FF2', 'FU2'),
    );
    expect(told(lines, sheet).oddRuns).toMatchObject([{ engine: 1, odd: 'nobodyCanTell' }]);
  });
});
