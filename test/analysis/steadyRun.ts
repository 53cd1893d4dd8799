import type { Draft, Reading } from '../../src/record/entry.ts';
import type { Unit } from '../../src/record/measure.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { sheetA, touchAt } from './flights.ts';

export const RUN_START = Date.parse('2032-06-02T22:00:00Z');

/** What the gauges of flight A's aircraft show at one look; a field left out was not read. */
export interface Look {
  readonly afterS: number;
  readonly mach?: number;
  readonly heightFt?: number;
  readonly airC?: number;
  readonly flowLbPerH?: number;
}

export const CRUISE = { mach: 0.72, heightFt: 37_000, airC: -56.5, flowLbPerH: 860 } as const;

/** One run of TP02 with these looks, weighed at its start. */
export function runOfLooks(looks: readonly Look[], sheet: FlightSheet = sheetA): readonly Draft[] {
  const opened: Draft = {
    kind: 'flightOpened',
    body: { nature: 'practice', title: 'steady', date: '2032-06-02', device: 'tablet', sheet },
    stamp: touchAt(RUN_START - 60_000),
  };
  const counters: Draft = {
    kind: 'fuelStateRead',
    body: { readings: [read('FU1', 1400, 'lb'), read('FU2', 1400, 'lb')] },
    stamp: touchAt(RUN_START - 30_000),
  };
  const started: Draft = {
    kind: 'testPointStarted',
    body: { point: 'TP02', run: 1 },
    stamp: touchAt(RUN_START),
  };
  return [
    opened,
    counters,
    started,
    ...looks.map((look): Draft => ({
      kind: 'fuelRead',
      body: { readings: readingsOf(look) },
      stamp: touchAt(RUN_START + look.afterS * 1000),
    })),
  ];
}

function readingsOf({ mach, heightFt, airC, flowLbPerH }: Look): readonly Reading[] {
  return [
    ...(flowLbPerH === undefined
      ? []
      : [read('FF1', flowLbPerH, 'lb/h'), read('FF2', flowLbPerH, 'lb/h')]),
    ...(mach === undefined ? [] : [read('MACH', mach, '1')]),
    ...(heightFt === undefined ? [] : [read('ALT', heightFt, 'ft')]),
    ...(airC === undefined ? [] : [read('SAT', airC, 'degC')]),
  ];
}

function read(instrument: string, value: number, unit: Unit): Reading {
  return { instrument, value, unit };
}
