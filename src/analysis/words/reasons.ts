import type { Missing, NoDrag, Note, PointNumber, Provisional } from '../results.ts';

/** Why there is no figure, lower case and at most twenty letters; and what would give one, for whoever is still flying. */
const MISSING: Readonly<Record<Missing, { readonly what: string; readonly next: string }>> = {
  noFlightSheet: { what: 'no flight sheet', next: 'Nothing to judge by.' },
  noReading: { what: 'no fuel reading', next: 'Touch Fuel.' },
  readingIncomplete: { what: 'reading not complete', next: 'An engine is missing.' },
  readingQueried: { what: 'reading in question', next: 'Keep it or read again.' },
  noBaseline: { what: 'no baseline', next: 'Fly a suction-off point first.' },
  bracketDrifts: { what: 'baseline runs differ', next: 'Fly a suction-off point again.' },
  noAirData: { what: 'no air data', next: 'Read Mach, height, temp.' },
  noWeight: { what: 'no weight', next: 'Counters or a weight.' },
  unitUnknown: { what: 'unit unknown', next: 'See the flight sheet.' },
  instrumentUnserviceable: { what: 'gauge unserviceable', next: 'See the flight sheet.' },
  outsideAtmosphere: { what: 'air data impossible', next: 'Read height and temp again.' },
};

const PROVISIONAL: Readonly<Record<Provisional, string>> = {
  borrowedElasticity: 'weight law borrowed',
  noBorrowedElasticity: 'no weight law',
  noEngineMap: 'no engine map',
  noRepeatability: 'scatter not declared',
  baselineInMoisture: 'baseline in moisture',
  baselineNotOnCondition: 'baseline not on condition',
  baselineNotTurbulent: 'baseline partly laminar',
  oneBaselineReading: 'one baseline reading',
  calibrationPastDue: 'calibration past due',
  calibratedAfterFlight: 'calibrated after flight',
  noCalibrationDoubt: 'calibration doubt not stated',
  outsideEngineMap: 'outside engine table',
  dragSlopeOfBaseline: 'drag by slope of baseline',
  noLiftToDrag: 'lift to drag guessed',
};

const NOTES: Readonly<Record<Note, string>> = {
  noRunOpen: 'no point open',
  airDataOfAnotherReading: 'air data of another reading',
  weightByFlow: 'weight carried by flow',
  suctionOffOutsideBaseline: 'no suction-off card open',
};

type NoNumber = Extract<PointNumber, { kind: 'none' }>['because'];

const NO_DRAG: Readonly<Record<NoDrag, string>> = {
  noEngineMap: 'no engine map: fuel only',
  outsideEngineMap: 'outside engine table: fuel only',
  noSlopeInBaseline: 'no slope in baseline: fuel only',
  bleedDriven: 'bleed-driven suction: fuel only',
  shaftDriven: 'shaft-driven suction: fuel only',
};

export function missingWords(because: NoNumber): string {
  return because === 'noUsableReading' ? 'no usable reading' : MISSING[because].what;
}

/** What to do about it, in the air. */
export function missingNextWords(because: Missing): string {
  return MISSING[because].next;
}

export function provisionalWords(reason: Provisional): string {
  return PROVISIONAL[reason];
}

export function noteWords(note: Note): string {
  return NOTES[note];
}

export function noDragWords(because: NoDrag): string {
  return NO_DRAG[because];
}
