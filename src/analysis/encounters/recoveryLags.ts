import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Timed } from '../../record/flightState.ts';
import type { Answer } from '../answer.ts';
import { distinct, type WingLoss } from './lossLags.ts';
import { watchEnd, type Ended, type WatchEnd } from './watch.ts';
import {
  boundGate,
  combinedDoubtS,
  isWithin,
  seenAt,
  type LagGate,
  type Seen,
  type Watched,
  type WingInMoisture,
} from './wingInMoisture.ts';
import { countBy, isComparable, type LaminarCount, type WingLook } from './wingLooks.ts';

/** Laminar flow that lasts this long has come back; shorter is a flicker (a choice). */
const SUSTAINED_S = 10;

/** Recovery of one wing, both ways: the first of it back, and as many as before, are two numbers. */
export interface WingRecovery {
  readonly sustained: Answer<RecoveryLag, NoRecovery, 'firstSustainedGainLessExit', LagGate>;
  readonly toCount: Answer<RecoveryLag, NoRecovery, 'backToCountLessExit', LagGate>;
  readonly sustainedWatch: Watched | null;
  readonly toCountWatch: Watched | null;
  /** When the wing was whole again, inside or after; else when watching ended. Null where nothing was lost. */
  readonly wholeAgain:
    | (Pick<Seen, 'at' | 'standardUncertaintyS'> & {
        readonly by: EntryId | null;
        readonly isBack: boolean;
      })
    | null;
}

export interface RecoveryLag {
  readonly lagS: number;
  /** Root sum square of the doubts of both times. */
  readonly lagStandardUncertaintyS: number;
  readonly seen: Seen;
  readonly count: LaminarCount | null;
}

/** Why there is no time to recovery. An end of watching means that the wing was not back by then. */
export type NoRecovery =
  | 'nothingLost'
  | 'moistureStillOpen'
  /** As many as before were laminar again while still inside. */
  | 'backBeforeExit'
  /** Nobody had counted before the loss. */
  | 'noCountBefore'
  | WatchEnd;

export function wingRecovery(of: WingInMoisture, loss: WingLoss): WingRecovery {
  const exit = of.interval.closed;
  const { index, before } = loss;
  const { looks } = of;
  if (index === null) return noRecovery('nothingLost', of.interval.opened, null);
  if (exit === null) {
    const end = endOfWatch(of, null);
    return noRecovery('moistureStillOpen', of.interval.opened, notBackBy(end));
  }
  const inside = looks.slice(index).findLastIndex(({ at }) => at < exit.at);
  const atExit = before === null ? null : countBy(looks, index + Math.max(0, inside), before.as);
  if (atExit !== null && before !== null && isBack(atExit.count, before)) {
    const out = looks.slice(0, index + inside + 1).findLastIndex((look) => isOut(look, before));
    return noRecovery('backBeforeExit', exit, backAt(of, looks[out + 1]));
  }
  const end = endOfWatch(of, exit.at);
  const later = looks.slice(index + 1).filter(({ at }) => at >= exit.at && isWithin(end, at));
  const gain = later.find(
    (look) => look.isGain && !look.byCommand && isSustained(look, later, end),
  );
  const back = later.find(
    (look) => before !== null && !look.byCommand && isBack(look[before.as], before),
  );
  return {
    sustained: answered(of, exit, gain, end, 'firstSustainedGainLessExit'),
    sustainedWatch: watchedUntil(exit, gain, end),
    toCount:
      before === null
        ? { kind: 'noAnswer', because: 'noCountBefore', entries: [exit.by] }
        : answered(of, exit, back, end, 'backToCountLessExit'),
    toCountWatch: before === null ? null : watchedUntil(exit, back, end),
    wholeAgain: backAt(of, back) ?? notBackBy(end),
  };
}

function endOfWatch(of: WingInMoisture, reentryFrom: EpochMs | null): Ended | null {
  const { watch, wing, interval } = of;
  return watchEnd(watch, { wing, own: interval, from: interval.opened.at, reentryFrom });
}

function backAt(of: WingInMoisture, look: WingLook | undefined): WingRecovery['wholeAgain'] {
  return look === undefined ? null : { ...seenAt(of, look), isBack: true };
}

function notBackBy(end: Ended | null): WingRecovery['wholeAgain'] {
  return end === null ? null : { at: end.at, by: end.by, standardUncertaintyS: 0, isBack: false };
}

function isOut(look: WingLook, before: LaminarCount): boolean {
  const now = look[before.as];
  return now !== null && !isBack(now, before);
}

function noRecovery(
  because: NoRecovery,
  timed: Timed,
  wholeAgain: WingRecovery['wholeAgain'],
): WingRecovery {
  const none = { kind: 'noAnswer', because, entries: [timed.by] } as const;
  return { sustained: none, toCount: none, sustainedWatch: null, toCountWatch: null, wholeAgain };
}

function isBack(now: LaminarCount | null, before: LaminarCount): boolean {
  return now !== null && isComparable(now, before) && now.laminar >= before.laminar;
}

/** Nothing lost again, and watched on, for long enough. */
function isSustained(gain: WingLook, later: readonly WingLook[], end: Ended | null): boolean {
  const until = gain.at + SUSTAINED_S * 1000;
  if (end !== null && end.at < until) return false;
  return !later.some(({ at, isLoss }) => isLoss && at > gain.at && at < until);
}

function answered<const Method extends string>(
  of: WingInMoisture,
  exit: Timed,
  look: WingLook | undefined,
  end: Ended | null,
  method: Method,
): Answer<RecoveryLag, NoRecovery, Method, LagGate> {
  if (look === undefined) {
    return {
      kind: 'noAnswer',
      because: end?.why ?? 'endOfRecord',
      entries: distinct([exit.by, end?.by]),
    };
  }
  return {
    kind: 'answer',
    value: {
      lagS: (look.at - exit.at) / 1000,
      lagStandardUncertaintyS: combinedDoubtS(of, look, exit),
      seen: seenAt(of, look),
      count: look.probes ?? look.panels,
    },
    how: { entries: distinct([exit.by, look.by]), method, broken: boundGate(look) },
  };
}

function watchedUntil(exit: Timed, look: WingLook | undefined, end: Ended | null): Watched | null {
  if (look !== undefined) {
    return { watchedS: (look.at - exit.at) / 1000, ended: 'event', by: look.by };
  }
  if (end === null) return null;
  return { watchedS: Math.max(0, (end.at - exit.at) / 1000), ended: end.why, by: end.by };
}
