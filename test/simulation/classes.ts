import { RESULTS, type Outcome, type Result } from './outcome.ts';

/** What a class of intervals must hold, and what it held. */
export interface Tally {
  readonly result: Result;
  readonly name: string;
  /** Null where both are in it. */
  readonly declared: boolean | null;
  readonly count: number;
  readonly flights: number;
  readonly coverage: number;
  /** One standard error of the coverage; results of one flight go together. */
  readonly samplingDoubt: number;
  readonly meanErrorOverU: number;
  readonly spreadOfErrorOverU: number;
  readonly verdict: Verdict;
}

/** `withinDoubt` lies outside by less than chance explains, and `tooFew` says nothing yet. */
export type Verdict = 'holds' | 'withinDoubt' | 'tooLow' | 'tooHigh' | 'tooFew';

const LOWEST = 0.93;
const HIGHEST = 0.97;
/** Outside by more than this many standard errors is no chance. */
const DOUBTS = 3;
export const FEWEST_FLIGHTS = 60;
const FEWEST_READINGS_UNDECLARED = 5;

/** Outcomes of one flight. */
export interface JudgedFlight {
  readonly declared: boolean;
  readonly outcomes: readonly Outcome[];
}

interface Class {
  readonly name: string;
  readonly takes: (outcome: Outcome) => boolean;
  /** With gauges of unknown scatter and so few readings an interval may be wider than need be. */
  readonly mayBeWide: boolean;
}

const READINGS: readonly (readonly [low: number, high: number])[] = [
  [3, 3],
  [4, 5],
  [6, 8],
  [9, 12],
];
const BASELINE_READINGS: readonly (readonly [low: number, high: number])[] = [
  [5, 6],
  [7, 9],
  [10, 12],
];

/** Each result is asked as a whole and in every class it belongs to. */
const CLASSES: readonly Class[] = [
  { name: 'all', takes: () => true, mayBeWide: true },
  ...READINGS.map(([low, high]) => ({
    name: `${range(low, high)} readings`,
    takes: ({ readings }: Outcome) => readings >= low && readings <= high,
    mayBeWide: low < FEWEST_READINGS_UNDECLARED,
  })),
  ...BASELINE_READINGS.map(([low, high]) => ({
    name: `fit, ${range(low, high)} baseline readings`,
    takes: ({ method, baselineReadings }: Outcome) =>
      method === 'fit' && baselineReadings >= low && baselineReadings <= high,
    mayBeWide: true,
  })),
  ...['fit', 'fit, borrowed', 'pair, borrowed'].map((method) => ({
    name: method,
    takes: (outcome: Outcome) => outcome.method === method,
    mayBeWide: true,
  })),
];

/** One row for each class that anything fell into. */
export function tallies(flights: readonly JudgedFlight[]): readonly Tally[] {
  return RESULTS.flatMap((result) =>
    CLASSES.flatMap((asked) =>
      [true, false].flatMap((declared) => {
        const held = flights
          .filter((flight) => flight.declared === declared)
          .map(({ outcomes }) =>
            outcomes.filter((outcome) => outcome.result === result && asked.takes(outcome)),
          )
          .filter((outcomes) => outcomes.length > 0);
        return held.length === 0
          ? []
          : [tallyOf({ result, name: asked.name, declared }, held, asked.mayBeWide && !declared)];
      }),
    ),
  );
}

/** @param byFlight outcomes that belong together, at least one flight of at least one */
export function tallyOf(
  head: Pick<Tally, 'result' | 'name' | 'declared'>,
  byFlight: readonly (readonly Outcome[])[],
  mayBeWide: boolean,
): Tally {
  const all = byFlight.flat();
  const coverage = share(all);
  // Ratio of two sums over flights: the flights are independent, the results within one are not.
  const squares = byFlight.reduce(
    (total, outcomes) => total + (outcomes.length * (share(outcomes) - coverage)) ** 2,
    0,
  );
  const spare = byFlight.length / Math.max(1, byFlight.length - 1);
  const samplingDoubt = Math.sqrt(squares * spare) / all.length;
  const errors = all.map(({ errorOverU }) => errorOverU);
  const mean = errors.reduce((total, error) => total + error, 0) / errors.length;
  const variance = errors.reduce((total, error) => total + (error - mean) ** 2, 0) / errors.length;
  return {
    ...head,
    count: all.length,
    flights: byFlight.length,
    coverage,
    samplingDoubt,
    meanErrorOverU: mean,
    spreadOfErrorOverU: Math.sqrt(variance),
    verdict: verdictOf(byFlight.length, coverage, samplingDoubt, mayBeWide),
  };
}

function verdictOf(
  flights: number,
  coverage: number,
  samplingDoubt: number,
  mayBeWide: boolean,
): Verdict {
  if (flights < FEWEST_FLIGHTS) return 'tooFew';
  const highest = mayBeWide ? 1 : HIGHEST;
  if (coverage >= LOWEST && coverage <= highest) return 'holds';
  // A share of nearly all has hardly any scatter of its own to see: never less than of independent draws.
  const doubt = Math.max(samplingDoubt, Math.sqrt((0.05 * 0.95) / flights) / 2);
  if (coverage < LOWEST - DOUBTS * doubt) return 'tooLow';
  return coverage > highest + DOUBTS * doubt ? 'tooHigh' : 'withinDoubt';
}

function share(outcomes: readonly Outcome[]): number {
  return outcomes.filter(({ held }) => held).length / outcomes.length;
}

function range(low: number, high: number): string {
  return low === high ? String(low) : `${low} to ${high}`;
}
