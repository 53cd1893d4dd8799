import { laterBy, type EntryId } from '../../record/brand.ts';
import type { Answer } from '../answer.ts';
import {
  earliest,
  meetsMoisture,
  MOISTURE_LINGERS_S,
  moistureOver,
  watchEnd,
  type Ended,
  type WatchEnd,
} from './watch.ts';
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
import {
  countBy,
  countSpoken,
  isComparable,
  type LaminarCount,
  type WingLook,
} from './wingLooks.ts';

export interface LossLag {
  readonly lagS: number;
  /** Root sum square of the doubts of both times. */
  readonly lagStandardUncertaintyS: number;
  readonly seen: Seen;
  /** Null where nobody had counted. */
  readonly from: LaminarCount | null;
  readonly to: LaminarCount | null;
}

/** Why a wing has no time to loss. An end of watching means that it kept its flow until then. */
export type NoLoss = 'notAssessedAtEntry' | 'suctionOff' | 'turbulentAtEntry' | WatchEnd;

/** The loss of one wing in one encounter, or its absence. */
export interface WingLoss {
  readonly first: Answer<LossLag, NoLoss, 'firstLossLessEntry', LagGate>;
  /** When the fewest were laminar: never the same thing as the first loss. */
  readonly lowest: Answer<LossLag, NoLoss, 'lowestCountLessEntry', LagGate>;
  readonly watched: Watched | null;
  /** As the wing stood at entry, or before a loss that came earlier within doubt. */
  readonly before: LaminarCount | null;
  /** Place of the first loss among the looks. */
  readonly index: number | null;
}

export function wingLoss(of: WingInMoisture): WingLoss {
  const { looks, interval } = of;
  const entry = interval.opened;
  const after = looks.findIndex(({ at, isLoss }) => at > entry.at || (at === entry.at && isLoss));
  const beforeIndex = (after < 0 ? looks.length : after) - 1;
  const end = lossWatchEnd(of);
  const index = looks.findIndex(
    ({ at, isLoss, byCommand }, place) =>
      place > beforeIndex && isLoss && !byCommand && isWithin(end, at),
  );
  const before = countSpoken(looks, beforeIndex);
  const nothingLeft = before !== null && before.count.laminar + before.count.intermittent === 0;
  const look = nothingLeft ? undefined : looks[index];
  if (look !== undefined) return lostAt(of, index, look, []);
  const early = looks[beforeIndex];
  if (early !== undefined && isLostWithinDoubt(of, early)) {
    return lostAt(of, beforeIndex, early, ['lostBeforeEntryWithinDoubt']);
  }
  return keptUntil(of, { before, nothingLeft, end });
}

function keptUntil(
  { interval, suctionOn }: WingInMoisture,
  {
    before,
    nothingLeft,
    end,
  }: {
    readonly before: ReturnType<typeof countSpoken>;
    readonly nothingLeft: boolean;
    readonly end: Ended | null;
  },
): WingLoss {
  const entry = interval.opened;
  const unwatched = nothingLeft ? 'turbulentAtEntry' : 'notAssessedAtEntry';
  const isWatched = before !== null && !nothingLeft;
  const because = isWatched ? (end?.why ?? 'endOfRecord') : suctionOn ? unwatched : 'suctionOff';
  const entries = [entry.by, before?.by, isWatched ? end?.by : null];
  const none = { kind: 'noAnswer', because, entries: distinct(entries) } as const;
  const watched: Watched | null =
    !isWatched || end === null
      ? null
      : { watchedS: Math.max(0, (end.at - entry.at) / 1000), ended: end.why, by: end.by };
  return { first: none, lowest: none, watched, before: before?.count ?? null, index: null };
}

/** The wing was lost so shortly before the scribe said "entry" that the order is in doubt. */
function isLostWithinDoubt(of: WingInMoisture, look: WingLook): boolean {
  if (!look.isLoss || look.byCommand) return false;
  const { interval, watch } = of;
  const others = watch.moisture.filter((other) => other !== interval);
  const lingering = laterBy(look.at, -MOISTURE_LINGERS_S * 1000);
  if (meetsMoisture(others, lingering, look.at)) return false;
  return interval.opened.at - look.at <= 2000 * combinedDoubtS(of, look, interval.opened);
}

function lostAt(
  of: WingInMoisture,
  index: number,
  look: WingLook,
  broken: readonly LagGate[],
): WingLoss {
  const entry = of.interval.opened;
  const to = look.probes ?? look.panels;
  const before =
    to === null ? countSpoken(of.looks, index - 1) : countBy(of.looks, index - 1, to.as);
  const from = before?.count ?? null;
  const lowest = lowestFrom(of, index, look, from);
  const entries = [entry.by, look.by, before?.by];
  return {
    first: {
      kind: 'answer',
      value: lagOf(of, look, from),
      how: {
        entries: distinct(entries),
        method: 'firstLossLessEntry',
        broken: [...broken, ...boundGate(look)],
      },
    },
    lowest: {
      kind: 'answer',
      value: lagOf(of, lowest, from),
      how: {
        entries: distinct([...entries, lowest.by]),
        method: 'lowestCountLessEntry',
        broken: [...broken, ...boundGate(lowest)],
      },
    },
    watched: {
      watchedS: Math.max(0, (look.at - entry.at) / 1000),
      ended: 'event',
      by: look.by,
    },
    before: from,
    index,
  };
}

function lagOf(of: WingInMoisture, look: WingLook, from: LaminarCount | null): LossLag {
  const entry = of.interval.opened;
  return {
    lagS: (look.at - entry.at) / 1000,
    lagStandardUncertaintyS: combinedDoubtS(of, look, entry),
    seen: seenAt(of, look),
    from,
    to: look.probes ?? look.panels,
  };
}

/** The first look with the fewest laminar, from the first loss until all were back or watching ended. */
function lowestFrom(
  of: WingInMoisture,
  index: number,
  first: WingLook,
  from: LaminarCount | null,
): WingLook {
  const as = (first.probes ?? first.panels)?.as;
  if (as === undefined) return first;
  const end = lossWatchEnd(of);
  let lowest = first;
  for (const look of of.looks.slice(index + 1)) {
    if (!isWithin(end, look.at) || look.byCommand) break;
    const [now, least] = [look[as], lowest[as]];
    if (now === null || least === null) continue;
    if (from !== null && now.laminar >= from.laminar) break;
    if (now.laminar < least.laminar) lowest = look;
  }
  return lowest;
}

function lossWatchEnd({ watch, wing, interval }: WingInMoisture): Ended | null {
  const ends = [
    moistureOver(interval),
    watchEnd(watch, {
      wing,
      own: interval,
      from: interval.opened.at,
      reentryFrom: interval.closed?.at ?? null,
    }),
  ];
  return earliest(ends.filter((end) => end !== null));
}

/** Each once, in the order given. */
export function distinct(ids: readonly (EntryId | null | undefined)[]): readonly EntryId[] {
  return [...new Set(ids.filter((id) => id !== null && id !== undefined))];
}

/** Share of the laminar count that was gone; null where one of the counts is missing or there was nothing to lose. */
export function lostShare({ from, to }: Pick<LossLag, 'from' | 'to'>): number | null {
  if (from === null || to === null || !isComparable(from, to)) return null;
  return from.laminar > 0 ? 1 - to.laminar / from.laminar : null;
}
