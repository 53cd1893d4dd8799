import type { Entry } from '../../../src/record/entry.ts';
import { viewOf, type FlightView } from '../../../src/record/flight.ts';
import type { FlightSheet, Instrument } from '../../../src/record/sheet.ts';
import { soundSheet } from '../../record/soundSheet.ts';
import { chained, START_MS, type Said } from '../../record/writing.ts';

/*
 * A flight whose books a reader can keep by hand: both engines alike, 2400 lb/h without suction at any weight, 1800 lb/h
 * with it, 5000 lb/h from start to level-off. On condition all the time, at the card of 37,000 ft and −56.5 °C.
 */
export const POUND_KG = 0.45359237;
export const LB_PER_H_PER_KG_PER_S = 3600 / POUND_KG;

const LEVEL_S = 1200;
export const ON_S = 3000;
export const OFF_S = 6600;
export const DOWN_S = 9000;
export const SHUT_S = 9600;

/** What the aircraft does from `fromS` on. */
export interface Stage {
  readonly fromS: number;
  readonly engineLbPerH: number;
  readonly unitLbPerH: number;
}

export const STAGES: readonly Stage[] = [
  { fromS: 0, engineLbPerH: 2500, unitLbPerH: 0 },
  { fromS: LEVEL_S, engineLbPerH: 1200, unitLbPerH: 0 },
  { fromS: ON_S, engineLbPerH: 900, unitLbPerH: 80 },
  { fromS: OFF_S, engineLbPerH: 1200, unitLbPerH: 0 },
  { fromS: DOWN_S, engineLbPerH: 600, unitLbPerH: 0 },
];

/** Burnt by one engine, or the unit, from the start to this second. */
export function burntLb(
  stages: readonly Stage[],
  atS: number,
  of: 'engineLbPerH' | 'unitLbPerH' = 'engineLbPerH',
): number {
  return stages.reduce((total, stage, place) => {
    const until = Math.min(atS, stages[place + 1]?.fromS ?? Infinity);
    return total + (Math.max(0, until - stage.fromS) * stage[of]) / 3600;
  }, 0);
}

function stageAt(stages: readonly Stage[], atS: number): Stage {
  const stage = stages.findLast(({ fromS }) => fromS <= atS);
  if (stage === undefined) throw new RangeError(`a stage must hold at ${atS} s`);
  return stage;
}

/** Two engines, a metered suction unit, steps as of a usual panel and every doubt declared; nothing borrowed. */
export function steadySheet(change: Partial<FlightSheet> = {}): FlightSheet {
  const { borrowedBaseline: _, ...sheet } = soundSheet();
  return {
    ...sheet,
    condition: { mach: 0.72, pressureAltitude: { value: 37_000, unit: 'ft' } },
    instruments: sheet.instruments.map((gauge): Instrument => ({
      ...gauge,
      repeatability: gauge.quantity === 'fuelUsed' ? 0 : gauge.resolution / 2,
      calibration: {
        ...gauge.calibration,
        residualStandardUncertainty: gauge.quantity === 'fuelFlow' ? 6 : 0,
      },
    })),
    ...change,
  };
}

const AIR = [
  { instrument: 'MACH', value: 0.72, unit: '1' },
  { instrument: 'ALT', value: 37_000, unit: 'ft' },
  { instrument: 'SAT', value: -56.5, unit: 'degC' },
  { instrument: 'MDRIFT', value: 0, unit: '1/min' },
  { instrument: 'CLIMB', value: 0, unit: 'ft/min' },
];

export interface Row {
  readonly instrument: string;
  readonly value: number;
  readonly unit: string;
}

export function countersAt(stages: readonly Stage[], atS: number): readonly Row[] {
  const engine = burntLb(stages, atS);
  return [
    { instrument: 'FU1', value: engine, unit: 'lb' },
    { instrument: 'FU2', value: engine, unit: 'lb' },
    { instrument: 'FUS', value: burntLb(stages, atS, 'unitLbPerH'), unit: 'lb' },
  ];
}

function flowsAt(stages: readonly Stage[], atS: number): readonly Row[] {
  const { engineLbPerH, unitLbPerH } = stageAt(stages, atS);
  return [
    { instrument: 'FF1', value: engineLbPerH, unit: 'lb/h' },
    { instrument: 'FF2', value: engineLbPerH, unit: 'lb/h' },
    { instrument: 'SU', value: unitLbPerH, unit: 'lb/h' },
  ];
}

