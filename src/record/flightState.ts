import type { EntryId, EpochMs, FlightId, RecorderId } from './brand.ts';
import type { Entry, KnownEntry, Reading, WingProbes } from './entry.ts';
import type { PanelState } from './kinds.ts';
import type { Measure } from './measure.ts';
import type { Calibration, FlightPhase, FlightSheet, Wing } from './sheet.ts';
import type { Trail } from './trail.ts';

/**
 * What was written down, put in the order in which it happened: the one projection that screens and analysis read.
 * Facts only; whether a reading counts, and what it means, is `analysis`. Times are on the tablet's clock with steps
 * taken out (`Timed.at`); `analysis/clocks.ts` moves them to the aircraft time base for display.
 */
export interface FlightState {
  readonly flight: FlightId | null;
  readonly nature: 'flight' | 'practice' | 'demo';
  readonly title: string;
  readonly date: string | null;
  /** The flight sheet, each instrument with the calibration in force: what every reading of the flight is judged by. */
  readonly sheet: FlightSheet | null;
  /** The same as the crew wrote it: what an editor begins from. */
  readonly sheetAsWritten: FlightSheet | null;
  /** Instruments whose calibration in force comes from an entry other than a flight sheet. */
  readonly calibrations: Readonly<Record<string, CalibrationInForce>>;
  /** The newest answer to the question whether all calibrations are in date; null where nobody gave one. */
  readonly calibrationsInDate: (Timed & { readonly inDate: boolean }) | null;
  /** The newest weight of the loaded aircraft before take-off; null where only the flight sheet gives one. */
  readonly rampWeight: (Timed & { readonly weight: Measure }) | null;
  readonly openedAt: EpochMs | null;
  readonly closed: {
    readonly at: EpochMs;
    readonly how: 'complete' | 'aborted';
    readonly by: EntryId;
  } | null;
  readonly signed: readonly {
    readonly at: EpochMs;
    readonly signedBy: readonly string[];
    readonly by: EntryId;
  }[];
  readonly scribe: { readonly author: string; readonly role: string } | null;

  /** The page of tiles that the scribe chose. */
  readonly phase: FlightPhase;
  readonly milestones: Milestones;
  /** Every interval, open ones included, in order of opening. */
  readonly intervals: Trail<Interval>;
  readonly covers: Readonly<Record<string, CoverState>>;
  readonly suctionUnit: Held | null;
  readonly suction: Readonly<Record<Wing, SuctionState>>;
  readonly suctionChanges: Trail<SuctionChange>;
  readonly lastThrottleAt: EpochMs | null;
  readonly condition: { readonly reached: Held | null; readonly lastReachedAt: EpochMs | null };
  readonly panels: Readonly<Record<string, PanelNow>>;
  readonly probes: Readonly<Record<string, ProbeNow>>;
  /** Each call on a wing, whole: the state of all its probes after that entry. */
  readonly wingCalls: Trail<WingCall>;
  readonly runs: Trail<Run>;
  /** Index in `runs` of the open run, if one is open. */
  readonly openRun: number | null;
  readonly glances: Trail<Glance>;
  /** Fuel used by each consumer ('1', '2', ... and 'suctionUnit'), from the newest counters, as read. */
  readonly counters: Readonly<Record<string, CounterNow>>;
  readonly lastAirData: Glance | null;
  readonly hacks: readonly TimeHack[];
  readonly samples: Trail<Sample>;
  /** Marks made with hands full that no note or amendment has given a meaning yet, oldest first. */
  readonly openMarks: Trail<Timed>;
  /** Questions the record asks: broken order rules, names that the flight sheet lacks. They warn and never block. */
  readonly doubts: Trail<Doubt>;
  readonly entryCount: number;
  readonly lastAt: EpochMs | null;
}

export interface CalibrationInForce {
  readonly calibration: Calibration;
  /** Entries that it comes from, oldest first. */
  readonly by: readonly EntryId[];
  /** Of the newest certificate; null for a check before flight. */
  readonly condition: 'asFound' | 'asLeft' | null;
}

/** When and by which entry; `doubtS` is one standard uncertainty, null where the flight sheet's default holds. */
export interface Timed {
  readonly at: EpochMs;
  readonly doubtS: number | null;
  readonly by: EntryId;
}

export type Held = Timed;

export interface Milestones {
  readonly blocksOff?: Timed;
  readonly takeOffRoll?: Timed;
  readonly liftOff?: Timed;
  readonly gearUp?: Timed;
  readonly gearDown?: Timed;
  readonly levelOff?: Timed;
  readonly topOfDescent?: Timed;
  readonly touchdown?: Timed;
  readonly blocksOn?: Timed;
}

/** What has a beginning and an end. `own:<tile>` is an interval of the crew's own vocabulary. */
export type IntervalKind =
  | 'moisture'
  | 'sampler'
  | 'turn'
  | 'turbulence'
  | 'testPoint'
  | 'suction'
  | 'recorder'
  | 'photoPanel'
  | `own:${string}`;

export interface Interval {
  readonly kind: IntervalKind;
  /** Encounter, sample or point the interval is about, in the scribe's words; empty when none was given. */
  readonly label: string;
  readonly opened: Timed;
  readonly closed: Timed | null;
}

export type CoverState = 'fitted' | 'clear' | 'hung' | 'unknown';

