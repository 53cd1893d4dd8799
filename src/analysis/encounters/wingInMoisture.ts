import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { Interval, Timed } from '../../record/flightState.ts';
import type { FlightSheet, Wing } from '../../record/sheet.ts';
import { timeDoubtS } from './timeDoubt.ts';
import type { Ended, Watch, WatchEnd } from './watch.ts';
import type { WingLook } from './wingLooks.ts';

/** What every lag of one wing in one moisture encounter is worked out from. */
export interface WingInMoisture {
  readonly view: FlightView;
  readonly sheet: FlightSheet;
  readonly watch: Watch;
  readonly wing: Wing;
  readonly looks: readonly WingLook[];
  readonly interval: Interval;
  /** At entry. */
  readonly suctionOn: boolean;
}

/** How long it was watched for, and what ended it. */
export interface Watched {
  readonly watchedS: number;
  readonly ended: 'event' | WatchEnd;
  readonly by: EntryId | null;
}

export type LagGate =
  /** Found in a reading of probes: the change came then or before. */
  | 'readingIsABound'
  /** The loss was called before the entry, by less than twice the doubt of their order. */
  | 'lostBeforeEntryWithinDoubt';

/** A moment that somebody called, with the doubt of its own time. */
export interface Seen {
  readonly at: EpochMs;
  readonly by: EntryId;
  readonly standardUncertaintyS: number;
}

export function seenAt(
  { view, sheet }: Pick<WingInMoisture, 'view' | 'sheet'>,
  timed: Timed,
): Seen {
  return {
    at: timed.at,
    by: timed.by,
    standardUncertaintyS: timeDoubtS(view, sheet, timed),
  };
}

/** Doubt of the time between two events: the root sum square of theirs. */
export function combinedDoubtS(
  { view, sheet }: Pick<WingInMoisture, 'view' | 'sheet'>,
  one: Timed,
  other: Timed,
): number {
  return Math.hypot(timeDoubtS(view, sheet, one), timeDoubtS(view, sheet, other));
}

/** Whether something seen at this moment still counts when watching ended then. */
export function isWithin(end: Ended | null, at: EpochMs): boolean {
  if (end === null || at < end.at) return true;
  return at === end.at && (end.why === 'endOfRecord' || end.why === 'moistureOver');
}

export function boundGate(look: WingLook): readonly LagGate[] {
  return look.inReading ? ['readingIsABound'] : [];
}
