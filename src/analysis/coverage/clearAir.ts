import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightState } from '../../record/flightState.ts';
import { WINGS, type FlightSheet } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';
import { encounters, type Encounter } from '../encounters/encounters.ts';
import { wingLooks, type WingLook } from '../encounters/wingLooks.ts';
import type { LaminarGate } from './laminarResults.ts';
import type { Stretch } from './stretches.ts';

/** When flow had taken hold after suction came on. */
export interface Settled {
  readonly at: EpochMs;
  readonly by: EntryId | null;
}

/**
 * The last gain before anything else was done or befell the flow: a point, another setting, cloud, a loss. Without such
 * a gain it is the moment of suction on, and `by` is null.
 */
export function settledAfter(
  state: FlightState,
  looks: readonly WingLook[],
  { from, to }: Stretch,
): Settled {
  const within = (at: EpochMs): boolean => at >= from && at <= to;
  const disturbed = [
    ...[...items(state.runs)].map(({ started }) => started.at),
    ...[...items(state.suctionChanges)].flatMap(({ at, what }) => (what === 'changed' ? [at] : [])),
    ...[...items(state.intervals)].flatMap(({ kind, opened }) =>
      kind === 'moisture' ? [opened.at] : [],
    ),
    ...looks.flatMap(({ at, isLoss }) => (isLoss ? [at] : [])),
  ].filter((at) => at > from);
  const until = disturbed.reduce((first, at) => (at < first ? at : first), to);
  const gains = looks.filter(({ at, isGain }) => isGain && within(at) && at <= until);
  const last = gains.toSorted((a, b) => a.at - b.at).at(-1);
  return last === undefined ? { at: from, by: null } : { at: last.at, by: last.by };
}

export function looksOfWings(state: FlightState, sheet: FlightSheet): readonly WingLook[] {
  return WINGS.flatMap((wing) => wingLooks(state, sheet, wing));
}

/** Time that is not clear air, by one encounter. */
export interface TakenOff extends Stretch {
  readonly by: readonly EntryId[];
  readonly broken: readonly LaminarGate[];
}

/** First loss to last gain of each encounter; where nobody looked, all of the cloud. */
export function lostToCloud(view: FlightView, looks: readonly WingLook[]): readonly TakenOff[] {
  return encounters(view).flatMap((encounter): readonly TakenOff[] => {
    const { lost, entry, exit } = encounter;
    if (lost.kind === 'answer') {
      const { from, to } = lost.value;
      const broken: readonly LaminarGate[] = lost.how.broken.includes('notRecovered')
        ? ['notRecovered']
        : [];
      return [{ from, to, by: lost.how.entries, broken }];
    }
    const to = exit?.at ?? view.state.lastAt ?? entry.at;
    if (wasWatched(encounter, looks, to)) return [];
    const by = exit === null ? [entry.by] : [entry.by, exit.by];
    return [{ from: entry.at, to, by, broken: ['moistureNotWatched'] }];
  });
}

function wasWatched({ entry }: Encounter, looks: readonly WingLook[], to: EpochMs): boolean {
  return looks.some(({ at }) => at >= entry.at && at <= to);
}
