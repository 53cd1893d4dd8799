import type { Gate, Missing, Note, Provisional } from '../../analysis/results.ts';

/** A gate in one or two words: it stands beside the struck figure. */
export const GATE_WORDS: Readonly<Record<Gate, string>> = {
  amendmentsDisagree: 'Amendments differ',
  noAirData: 'No air data',
  turn: 'In a turn',
  moisture: 'In moisture',
  machDrift: 'Mach drifts',
  climb: 'Climbing',
  mach: 'Mach off card',
  altitude: 'Height off card',
  suctionChanging: 'Suction just moved',
  notOnCondition: 'Not on condition',
  engineDisagrees: 'Engines differ',
  energyCorrectionTooLarge: 'Energy above 3\u00a0%',
  outsideBaseline: 'Weight off baseline',
};

/** Why there is no figure, and what would give one. */
export const MISSING_WORDS: Readonly<Record<Missing, readonly [what: string, next: string]>> = {
  noFlightSheet: ['No flight sheet', 'Nothing to judge by.'],
  noReading: ['No fuel reading yet', 'Touch Fuel.'],
  readingIncomplete: ['Reading not complete', 'An engine is missing.'],
  readingQueried: ['Reading in question', 'Keep it or read again.'],
  noBaseline: ['No baseline yet', 'Fly a suction-off point first.'],
  noAirData: ['No air data yet', 'Read Mach, height, temp.'],
  noWeight: ['No weight yet', 'Counters or a weight.'],
  unitUnknown: ['Unit unknown', 'See the flight sheet.'],
  instrumentUnserviceable: ['Gauge unserviceable', 'See the flight sheet.'],
  outsideAtmosphere: ['Air data impossible', 'Read height and temp again.'],
};

export const PROVISIONAL_WORDS: Readonly<Record<Provisional, string>> = {
  borrowedElasticity: 'weight law borrowed',
  noBorrowedElasticity: 'no weight law',
  noEngineMap: 'no engine map',
  noRepeatability: 'scatter not declared',
  baselineInMoisture: 'baseline in moisture',
  baselineNotOnCondition: 'baseline not on condition',
  baselineNotTurbulent: 'baseline partly laminar',
  oneBaselineReading: 'one baseline reading',
  noLiftToDrag: 'lift to drag guessed',
};

export const NOTE_WORDS: Readonly<Record<Note, string>> = {
  noRunOpen: 'no point open',
  airDataOfAnotherReading: 'air data of another reading',
  weightByFlow: 'weight carried by flow',
  suctionOffOutsideBaseline: 'no suction-off card open',
};
