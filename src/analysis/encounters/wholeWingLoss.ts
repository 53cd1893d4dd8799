import type { EntryId } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import { WINGS, type FlightSheet } from '../../record/sheet.ts';
import type { ClearRun } from './clearRuns.ts';
import type { Encounter } from './encounters.ts';
import { distinct, lostShare } from './lossLags.ts';
import { countSpoken, wingLooks, type WingLook } from './wingLooks.ts';

/** A wing that kept less than this share of what was laminar is lost as a whole (a choice). */
const WHOLE_WING_KEEPS_LESS_THAN = 0.25;

/** Whether some wing was lost as a whole; null where no wing was seen well enough to say. */
export interface WholeWing {
  readonly lost: boolean | null;
  readonly entries: readonly EntryId[];
}

export function wholeWingInEncounter({ wings, entry }: Encounter): WholeWing {
  const seen = WINGS.map((wing) => wings[wing].loss).filter(({ watched }) => watched !== null);
  const lost = seen.map(({ lowest }) =>
    lowest.kind === 'answer' ? isWhole(lostShare(lowest.value)) : false,
  );
  return {
    lost: anyOf(lost),
    entries: distinct([
      entry.by,
      ...seen.flatMap(({ lowest }) =>
        lowest.kind === 'answer' ? lowest.how.entries : lowest.entries,
      ),
    ]),
  };
}

/** Losses by command are a valve's, not the air's. */
export function wholeWingInRuns(
  state: FlightState,
  sheet: FlightSheet,
): (run: ClearRun) => WholeWing {
  const looks = WINGS.map((wing) => wingLooks(state, sheet, wing));
  return (run) => {
    const wings = looks.map((ofWing) => lostInRun(ofWing, run));
    return {
      lost: anyOf(wings.map(({ lost }) => lost)),
      entries: distinct([
        run.run.started.by,
        run.run.ended?.by,
        ...wings.flatMap(({ entries }) => entries),
      ]),
    };
  };
}

function lostInRun(looks: readonly WingLook[], { from, to }: ClearRun): WholeWing {
  const start = looks.findLastIndex(({ at }) => at <= from);
  const before = countSpoken(looks, start);
  if (before === null || before.count.laminar === 0) return { lost: null, entries: [] };
  const lost = looks.find(
    (look, index) =>
      index > start &&
      look.at <= to &&
      look.isLoss &&
      !look.byCommand &&
      isWhole(lostShare({ from: before.count, to: look[before.count.as] })),
  );
  return { lost: lost !== undefined, entries: distinct([before.by, lost?.by]) };
}

function isWhole(lostFraction: number | null): boolean | null {
  return lostFraction === null ? null : 1 - lostFraction < WHOLE_WING_KEEPS_LESS_THAN;
}

function anyOf(lost: readonly (boolean | null)[]): boolean | null {
  if (lost.includes(true)) return true;
  return lost.includes(false) ? false : null;
}
