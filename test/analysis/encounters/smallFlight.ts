import type { Entry } from '../../../src/record/entry.ts';
import { startFlight, type FlightView } from '../../../src/record/flight.ts';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import { soundSheet } from '../../record/soundSheet.ts';
import { chained, START_MS } from '../../record/writing.ts';

/** Something said so many seconds after the flight was opened. */
export interface Line {
  readonly afterS: number;
  readonly kind: string;
  readonly body?: object;
}

/** Three panels and twelve probes a wing, 30 square feet a panel, two engines; nominal suction at TP02. */
export const smallSheet: FlightSheet = soundSheet();

export function entriesOf(
  lines: readonly Line[],
  sheet: FlightSheet = smallSheet,
): readonly Entry[] {
  return chained([
    {
      kind: 'flightOpened',
      afterMs: 0,
      body: { nature: 'flight', title: 'small', date: '2032-06-02', device: 'tablet', sheet },
    },
    ...lines.map(({ afterS, kind, body = {} }) => ({ kind, body, afterMs: afterS * 1000 })),
  ]);
}

export function flightOf(lines: readonly Line[], sheet: FlightSheet = smallSheet): FlightView {
  return startFlight().add(entriesOf(lines, sheet));
}

/** Tablet time so many seconds after the flight was opened. */
export function atS(seconds: number): number {
  return START_MS + seconds * 1000;
}

export function say(afterS: number, kind: string, body: object = {}): Line {
  return { afterS, kind, body };
}

/** The numbered probes of a wing: `probes('L', 1, 3)` is L01 and L03. */
export function probes(wing: 'L' | 'R', ...numbers: readonly number[]): readonly string[] {
  return numbers.map((number) => `${wing}${String(number).padStart(2, '0')}`);
}

/** All twelve laminar but the turbulent ones named by number, on both wings unless one is given. */
export function turbulent(
  numbers: readonly number[],
  wings: readonly ('L' | 'R')[] = ['L', 'R'],
): object {
  const ofWing = (wing: 'L' | 'R'): object => ({
    of: 12,
    laminarCount: 12 - numbers.length,
    turbulentProbes: probes(wing, ...numbers),
  });
  return { wings: Object.fromEntries(wings.map((wing) => [wing, ofWing(wing)])) };
}

export const ALL: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

/** Covers gone, suction on at the nominal setting, both wings laminar at 300 s. */
export function laminarFlight(): readonly Line[] {
  return [
    say(10, 'liftedOff'),
    say(20, 'gearMoved', { to: 'up' }),
    say(60, 'coversReleased', {
      wing: 'both',
      clear: smallSheet.panels.map(({ id }) => id),
    }),
    say(200, 'suctionTurnedOn', { wing: 'both', setting: 'nominal' }),
    say(300, 'laminarGained', turbulent([])),
  ];
}

/** TP02 at the nominal setting, from start to end. */
export const run = (startS: number, endS: number, ending = 'testPointEnded'): readonly Line[] => [
  say(startS, 'testPointStarted', { point: 'TP02', run: 1 }),
  say(endS, ending, { point: 'TP02', run: 1 }),
];

export function withUnserviceable(probe: string): FlightSheet {
  return {
    ...smallSheet,
    probes: smallSheet.probes.map((one) =>
      one.id === probe ? { ...one, serviceable: false } : one,
    ),
  };
}