/** Something said so many seconds after the engines started; the flight was opened an hour before. */
export interface Line {
  readonly atS: number;
  readonly kind: string;
  readonly body?: { readonly readings?: readonly Row[] } & Readonly<Record<string, unknown>>;
}

export function say(atS: number, kind: string, body: object = {}): Line {
  return { atS, kind, body: { ...body } };
}

export function fuelRead(stages: readonly Stage[], atS: number): Line {
  return say(atS, 'fuelRead', {
    readings: [...flowsAt(stages, atS), ...countersAt(stages, atS), ...AIR],
  });
}

/** A run of three readings, two minutes apart, the first a minute after its start. */
export function runLines(stages: readonly Stage[], point: string, startS: number): readonly Line[] {
  return [
    say(startS, 'conditionReached'),
    say(startS + 1, 'testPointStarted', { point, run: 1 }),
    ...[60, 180, 300].map((afterS) => fuelRead(stages, startS + afterS)),
    say(startS + 360, 'testPointEnded', { point, run: 1 }),
  ];
}

export const TANK_START_LB = 10_000;

/** The whole flight: TP01 off, TP02 on, TP03 off, counters at every switch, tanks at start and end. */
export function steadyLines(stages: readonly Stage[] = STAGES): readonly Line[] {
  const restLb =
    TANK_START_LB - 2 * burntLb(stages, SHUT_S) - burntLb(stages, SHUT_S, 'unitLbPerH');
  return [
    say(0, 'engineStarted', {
      engine: 1,
      readings: [
        ...countersAt(stages, 0),
        { instrument: 'TANK', value: TANK_START_LB, unit: 'lb' },
      ],
    }),
    say(300, 'blocksOff'),
    say(600, 'liftedOff'),
    say(LEVEL_S, 'levelledOff'),
    ...runLines(stages, 'TP01', 1800),
    say(ON_S, 'suctionTurnedOn', { wing: 'both', readings: countersAt(stages, ON_S) }),
    ...runLines(stages, 'TP02', 3600),
    fuelRead(stages, 4800),
    fuelRead(stages, 6000),
    say(OFF_S, 'suctionTurnedOff', { wing: 'both', readings: countersAt(stages, OFF_S) }),
    ...runLines(stages, 'TP03', 7200),
    say(DOWN_S, 'descentBegun'),
    say(9300, 'touchedDown'),
    say(9480, 'blocksOn'),
    say(SHUT_S, 'engineShutDown', {
      engines: [1, 2],
      readings: [...countersAt(stages, SHUT_S), { instrument: 'TANK', value: restLb, unit: 'lb' }],
    }),
  ];
}

export function entriesOf(
  lines: readonly Line[],
  sheet: FlightSheet = steadySheet(),
): readonly Entry[] {
  const saids: readonly Said[] = [
    {
      kind: 'flightOpened',
      afterMs: 0,
      body: { nature: 'flight', title: 'steady', date: '2032-06-02', device: 'tablet', sheet },
    },
    ...lines
      .toSorted((a, b) => a.atS - b.atS)
      .map(({ atS, kind, body = {} }) => ({ kind, body, afterMs: (atS + 3600) * 1000 })),
  ];
  return chained(saids);
}

export function flightOf(lines: readonly Line[], sheet: FlightSheet = steadySheet()): FlightView {
  return viewOf(entriesOf(lines, sheet));
}

/** Seconds after the engines started as the record has it. */
export function atS(seconds: number): number {
  return START_MS + (seconds + 3600) * 1000;
}

/** The same lines, each changed or left out. */
export function changed(
  lines: readonly Line[],
  change: (line: Line) => Line | null,
): readonly Line[] {
  return lines.flatMap((line) => change(line) ?? []);
}

/** The line without the readings of these instruments. */
export function unread(line: Line, ...instruments: readonly string[]): Line {
  const { readings, ...body } = line.body ?? {};
  const left = readings?.filter(({ instrument }) => !instruments.includes(instrument)) ?? [];
  return { ...line, body: left.length === 0 ? body : { ...body, readings: left } };
}
