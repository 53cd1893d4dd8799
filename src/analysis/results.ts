import type { EntryId, EpochMs } from '../record/brand.ts';
import type { StabilityAnswer } from './steadiness.ts';

/**
 * What the numbers say. Shares of one, never per cent; pounds per hour are never assumed: flows are in kilograms per
 * second and weights in newtons, and the screen shows them in the units of the flight sheet.
 */

/** A gate that strikes a number: the number stays readable, the gate is named. First broken gate first. */
export type Gate =
  | 'amendmentsDisagree'
  | 'noAirData'
  | 'turn'
  | 'moisture'
  | 'machDrift'
  | 'climb'
  | 'mach'
  | 'altitude'
  | 'suctionChanging'
  | 'notOnCondition'
  | 'engineDisagrees'
  | 'energyCorrectionTooLarge'
  | 'outsideBaseline';

/** Why no number can be given. */
export type Missing =
  | 'noFlightSheet'
  | 'noReading'
  | 'readingIncomplete'
  | 'readingQueried'
  | 'noBaseline'
  /** The two suction-off runs either side differ by more than their doubts allow. */
  | 'bracketDrifts'
  | 'noAirData'
  | 'noWeight'
  | 'unitUnknown'
  | 'instrumentUnserviceable'
  | 'outsideAtmosphere';

/** Why a number that stands is only provisional. */
export type Provisional =
  | 'borrowedElasticity'
  | 'noBorrowedElasticity'
  | 'noEngineMap'
  | 'noRepeatability'
  | 'baselineInMoisture'
  | 'baselineNotOnCondition'
  /** Probes in that run were called laminar: suction-off flow must be turbulent to be a baseline. */
  | 'baselineNotTurbulent'
  | 'oneBaselineReading'
  /** A gauge was out of its calibration term on the day, or somebody said so. */
  | 'calibrationPastDue'
  /** A certificate taken after the flight recomputed it; `viewAsOf` gives what was said before. */
  | 'calibratedAfterFlight'
  /** What calibration leaves in doubt was not stated, so that the interval is too narrow. */
  | 'noCalibrationDoubt'
  /** The flow lies beyond the rows of the engine table, so no excess force was taken out of it. */
  | 'outsideEngineMap'
  /** Drag goes by the slope of consumption that this flight's own baseline shows, with a polar from elsewhere. */
  | 'dragSlopeOfBaseline'
  /** No engine map and nobody vouched for a lift to drag ratio: a generous bound stands in. */
  | 'noLiftToDrag';

/** What a reader should know beside the number; no note strikes it. */
export type Note =
  | 'noRunOpen'
  | 'airDataOfAnotherReading'
  /** The counters were older than the reading and carried on with the flow. */
  | 'weightByFlow'
  /** Suction was off, yet no suction-off card was open: it belongs to no baseline. */
  | 'suctionOffOutsideBaseline';

export interface Interval95 {
  readonly low: number;
  readonly high: number;
}

/** What a change of fuel flow was called drag by. */
export type DragBy = 'engineTable' | 'engineMap' | 'statedSlope' | 'slopeOfBaseline';

/** Why a change of fuel flow is not called drag. */
export type NoDrag =
  | 'noEngineMap'
  | 'outsideEngineMap'
  /** A polar was given, but the suction-off runs do not tell how consumption goes with thrust. */
  | 'noSlopeInBaseline'
  | 'bleedDriven'
  | 'shaftDriven';

export interface FlowFigure {
  readonly kgPerS: number;
  readonly standardUncertaintyKgPerS: number;
  readonly interval95KgPerS: Interval95;
}

/** Flows at the air temperature flown, each with its doubt; nothing is subtracted twice. */
export interface Savings {
  readonly gross: FlowFigure | { readonly because: 'bleedDriven' | 'shaftDriven' };
  /** The suction unit's own fuel, or what bleed for it costs the engines. */
  readonly suction: FlowFigure | null;
  readonly net: FlowFigure | { readonly because: 'unitFuelNotRead' };
}

export interface ReductionFigure {
  readonly fraction: number;
  readonly standardUncertainty: number;
  readonly interval95: Interval95;
}

/** What the figure was made of, so that a person can redo it; entry ids lead to the touches. */
export interface MadeOf {
  readonly entries: readonly EntryId[];
  readonly method: 'fit' | 'fitWithMach' | 'pair' | 'bracket';
  readonly dragBy: DragBy | null;
  readonly baselineRuns: readonly string[];
  readonly borrowedFrom: string | null;
  readonly flowKgPerS: number;
  readonly flowAtCardKgPerS: number;
  readonly weightN: number;
  readonly weightAtCardN: number;
  readonly baselineAtThatWeightKgPerS: number;
  readonly suctionFlowKgPerS: number | null;
  /** Parts of the fuel reduction's standard uncertainty, as shares. */
  readonly uncertaintyParts: {
    readonly run: number;
    readonly baseline: number;
    readonly calibration: number;
    readonly weight: number;
  };
}