export interface SuctionState {
  readonly on: Held | null;
  readonly setting: string | null;
  readonly region: string | null;
  readonly lastChangeAt: EpochMs | null;
}

export interface SuctionChange extends Timed {
  readonly wings: readonly Wing[];
  readonly what: 'on' | 'changed' | 'off';
  readonly setting: string | null;
  readonly region: string | null;
}

/** Timed by the newest call that spoke of it, also when that call said the same again. */
export interface PanelNow extends Timed {
  readonly state: PanelState;
  /** Called for the panel itself, or worked out from the states of its probes. */
  readonly from: 'panel' | 'probes';
}

export interface ProbeNow extends Timed {
  readonly state: PanelState;
}

/**
 * A call on one wing. A count that names no probe is kept in `called` and leaves the probes as they were, unless it says
 * all or none; a call on panels alone changes panels and no probe.
 */
export interface WingCall extends Timed {
  readonly wing: Wing;
  readonly entryKind: KnownEntry['kind'];
  readonly byCommand: boolean;
  readonly called: WingProbes | null;
  /** State of every trailing-edge probe and every panel of the wing after this call; `notAssessed` where none was called yet. */
  readonly probes: Readonly<Record<string, PanelState>>;
  readonly panels: Readonly<Record<string, PanelState>>;
}

export interface Run {
  readonly point: string;
  readonly run: number;
  readonly started: Timed;
  readonly ended: Timed | null;
  readonly state: 'open' | 'complete' | 'interrupted' | 'terminated';
  readonly reason: string | null;
  /** Indices in `glances` of the glances with a fuel-flow reading inside the run. */
  readonly fuelGlances: readonly number[];
}

/** Readings taken in one look at the panel, and what the flight was doing at that moment. */
export interface Glance {
  /** Time of the first digit's contact. */
  readonly at: EpochMs;
  readonly rec: RecorderId;
  /** Entries that gave the readings, in order of writing. */
  readonly by: readonly EntryId[];
  readonly kinds: readonly KnownEntry['kind'][];
  /** Newest reading of each instrument, by instrument id, amendments applied. */
  readonly readings: Readonly<Record<string, Reading>>;
  readonly circumstances: Circumstances;
  /** Entries among `by` whose readings are contradicted by two amendments that do not know each other. */
  readonly amendmentsDisagree: boolean;
}

export interface Circumstances {
  /** Index in `runs` of the run that was open. */
  readonly run: number | null;
  readonly moistureSince: EpochMs | null;
  readonly turnSince: EpochMs | null;
  readonly suctionOn: boolean;
  readonly lastSuctionChangeAt: EpochMs | null;
  /** Latest of suction on, suction off and throttle change: after these the aircraft must settle anew. */
  readonly lastUpsetAt: EpochMs | null;
  readonly conditionReachedAt: EpochMs | null;
  /** Index in `glances` of the newest air data of the same run written before this glance. */
  readonly airDataOfRun: number | null;
  /** Fuel used per consumer known by then (as read), newest first value of each counter. */
  readonly counters: Readonly<Record<string, CounterNow>>;
}

export interface CounterNow extends Timed {
  readonly reading: Reading;
}

/** Clock id that a tablet goes by in a time hack; which tablet, the hack's recorder says. */
export const TABLET_CLOCK = 'tablet';

export interface TimeHack extends Timed {
  readonly rec: RecorderId;
  readonly hack: number;
  readonly masterClock: string;
  readonly master: EpochMs;
  /** Every clock's reading at the callout, the tablet's own touch among them. */
  readonly shown: readonly { readonly clock: string; readonly shown: EpochMs }[];
}

export interface Sample {
  readonly sample: string;
  readonly sampler: string;
  readonly purpose: string;
  readonly opened: Timed;
  readonly closed: Timed | null;
}

export interface Doubt extends Timed {
  readonly rule:
    | 'pointAlreadyOpen'
    | 'pointNotOpen'
    | 'intervalNotOpen'
    | 'intervalAlreadyOpen'
    | 'coversBeforeGearUp'
    | 'conditionBeforeCovers'
    | 'endBeforeStart'
    | 'unknownPanel'
    | 'unknownProbe'
    | 'unknownInstrument'
    | 'suctionAlreadyOn'
    | 'suctionNotOn'
    | 'recordersDisagree';
  readonly subject: string;
}

/** An entry as it stands now: amendments applied, withdrawal known, its place in time worked out. */
export interface StandingEntry {
  /** The original, never changed. */
  readonly entry: Entry;
  /** With every amendment applied; the same object as `entry` when there is none. */
  readonly effective: Entry;
  /** When it happened, on the timeline's clock: steps taken out, other tablets moved onto the one that opened the flight. */
  readonly at: EpochMs;
  /** The same on its own recorder's clock, steps taken out. */
  readonly ownAt: EpochMs;
  /** Written after it happened: it says so, or its stated time lies before the touch. */
  readonly late: boolean;
  readonly standing: 'stands' | 'withdrawn' | 'unconfirmed' | 'dropped';
  readonly withdrawnBy: EntryId | null;
  readonly amendedBy: readonly EntryId[];
  /** Fields on which amendments that do not know each other differ. */
  readonly conflicts: readonly string[];
  /** Fields that an amendment names but that cannot take what it says: a foreign hand or a newer release wrote it. */
  readonly unapplied: readonly string[];
}
