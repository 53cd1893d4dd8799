import type { EntryId, EpochMs } from '../../../record/brand.ts';
import type { PanelState } from '../../../record/kinds.ts';
import type { Lane, LaneId } from './lanes.ts';
import type { TimeWindow } from './timeScale.ts';

/** One mark for each entry that stands: what a finger, the keyboard and the table all reach. Times are as shown. */
export interface Mark {
  readonly entry: EntryId;
  readonly seq: number;
  readonly kind: string;
  readonly lane: LaneId;
  readonly at: EpochMs;
  /** Words drawn beside the mark; empty where the bar or the axis already says it. */
  readonly words: string;
  /** What a person decided as the cause of the loss that this entry found; the newest word. */
  readonly cause: string | null;
  readonly hollow: boolean;
  readonly late: boolean;
  /** Seconds of doubt drawn as a whisker to the left; null where the touch itself was the time. */
  readonly whiskerS: number | null;
  /** In a curve lane: the value it stands at, in the unit of that lane. */
  readonly level: number | null;
}

export type SpanLook = 'outline' | 'solid' | PanelState;

/** What has a beginning and an end. `to` null: never closed. */
export interface Span {
  readonly lane: LaneId;
  readonly from: EpochMs;
  readonly to: EpochMs | null;
  readonly look: SpanLook;
  readonly words: string;
  readonly opensWith: EntryId | null;
  readonly closesWith: EntryId | null;
}

export interface CurvePoint {
  readonly at: EpochMs;
  readonly value: number;
}

export interface FuelPoint extends CurvePoint {
  readonly entry: EntryId;
  readonly hollow: boolean;
}

export interface FuelCurve {
  readonly unit: string;
  readonly points: readonly FuelPoint[];
  readonly baseline: readonly CurvePoint[];
  readonly runs: readonly {
    readonly from: EpochMs;
    readonly to: EpochMs | null;
    readonly words: string;
  }[];
  readonly low: number;
  readonly high: number;
}

export interface ReductionPoint extends CurvePoint {
  readonly half68: number;
  readonly low95: number;
  readonly high95: number;
  readonly entry: EntryId;
}

/** Readings that may be joined; a struck one or a long silence begins a new stretch. All in per cent. */
export interface ReductionCurve {
  readonly stretches: readonly (readonly ReductionPoint[])[];
  readonly struck: readonly {
    readonly at: EpochMs;
    readonly value: number;
    readonly words: string;
  }[];
  readonly target: number | null;
  readonly low: number;
  readonly high: number;
}

export interface TimelineModel {
  readonly lanes: readonly Lane[];
  /** By time, then by order of writing. */
  readonly marks: readonly Mark[];
  readonly spans: readonly Span[];
  readonly fuel: FuelCurve;
  readonly reduction: ReductionCurve;
  /** From the first to the last entry, years apart when a result came late. */
  readonly extent: TimeWindow;
  /** The day's work: up to the first silence of twelve hours. */
  readonly flightSpan: TimeWindow;
  /** From blocks off to blocks on: what is in view at first. */
  readonly airborneSpan: TimeWindow;
}