export type LiveEstimate =
  | {
      readonly kind: 'notYet';
      readonly because: Missing;
      readonly at: EpochMs | null;
      readonly glance: number | null;
    }
  | {
      /** Suction off inside a suction-off run: it makes the baseline. */
      readonly kind: 'baselineReading';
      readonly entries: readonly EntryId[];
      readonly at: EpochMs;
      readonly glance: number;
      readonly broken: readonly Gate[];
      readonly provisional: readonly Provisional[];
      readonly flowAtCardKgPerS: number;
      readonly weightN: number;
      readonly weightAtCardN: number;
      /** Against the earlier runs moved to this weight. */
      readonly againstEarlier: null | {
        readonly movedKgPerS: number;
        readonly differenceFraction: number;
        readonly overU: number;
      };
      readonly readingsInRun: number;
      readonly notes: readonly Note[];
    }
  | {
      /** `struck` when `broken` is not empty: shown through, never hidden. */
      readonly kind: 'value' | 'struck';
      readonly at: EpochMs;
      readonly glance: number;
      readonly broken: readonly Gate[];
      readonly passed: readonly Gate[];
      readonly provisional: readonly Provisional[];
      readonly fuel: ReductionFigure;
      /** Null with a reason where nothing allows flow to be called drag. */
      readonly drag: ReductionFigure | { readonly because: NoDrag };
      /** Fuel reduction less the suction unit's own fuel; null where it has no metered flow. */
      readonly net: ReductionFigure | null;
      readonly savings: Savings;
      readonly madeOf: MadeOf;
      readonly point: string | null;
      readonly run: number | null;
      readonly notes: readonly Note[];
    };

export interface PointResult {
  readonly point: string;
  readonly run: number;
  readonly title: string;
  readonly setting: string;
  readonly suction: 'on' | 'off';
  readonly state: 'open' | 'complete' | 'interrupted' | 'terminated';
  readonly startedAt: EpochMs;
  readonly endedAt: EpochMs | null;
  readonly readingsUsed: readonly number[];
  readonly readingsLeftOut: readonly {
    readonly glance: number;
    readonly broken: readonly LeftOut[];
  }[];
  readonly result: PointNumber;
  /** How steady the aircraft was over the window before each reading of the mean: the worst of them. */
  readonly stability: StabilityAnswer;
}

/** A reason to leave a reading out of a run's mean after landing. */
export type LeftOut = Gate | 'beforeOnCondition' | 'queried' | 'incomplete';

export type PointNumber =
  | {
      readonly kind: 'none';
      readonly because: Missing | 'noUsableReading';
      /** Readings that were looked at in vain; may be empty. */
      readonly entries: readonly EntryId[];
    }
  | {
      readonly kind: 'baseline';
      readonly entries: readonly EntryId[];
      readonly provisional: readonly Provisional[];
      readonly flowAtCardKgPerS: number;
      readonly weightAtCardN: number;
      readonly standardUncertaintyKgPerS: number;
    }
  | (Savings & {
      /** `indicative` where the run was not finished. */
      readonly kind: 'valid' | 'indicative';
      readonly fuel: ReductionFigure;
      readonly drag: ReductionFigure | { readonly because: NoDrag };
      readonly netReduction: ReductionFigure | null;
      /** Null where suction is driven by the engines and its cost unknown: what their gauges show is then net already. */
      readonly grossKgPerS: number | null;
      readonly suctionUnitKgPerS: number | null;
      readonly netKgPerS: number | null;
      readonly netFraction: number | null;
      /** `outsideBaseline` where the weight lies beyond the suction-off runs and nothing borrowed carries it. */
      readonly broken: readonly Gate[];
      readonly provisional: readonly Provisional[];
      readonly madeOf: MadeOf;
    });

/** What the card in view still wants. */
export interface CardProgress {
  readonly point: string;
  readonly title: string;
  readonly setting: string;
  readonly suction: 'on' | 'off';
  readonly minimumReadings: number;
  /** Readings of the best run so far (or the open one) that no gate leaves out. */
  readonly usableReadings: number;
  readonly runs: number;
  readonly state: 'notFlown' | 'open' | 'partial' | 'complete' | 'interrupted' | 'terminated';
  readonly openRun: number | null;
}

/** A card to fly again, most wanted first. */
export interface Refly {
  readonly point: string;
  readonly priority: number;
  readonly because: 'notFlown' | 'tooFewReadings' | 'interrupted' | 'terminated';
}
