import type { EpochMs, RecorderId } from '../brand.ts';
import type { KnownEntry } from '../entry.ts';
import type { Doubt, FlightState, Timed } from '../flightState.ts';
import type { PanelState } from '../kinds.ts';
import type { Wing } from '../sheet.ts';
import { appended, emptyTrail, type Trail } from '../trail.ts';
import { noSheetIndex, type SheetIndex } from './sheetIndex.ts';

/** The state that screens see, and what the reducer must remember beside it to go on. */
export interface Fold {
  readonly state: FlightState;
  readonly memory: Memory;
}

/**
 * Open things that can still be closed, at most. A crew has a handful; a foreign file could leave a hundred thousand open,
 * and then each entry would cost all of them. Older ones stay open in the state.
 */
export const MOST_OPEN = 200;

export interface PanelCall {
  readonly state: PanelState;
  readonly at: EpochMs;
  readonly author: string;
}

export interface Memory {
  readonly sheet: SheetIndex;
  /** Indices of open intervals and runs, in order of opening; the newest `MOST_OPEN`. */
  readonly openIntervals: readonly number[];
  readonly openRuns: readonly number[];
  /** Ends that found nothing open, by what they meant to close: a start that comes after is a doubt. */
  readonly lonelyEnds: readonly string[];
  /** Regions with suction on; `null` is the whole wing. */
  readonly regionsOn: Readonly<Record<Wing, readonly (string | null)[]>>;
  readonly lastUpsetAt: EpochMs | null;
  /** The newest call of each recorder on each panel. */
  readonly panelCalls: Readonly<Record<string, Readonly<Record<RecorderId, PanelCall>>>>;
  /** The last turn of which only the length is known. */
  readonly timedTurn: { readonly since: EpochMs; readonly until: EpochMs } | null;
  /** What entries of one glance share, beside `state.glances`. */
  readonly glanceKeys: Trail<string>;
  readonly airDataGlance: number | null;
}

export function startOfFold(): Fold {
  return {
    state: {
      flight: null,
      nature: 'flight',
      title: '',
      date: null,
      sheet: null,
      sheetAsWritten: null,
      calibrations: {},
      calibrationsInDate: null,
      rampWeight: null,
      openedAt: null,
      closed: null,
      signed: [],
      scribe: null,
      phase: 'ground',
      milestones: {},
      intervals: emptyTrail(),
      covers: {},
      suctionUnit: null,
      suction: { L: SUCTION_OFF, R: SUCTION_OFF },
      suctionChanges: emptyTrail(),
      lastThrottleAt: null,
      condition: { reached: null, lastReachedAt: null },
      panels: {},
      probes: {},
      wingCalls: emptyTrail(),
      runs: emptyTrail(),
      openRun: null,
      glances: emptyTrail(),
      counters: {},
      lastAirData: null,
      hacks: [],
      samples: emptyTrail(),
      openMarks: emptyTrail(),
      doubts: emptyTrail(),
      entryCount: 0,
      lastAt: null,
    },
    memory: {
      sheet: noSheetIndex(),
      openIntervals: [],
      openRuns: [],
      lonelyEnds: [],
      regionsOn: { L: [], R: [] },
      lastUpsetAt: null,
      panelCalls: {},
      timedTurn: null,
      glanceKeys: emptyTrail(),
      airDataGlance: null,
    },
  };
}

const SUCTION_OFF = { on: null, setting: null, region: null, lastChangeAt: null };

export function withState(fold: Fold, change: Partial<FlightState>): Fold {
  return { state: { ...fold.state, ...change }, memory: fold.memory };
}

export function withMemory(fold: Fold, change: Partial<Memory>): Fold {
  return { state: fold.state, memory: { ...fold.memory, ...change } };
}

/** When and by which entry, at the place in time that was worked out for it. */
export function timedBy(entry: KnownEntry, at: EpochMs): Timed {
  return { at, doubtS: entry.body.doubtS ?? null, by: entry.id };
}

/** Writes down a question. Nothing is refused for it: the fold goes on as the entry says. */
export function doubted(fold: Fold, timed: Timed, rule: Doubt['rule'], subject: string): Fold {
  return withState(fold, { doubts: appended(fold.state.doubts, { ...timed, rule, subject }) });
}
