import type { Answer } from '../answer.ts';
import type { Gate, NoDrag, ReductionFigure } from '../results.ts';

/** What the area called laminar would take off the drag, as shares of the whole drag. */
export interface ExpectedReduction {
  /** φ f (1 − Cf_L/Cf_T): laminar to the trailing edge wherever it is laminar at all. */
  readonly upperBoundFraction: number;
  /** Strip by strip, laminar as far as each panel goes and turbulent from a virtual origin behind it. */
  readonly stripsFraction: number | null;
  /** The strips where there are any, else the bound. */
  readonly estimateFraction: number;
  /** From the doubt of the drag share alone; null where nobody stated it. */
  readonly estimateStandardUncertainty: number | null;
  /** Laminar share of the area seen, over the readings of the run. */
  readonly laminarAreaFraction: number;
  readonly observedFraction: number;
  readonly treatedDragShare: number;
  readonly treatedDragShareFrom: string;
}

export type NoExpected =
  | 'noUsableReading'
  /** Which share of the drag the treated strips carry belongs to one aircraft, and nobody stated it. */
  | 'treatedDragShareNotStated'
  | 'treatedDragShareImpossible'
  | 'noPanels'
  | 'notAssessed'
  | 'noChord'
  | 'reynoldsOutsideFormula';

export type ExpectedMethod = 'virtualOriginStrips' | 'upperBound';

/** What to look at where the two differ. */
export type ToCheck = 'weight' | 'mach' | 'suctionState' | 'wedges' | 'estimateIsUpperBound';

export interface BesideMeasured {
  readonly measured: ReductionFigure;
  readonly estimateFraction: number;
  /** Measured less estimate. */
  readonly differenceFraction: number;
  /** U95 of what was measured, and 30 % of the estimate. */
  readonly allowedFraction: number;
  readonly verdict: 'consistent' | 'differs';
  /** Empty where they are consistent. */
  readonly toCheck: readonly ToCheck[];
}

export interface ExpectedDrag {
  readonly point: string;
  readonly run: number;
  readonly expected: Answer<ExpectedReduction, NoExpected, ExpectedMethod>;
  readonly beside: Answer<
    BesideMeasured,
    NoExpected | NoDrag | 'noBaseline' | 'bracketDrifts',
    ExpectedMethod,
    Gate
  >;
}
