import { laterBy, type EpochMs } from '../../record/brand.ts';
import type { FlightState, Interval } from '../../record/flightState.ts';
import type { Answer } from '../answer.ts';
import { heldShare, type HeldShare } from './heldShare.ts';
import type { WingEncounter } from './lags.ts';
import { distinct } from './lossLags.ts';

/** From the first loss on either wing until both were whole again. */
export interface LostTime {
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly lostForS: number;
  readonly lostForStandardUncertaintyS: number;
}

export interface LostArea {
  /** Just before moisture, or before a loss that came earlier within doubt. */
  readonly before: HeldShare;
  /** Time mean over the lost time. */
  readonly during: HeldShare;
}

export type LostGate =
  /** A wing that lost was not whole again when watching ended: it lasted at least so long. */
  | 'notRecovered'
  /** A wing's loss was found in a reading of probes. */
  | 'readingIsABound'
  | 'lostBeforeEntryWithinDoubt';

export type LostTimeAnswer = Answer<LostTime, 'nothingLost', 'firstLossToLastGain', LostGate>;
export type LostAreaAnswer = Answer<
  LostArea,
  'nothingLost' | 'notAssessed',
  'heldStatesByArea',
  LostGate
>;

export function lostTime({ opened }: Interval, wings: readonly WingEncounter[]): LostTimeAnswer {
  const lost = wings.flatMap(({ loss: { first }, recovery: { wholeAgain } }) =>
    first.kind === 'answer' ? [{ first, wholeAgain }] : [],
  );
  const [start] = lost.map(({ first }) => first.value.seen).toSorted((a, b) => a.at - b.at);
  const ends = lost.map(({ wholeAgain }) => wholeAgain).filter((end) => end !== null);
  const [end] = ends.toSorted((a, b) => b.at - a.at);
  if (start === undefined || end === undefined) {
    return { kind: 'noAnswer', because: 'nothingLost', entries: [opened.by] };
  }
  const broken = new Set<LostGate>(lost.flatMap(({ first }) => first.how.broken));
  if (ends.some(({ isBack }) => !isBack)) broken.add('notRecovered');
  return {
    kind: 'answer',
    value: {
      from: start.at,
      to: end.at,
      lostForS: Math.max(0, end.at - start.at) / 1000,
      lostForStandardUncertaintyS: Math.hypot(start.standardUncertaintyS, end.standardUncertaintyS),
    },
    how: {
      entries: distinct([
        ...lost.flatMap(({ first }) => first.how.entries),
        ...ends.map(({ by }) => by),
      ]),
      method: 'firstLossToLastGain',
      broken: [...broken],
    },
  };
}

/** Laminar share of the tapped area of both wings before and during the lost time. */
export function lostArea(
  state: FlightState,
  { opened }: Interval,
  lost: LostTimeAnswer,
): LostAreaAnswer {
  if (lost.kind === 'noAnswer') return lost;
  const { from, to } = lost.value;
  const start = from < opened.at ? from : opened.at;
  const before = heldShare(state, laterBy(start, -1), start);
  const during = heldShare(state, from, to);
  if (before === null || during === null) {
    return { kind: 'noAnswer', because: 'notAssessed', entries: lost.how.entries };
  }
  return {
    kind: 'answer',
    value: { before, during },
    how: { ...lost.how, method: 'heldStatesByArea' },
  };
}
