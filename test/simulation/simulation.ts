import { chanceOf } from './chance.ts';
import { tallies, tallyOf, type JudgedFlight, type Tally } from './classes.ts';
import { drawn, onOneGauge, type Drawn } from './draw.ts';
import { FAULTS, type Fault, type Spoiling } from './faults.ts';
import { flown } from './flown.ts';
import { judged, judgedPoints } from './judged.ts';
import { sheetOf, TOLERANCES } from './sheet.ts';

/** Coverage over many flights with known truth, one row for each class. */
export function simulated(flights: number, seed: number): readonly Tally[] {
  return tallies(Array.from({ length: flights }, (_, stream) => flightOf(seed, stream, null)));
}

/** What the intervals hold where bad points were flown, with the gate against them and without it. */
export interface Control {
  readonly fault: Fault;
  /** Share of results that a bad reading came into, with the gate as it is. */
  readonly letIn: number;
  readonly asItIs: Tally;
  readonly turnedOff: Tally;
}

/** Streams of the controls: no flight of theirs is one of the simulation. */
const CONTROL_STREAM = 1_000_000;

/** The same flights twice for each fault. */
export function controls(flights: number, seed: number): readonly Control[] {
  return FAULTS.map((fault, row) => {
    const flownWith = (gate: Spoiling['gate']): readonly JudgedFlight[] =>
      Array.from({ length: flights }, (_, index) => {
        const suction = BASELINE_TOO.has(fault) && index % 2 === 1 ? 'off' : 'on';
        const stream = CONTROL_STREAM * (row + 1) + index;
        return flightOf(seed, stream, { fault, gate, suction });
      });
    const asItIs = flownWith('asItIs');
    const results = asItIs.flatMap(({ outcomes }) => outcomes).filter(isOfPoint);
    const spoilt = results.filter((outcome) => outcome.spoilt > 0);
    return {
      fault,
      letIn: spoilt.length / results.length,
      asItIs: ofPoints(fault, asItIs),
      turnedOff: ofPoints(fault, flownWith('turnedOff')),
    };
  });
}

/** Faults that a baseline reading can have as well. */
const BASELINE_TOO: ReadonlySet<Fault> = new Set([
  'machDrift',
  'climb',
  'mach',
  'turn',
  'beforeOnCondition',
]);

function flightOf(seed: number, stream: number, spoiling: Spoiling | null): JudgedFlight {
  const chance = chanceOf(seed, stream);
  const any = drawn(chance);
  const off = spoiling?.gate === 'turnedOff' ? spoiling.fault : null;
  // Without a second gauge beside it, no gauge is out of proportion.
  const plan: Drawn = off === 'engineKeyedWrong' ? onOneGauge(any) : any;
  const sheet = sheetOf(plan, off === null ? TOLERANCES : { ...TOLERANCES, ...WIDE_OPEN[off] });
  const { repeatability } = plan.says;
  const flight = flown(plan, sheet, chance, spoiling);
  return {
    declared: repeatability,
    outcomes: spoiling === null ? judged(flight) : judgedPoints(flight),
  };
}

/** Limits that let everything pass; turns, moisture and the call on condition are left unwritten instead. */
const WIDE_OPEN: Partial<Record<Fault, Partial<typeof TOLERANCES>>> = {
  machDrift: { machPerMin: 1 },
  climb: { climbFtPerMin: 10_000 },
  mach: { mach: 0.5 },
};

function ofPoints(fault: Fault, flights: readonly JudgedFlight[]): Tally {
  const byFlight = flights
    .map(({ outcomes }) => outcomes.filter(isOfPoint))
    .filter((outcomes) => outcomes.length > 0);
  return tallyOf({ result: 'fuel', name: fault, declared: null }, byFlight, false);
}

function isOfPoint({ result }: JudgedFlight['outcomes'][number]): boolean {
  return result === 'fuel';
}

/** Bad readings came in, or leaving the gate out did not show. */
export function controlFailed({ letIn, asItIs, turnedOff }: Control): boolean {
  const holds = asItIs.verdict === 'holds' || asItIs.verdict === 'withinDoubt';
  return letIn > 0 || !holds || turnedOff.verdict !== 'tooLow';
}
