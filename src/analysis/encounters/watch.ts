import { laterBy, type EntryId, type EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { Interval } from '../../record/flightState.ts';
import { WINGS, type Wing } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';

/** Moisture that ended less than this long ago may still be why flow is lost (the order of evidence, a choice). */
export const MOISTURE_LINGERS_S = 300;

/** Why watching ended before what was waited for. */
export type WatchEnd =
  | 'moistureOver'
  | 'reentry'
  | 'suctionChange'
  | 'byCommand'
  | 'descent'
  | 'landing'
  | 'endOfRecord';

export interface Ended {
  readonly at: EpochMs;
  readonly why: WatchEnd;
  readonly by: EntryId | null;
}

/** What can end watching, sorted once for a flight. */
export interface Watch {
  readonly moisture: readonly Interval[];
  readonly upsets: Readonly<Record<Wing, readonly Ended[]>>;
  readonly ends: readonly Ended[];
  readonly last: EpochMs | null;
}

export function watchOf(view: FlightView): Watch {
  const { state } = view;
  const ends: Ended[] = [];
  const upsets: Record<Wing, Ended[]> = { L: [], R: [] };
  for (const { effective, standing, at } of view.standing) {
    if (standing !== 'stands') continue;
    const why = END_OF[effective.kind];
    if (why !== undefined) ends.push({ at, why, by: effective.id });
  }
  for (const { at, by, wings } of items(state.suctionChanges)) {
    for (const wing of wings) upsets[wing].push({ at, why: 'suctionChange', by });
  }
  for (const { at, by, wing, byCommand } of items(state.wingCalls)) {
    if (byCommand) upsets[wing].push({ at, why: 'byCommand', by });
  }
  for (const wing of WINGS) upsets[wing].sort((a, b) => a.at - b.at);
  return {
    moisture: [...items(state.intervals)].filter(({ kind }) => kind === 'moisture'),
    upsets,
    ends,
    last: state.lastAt,
  };
}

const END_OF: Readonly<Record<string, WatchEnd | undefined>> = {
  descentBegun: 'descent',
  touchedDown: 'landing',
  blocksOn: 'landing',
  flightClosed: 'endOfRecord',
};

/** The first thing at or after `from` that ends watching this wing; moisture other than `own` ends it too. */
export function watchEnd(
  watch: Watch,
  {
    wing,
    own,
    from,
    reentryFrom,
  }: {
    readonly wing: Wing;
    readonly own: Interval;
    readonly from: EpochMs;
    readonly reentryFrom: EpochMs | null;
  },
): Ended | null {
  const reentry =
    reentryFrom === null
      ? []
      : watch.moisture
          .filter((other) => other !== own && isOpenAt(other, reentryFrom))
          .map(({ opened }): Ended => ({
            at: opened.at > reentryFrom ? opened.at : reentryFrom,
            why: 'reentry',
            by: opened.by,
          }));
  const upset = watch.upsets[wing].find(({ at }) => at > from);
  const end = watch.ends.find(({ at }) => at > from);
  const last: readonly Ended[] =
    watch.last === null ? [] : [{ at: watch.last, why: 'endOfRecord', by: null }];
  return earliest([
    ...reentry,
    ...(upset === undefined ? [] : [upset]),
    ...(end === undefined ? [] : [end]),
    ...last,
  ]);
}

export function earliest(ends: readonly Ended[]): Ended | null {
  return ends.reduce<Ended | null>(
    (first, end) => (first === null || end.at < first.at ? end : first),
    null,
  );
}

/** Still going on at this moment, or still to come. */
function isOpenAt({ closed }: Interval, at: EpochMs): boolean {
  return closed === null || closed.at > at;
}

/** The end of the time in which a loss belongs to this moisture; null while it is open. */
export function moistureOver({ closed }: Interval): Ended | null {
  return closed === null
    ? null
    : { at: laterBy(closed.at, MOISTURE_LINGERS_S * 1000), why: 'moistureOver', by: closed.by };
}

/** Whether any moisture was open between these moments, ends included. */
export function meetsMoisture(intervals: readonly Interval[], from: EpochMs, to: EpochMs): boolean {
  return intervals.some(
    ({ opened, closed }) => opened.at <= to && (closed === null || closed.at >= from),
  );
}
