import type { EpochMs } from '../../record/brand.ts';
import type { FlightState, Timed } from '../../record/flightState.ts';
import { WINGS, type Wing } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';

/** One wing's suction from on to off; `off` is null where nobody turned it off. */
export interface WingSuction {
  readonly wing: Wing;
  readonly on: Timed;
  readonly off: Timed | null;
}

/** A stretch of time with suction on one wing at least. */
export interface SuctionOn {
  readonly on: Timed;
  /** Null where a wing was never turned off. */
  readonly off: Timed | null;
  readonly wings: readonly WingSuction[];
}

/** Every stretch with suction on, in order of time; wings that overlap share one. */
export function suctionOn(state: FlightState): readonly SuctionOn[] {
  const stretches: SuctionOn[] = [];
  for (const wing of wingStretches(state)) {
    const last = stretches.at(-1);
    if (last === undefined || (last.off !== null && last.off.at < wing.on.at)) {
      stretches.push({ on: wing.on, off: wing.off, wings: [wing] });
    } else {
      stretches[stretches.length - 1] = {
        on: last.on,
        off: laterOff(last.off, wing.off),
        wings: [...last.wings, wing],
      };
    }
  }
  return stretches;
}

/** Wings that had suction at some time of the stretch. */
export function wingsOf({ wings }: SuctionOn): readonly Wing[] {
  return WINGS.filter((side) => wings.some(({ wing }) => wing === side));
}

/**
 * When a stretch that nobody ended is over at the latest: at top of descent, else at touchdown, else at the last thing
 * that was read. Lab results come days later and end nothing.
 */
export function latestEnd(state: FlightState, on: EpochMs): EpochMs {
  const { topOfDescent, touchdown } = state.milestones;
  const ended = [topOfDescent?.at, touchdown?.at].filter((at) => at !== undefined && at > on);
  const [first] = ended.sort((a, b) => (a ?? 0) - (b ?? 0));
  if (first !== undefined) return first;
  let last = on;
  for (const { at } of items(state.glances)) if (at > last) last = at;
  for (const { at } of items(state.wingCalls)) if (at > last) last = at;
  return last;
}

function wingStretches(state: FlightState): readonly WingSuction[] {
  const found: WingSuction[] = [];
  for (const { kind, label, opened, closed } of items(state.intervals)) {
    const wing = WINGS.find((side) => side === label);
    if (kind === 'suction' && wing !== undefined) found.push({ wing, on: opened, off: closed });
  }
  return found.sort((a, b) => a.on.at - b.on.at);
}

function laterOff(a: Timed | null, b: Timed | null): Timed | null {
  if (a === null || b === null) return null;
  return a.at >= b.at ? a : b;
}
