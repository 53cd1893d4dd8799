import type { Answer } from './answer.ts';
import type { NoSteadiness, Steadiness } from './steadiness.ts';
import type { EntryId, EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { FlightState, Milestones, TimeHack } from '../record/flightState.ts';
import { itemAt, items } from '../record/trail.ts';
import { reflyList } from './cards.ts';
import { cardsFlown, type CardsFlown } from './completion.ts';
import { clockFits, type ClockFit } from './clocks.ts';
import { comparisons, type Comparison } from './comparisons.ts';
import { expectedDrag } from './coverage/expectedDrag.ts';
import type { ExpectedDrag } from './coverage/expectedResults.ts';
import { laminarByTime } from './coverage/laminarByTime.ts';
import type { LaminarByTime } from './coverage/laminarResults.ts';
import { associations, type Association } from './encounters/associations.ts';
import { encounters, type Encounter } from './encounters/encounters.ts';
import { losses, type Loss } from './encounters/losses.ts';
import { particleEncounters, type ParticleEncounter } from './encounters/particles.ts';
import { probeHistory, type ProbeHistory } from './encounters/probeHistory.ts';
import { recoveryTimes, type RecoveryTimes } from './encounters/recovery.ts';
import { sampleResults, type SampleResults } from './encounters/samples.ts';
import { fuelBalance } from './fuel/balance.ts';
import type { FuelBalance } from './fuel/balanceResults.ts';
import type { FlowBesideCounters } from './fuel/counterResults.ts';
import { flowBesideCounters } from './fuel/flowBesideCounters.ts';
import { labour } from './fuel/labour.ts';
import type { FlightLabour } from './fuel/labourResults.ts';
import type { SuctionSpan } from './fuel/spanResults.ts';
import { suctionSpans } from './fuel/spans.ts';
import type { LeftOut, PointResult, Refly } from './results.ts';
import { readingsToReview, type ToReview } from './review.ts';
import type { Suspicion } from './suspicion/suspected.ts';
import { suspicions } from './suspicions.ts';
import { pointResults } from './testPoints.ts';

/**
 * Everything that the debrief of one flight answers, in one object: SI, units in the names, shares of one, times as
 * EpochMs on the flight's timeline, and from each result the ids of the entries that it rests on. Made of plain values
 * only, so it can be written as JSON as it stands.
 */
export interface FlightResults {
  readonly flight: FlightFacts;
  readonly points: readonly PointOfFlight[];
  /** Finished suction-on points against the first of them, on flow saved and on per cent. */
  readonly comparisons: readonly Comparison[];
  /** Candidates as evidence beside what people decided; association is never called cause. */
  readonly losses: readonly Loss[];
  readonly encounters: readonly Encounter[];
  readonly recovery: RecoveryTimes;
  readonly samples: SampleResults;
  readonly particles: readonly ParticleEncounter[];
  readonly associations: readonly Association[];
  readonly probeHistory: readonly ProbeHistory[];
  readonly laminar: LaminarByTime;
  /** What the called area should have saved, beside what was measured. */
  readonly expectedDrag: readonly ExpectedDrag[];
  readonly suctionSpans: readonly SuctionSpan[];
  readonly flowBesideCounters: FlowBesideCounters;
  readonly fuelBalance: FuelBalance;
  readonly labour: FlightLabour;
  readonly completion: Completion;
  readonly clocks: Clocks;
  /** For a person to look at; none of it says that a value is wrong. */
  readonly toReview: readonly Reviewed[];
  /** Readings that a wrong engine or a wrong digit would explain, with what may have been meant. */
  readonly suspicions: readonly Suspected[];
}

/** What kind of flight it was and when. */
export interface FlightFacts {
  readonly id: string | null;
  readonly title: string;
  readonly nature: FlightState['nature'];
  readonly date: string | null;
  readonly aircraft: string | null;
  readonly sheetRevision: string | null;
  readonly milestones: Milestones;
  readonly closed: FlightState['closed'];
  readonly signed: FlightState['signed'];
  readonly entryCount: number;
}

/** A reading by its place in time and the entries that gave it. */
export interface ReadingRef {
  readonly at: EpochMs;
  readonly entries: readonly EntryId[];
}

export type PointOfFlight = Omit<PointResult, 'readingsUsed' | 'readingsLeftOut' | 'stability'> & {
  readonly stability: Answer<Omit<Steadiness, 'glance'>, NoSteadiness, 'slidingWindow'>;
  /** Entries that opened and closed the run. */
  readonly entries: readonly EntryId[];
  readonly readingsUsed: readonly ReadingRef[];
  readonly readingsLeftOut: readonly (ReadingRef & { readonly broken: readonly LeftOut[] })[];
};

export interface Completion extends CardsFlown {
  /** Most wanted first. */
  readonly refly: readonly Refly[];
}

export interface Clocks {
  readonly fits: readonly ClockFit[];
  readonly hacks: readonly TimeHack[];
}

type WithReadings<One> = One extends unknown
  ? Omit<One, 'glance' | 'glances'> & { readonly readings: readonly ReadingRef[] }
  : never;
export type Reviewed = WithReadings<ToReview>;
export type Suspected = WithReadings<Suspicion>;

/** @param earlier flights of the same aircraft before this one, where they are at hand: they tell what is chronic */
export function flightResults(
  view: FlightView,
  earlier: readonly FlightView[] = [],
): FlightResults {
  const { state } = view;
  const met = encounters(view);
  return {
    flight: factsOf(state),
    points: pointsOf(view),
    comparisons: comparisons(view),
    losses: losses(view, earlier),
    encounters: met,
    recovery: recoveryTimes([view]),
    samples: sampleResults(view, met),
    particles: particleEncounters(view, met),
    associations: associations(view),
    probeHistory: probeHistory(view),
    laminar: laminarByTime(view),
    expectedDrag: expectedDrag(view),
    suctionSpans: suctionSpans(view),
    flowBesideCounters: flowBesideCounters(view),
    fuelBalance: fuelBalance(view),
    labour: labour(view),
    completion: { ...cardsFlown(view), refly: reflyList(view) },
    clocks: { fits: clockFits(state), hacks: state.hacks },
    toReview: readingsToReview(view).map((one) => reviewed(state, one)),
    suspicions: suspicions(view).map((one) => suspected(state, one)),
  };
}

function factsOf(state: FlightState): FlightFacts {
  const { flight: id, title, nature, date, sheet, milestones, closed, signed, entryCount } = state;
  return {
    id,
    title,
    nature,
    date,
    aircraft: sheet?.aircraft.mark ?? null,
    sheetRevision: sheet?.revision ?? null,
    milestones,
    closed,
    signed,
    entryCount,
  };
}

function pointsOf(view: FlightView): readonly PointOfFlight[] {
  const { state } = view;
  return pointResults(view).map((point) => ({
    ...point,
    stability: withoutGlance(point.stability),
    entries: runEntries(state, ({ point: id, run }) => id === point.point && run === point.run),
    readingsUsed: point.readingsUsed.map((index) => readingRef(state, index)),
    readingsLeftOut: point.readingsLeftOut.map(({ glance, broken }) => ({
      ...readingRef(state, glance),
      broken,
    })),
  }));
}

function withoutGlance(stability: PointResult['stability']): PointOfFlight['stability'] {
  if (stability.kind === 'noAnswer') return stability;
  const { glance: _inThisState, ...value } = stability.value;
  return { ...stability, value };
}

function reviewed(state: FlightState, one: ToReview): Reviewed {
  switch (one.kind) {
    case 'enginesSwapped': {
      const { glance, ...rest } = one;
      return { ...rest, readings: [readingRef(state, glance)] };
    }
    case 'sameDigits':
    case 'repeated': {
      const { glances, ...rest } = one;
      return { ...rest, readings: glances.map((glance) => readingRef(state, glance)) };
    }
  }
}

function suspected(state: FlightState, one: Suspicion): Suspected {
  switch (one.kind) {
    case 'enginesSwapped':
    case 'digitSlip': {
      const { glance, ...rest } = one;
      return { ...rest, readings: [readingRef(state, glance)] };
    }
  }
}

function runEntries(
  state: FlightState,
  isWanted: (run: { readonly point: string; readonly run: number }) => boolean,
): readonly EntryId[] {
  return [...items(state.runs)]
    .filter(isWanted)
    .flatMap(({ started, ended }) => (ended === null ? [started.by] : [started.by, ended.by]));
}

/** @throws RangeError when the flight has no such glance: the index came from the same state */
function readingRef(state: FlightState, glance: number): ReadingRef {
  const found = itemAt(state.glances, glance);
  if (found === undefined) throw new RangeError(`glance ${glance} must be one of the flight's`);
  return { at: found.at, entries: found.by };
}
