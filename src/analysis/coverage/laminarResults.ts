import type { EpochMs } from '../../record/brand.ts';
import type { Wing } from '../../record/sheet.ts';
import type { Answer } from '../answer.ts';

/** Laminar share by area and time, over what was seen: unknown is not turbulent. */
export interface LaminarTime {
  readonly byAreaFraction: number;
  /** Share of area times time that somebody had called. */
  readonly observedFraction: number;
  /** With suction on, level; in clear air less the time lost to cloud. */
  readonly durationS: number;
  /** What was taken off for cloud. */
  readonly lessS: number;
}

export type NoLaminarTime =
  | 'noFlightSheet'
  | 'noTappedArea'
  | 'notAssessed'
  /** Suction was never on in level flight. */
  | 'notLevel'
  | 'noClearAir';

export type LaminarGate =
  /** Nobody wrote suction off: top of descent, or the last thing read, ends it. */
  | 'notTurnedOff'
  /** No gain was called before flow was disturbed: clear air begins with suction on. */
  | 'settlingNotSeen'
  /** Nobody called a wing while in cloud: all of that cloud is taken off. */
  | 'moistureNotWatched'
  /** A wing was not whole again when watching ended: more may have been lost than is taken off. */
  | 'notRecovered';

export type LaminarTimeAnswer = Answer<LaminarTime, NoLaminarTime, 'heldStatesByArea', LaminarGate>;

/** All air, and clear air: from the last gain while flow took hold, less first loss to last gain of each cloud. */
export interface LaminarShares {
  readonly allAir: LaminarTimeAnswer;
  readonly clearAir: LaminarTimeAnswer;
}

export interface LaminarSpan extends LaminarShares {
  readonly from: EpochMs;
  readonly to: EpochMs;
  /** When flow had taken hold. */
  readonly settledAt: EpochMs;
  readonly wings: Readonly<Record<Wing, LaminarShares | null>>;
}

export interface LaminarByTime extends LaminarShares {
  readonly spans: readonly LaminarSpan[];
  /** Null for a wing that never had suction. */
  readonly wings: Readonly<Record<Wing, LaminarShares | null>>;
}
