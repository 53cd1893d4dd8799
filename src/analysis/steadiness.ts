import type { Stability, StabilityLimits } from '../aero/stability.ts';
import type { EpochMs } from '../record/brand.ts';
import type { Answer } from './answer.ts';

/** How steady the aircraft was over the window before a reading. */
export interface Steadiness extends Stability {
  /** The window ends at this reading. */
  readonly glance: number;
  readonly endedAt: EpochMs;
  readonly limits: StabilityLimits;
}

export type NoSteadiness =
  | 'noFlightSheet'
  | 'outsideAtmosphere'
  | 'noReading'
  /** An instrument was read too seldom inside the window. */
  | 'tooFewLooks'
  /** The looks cover too little of the window. */
  | 'windowTooShort'
  | 'noWeight'
  /** Air data or flow that no aircraft has. */
  | 'looksImpossible';

export type StabilityAnswer = Answer<Steadiness, NoSteadiness, 'slidingWindow'>;
