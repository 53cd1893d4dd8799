import type { EpochMs } from '../../record/brand.ts';
import type { Wing } from '../../record/sheet.ts';
import type { Answer } from '../answer.ts';
import type { Interval95, MadeOf, Missing, Provisional } from '../results.ts';
import type { NotCounted } from './counters.ts';

/** A mass of fuel with its doubt; `fraction` is its share of the turbulent fuel. */
export interface FuelFigure {
  readonly kg: number;
  readonly fraction: number;
  readonly standardUncertaintyKg: number;
  readonly interval95: Interval95;
}

/** Why a span has no numbers at all. */
export type NoSpan =
  | Extract<Missing, 'noFlightSheet' | 'outsideAtmosphere' | 'noBaseline' | 'noWeight'>
  | NotCounted
  /** The end lies at the beginning, or before it. */
  | 'noTime'
  /** Led to these weights the baseline leaves no flow to compare with. */
  | 'baselineFails';

/** Why gross cannot be given, where the rest can. */
export type NoGross =
  /** Driven by the engines: their gauges show what is left after the cost, and nobody gave that cost. */
  'bleedDriven' | 'shaftDriven';

/** Why net cannot be given, where the rest can. */
export type NoNet = 'unitFuelNotRead';

export type SpanGate =
  | 'outsideBaseline'
  /** One suction-off run and nothing borrowed: how flow goes with weight is not known. */
  | 'oneBaselineRun'
  /** Nobody wrote suction off: the last counters in level flight end it. */
  | 'notTurnedOff'
  /** Part of it lies before level-off or after top of descent, where no baseline holds. */
  | 'notLevel'
  /** Counters at an end are on a line between looks over half an hour apart. */
  | 'countersFarApart'
  /** Further from the card than referred flows repeat. */
  | 'farFromCardHeight'
  | 'noAirData';

export interface SpanSaving {
  /** What the flight would have burnt with suction off. */
  readonly turbulent: FuelFigure;
  readonly countedKg: number;
  readonly countersAtOn: 'read' | 'interpolated';
  readonly countersAtOff: 'read' | 'interpolated';
  readonly gross: FuelFigure | { readonly because: NoGross };
  /** Fuel of the suction itself: its own, or what bleed cost the engines; null where engines drive it unmeasured. */
  readonly suctionKg: number | null;
  readonly suctionFrom: 'counter' | 'gauge' | 'bleedSlope' | null;
  readonly net: FuelFigure | { readonly because: NoNet };
  readonly baselineRuns: readonly string[];
  readonly borrowedFrom: string | null;
  readonly provisional: readonly Provisional[];
  /** Parts of the doubt of what the engines saved, kg. */
  readonly uncertaintyPartsKg: {
    readonly baseline: number;
    readonly calibration: number;
    readonly weight: number;
    readonly counters: number;
    readonly times: number;
  };
}

/** One stretch of the flight with suction on. */
export interface SuctionSpan {
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly wings: readonly Wing[];
  /** Each wing's own time, for spans in which the wings differ. */
  readonly wingSeconds: Readonly<Record<Wing, number>>;
  readonly saving: Answer<SpanSaving, NoSpan, MadeOf['method'], SpanGate>;
}
