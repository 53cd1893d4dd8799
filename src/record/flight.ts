import type { EntryId, RecorderId } from './brand.ts';
import type { Entry } from './entry.ts';
import { comparePlaced, isSameStanding, placeIn, placeOf, standingEntry } from './eventOrder.ts';
import type { FlightState, StandingEntry } from './flightState.ts';
import { type Fold, startOfFold } from './fold/fold.ts';
import { folded } from './fold/folded.ts';
import { startPlaces } from './places.ts';
import { startStandings } from './standing.ts';
import { emptyTrail, extended, firstOf, itemAt, items, itemsFrom, type Trail } from './trail.ts';

/** Entries between two kept states. A late entry or an amendment is folded again from the one before its place. */
const CHECKPOINT_EVERY = 128;
/** Newest states kept one by one. */
const RECENT = 64;

/** The one projection of a flight: takes entries in any order, gives the same view for the same set. */
export interface Flight {
  /** Takes in entries; those known already change nothing, and then the view is the same object. */
  readonly add: (entries: readonly Entry[]) => FlightView;
  readonly view: () => FlightView;
}

/** A flight as it is known at one moment. Later additions give new views and leave this one as it is. */
export interface FlightView {
  /** Rises by one with each addition that brought something new. */
  readonly version: number;
  readonly state: FlightState;
  /** Every entry, in order of event time. Made on first use; for the newest few read `timeline` from its end. */
  readonly standing: readonly StandingEntry[];
  /** The same, in shared chunks: costs nothing to have. */
  readonly timeline: Trail<StandingEntry>;
  /** How an entry stands in the newest view of this flight. */
  readonly byId: (id: EntryId) => StandingEntry | undefined;
  /** The state just after this entry in order of event time, with everything that this view knows about earlier ones. */
  readonly stateAt: (id: EntryId) => FlightState | undefined;
}

/** The view of a whole set at once. */
export function viewOf(entries: readonly Entry[]): FlightView {
  return startFlight().add(entries);
}

export function startFlight(): Flight {
  const judge = startJudge();
  let timeline: Trail<StandingEntry> = emptyTrail();
  let checkpoints: readonly Fold[] = [startOfFold()];
  /** States after the newest entries, one by one; the last is the state now. Undo and a late digit need only these. */
  let recent: Fold[] = [startOfFold()];
  let current = viewAt(0);

  function add(entries: readonly Entry[]): FlightView {
    const moves = judge.judged(entries);
    if (moves.length > 0) {
      const from = firstPlace(moves);
      rearrange(from, moves);
      refold(from);
      current = viewAt(current.version + 1);
    }
    return current;
  }

  /** The earliest place that something leaves or takes. */
  function firstPlace(moves: readonly Moved[]): number {
    let from = timeline.length;
    for (const { before, after } of moves) {
      from = Math.min(from, placeIn(timeline, after));
      from = before === null ? from : Math.min(from, placeIn(timeline, before));
    }
    return from;
  }

  function rearrange(from: number, moves: readonly Moved[]): void {
    const movedIds = new Set(moves.map((move) => move.after.entry.id));
    const stayed = itemsFrom(timeline, from).filter(({ entry }) => !movedIds.has(entry.id));
    const tail = [...stayed, ...moves.map((move) => move.after)].sort(comparePlaced);
    timeline = extended(firstOf(timeline, from), tail);
  }

  function refold(from: number): void {
    const kept = Math.floor(from / CHECKPOINT_EVERY) + 1;
    let fold = stateBefore(from) ?? checkpoints[kept - 1] ?? startOfFold();
    const fresh: Fold[] = [];
    for (const standing of itemsFrom(timeline, fold.state.entryCount)) {
      fold = folded(fold, standing);
      // Of a long log only the end is kept: every state that outlives its successor costs the collector.
      if (fold.state.entryCount > timeline.length - RECENT) {
        recent.push(fold);
      }
      if (fold.state.entryCount % CHECKPOINT_EVERY === 0) {
        fresh.push(fold);
      }
    }
    if (recent.length > 2 * RECENT) {
      recent = recent.slice(-RECENT);
    }
    if (fresh.length > 0 || checkpoints.length > kept) {
      checkpoints = [...checkpoints.slice(0, kept), ...fresh];
    }
  }

  /** Goes back to the state after the first `count` entries, if it is among the recent ones, and forgets those after it. */
  function stateBefore(count: number): Fold | null {
    const place = recent.findLastIndex((fold) => fold.state.entryCount === count);
    recent = place < 0 ? [] : recent.slice(0, place + 1);
    return recent.at(-1) ?? null;
  }

  function viewAt(version: number): FlightView {
    const known = { timeline, checkpoints };
    const { state } = recent.at(-1) ?? startOfFold();
    let standing: readonly StandingEntry[] | null = null;
    return {
      version,
      state,
      timeline,
      get standing() {
        standing ??= [...items(known.timeline)];
        return standing;
      },
      byId: judge.byId,
      stateAt: (id) => {
        const wanted = judge.byId(id);
        return wanted === undefined ? undefined : stateAfter(known, wanted);
      },
    };
  }

  return { add, view: () => current };
}

function stateAfter(
  known: { readonly timeline: Trail<StandingEntry>; readonly checkpoints: readonly Fold[] },
  wanted: StandingEntry,
): FlightState | undefined {
  const place = placeOf(known.timeline, wanted);
  if (place === null) {
    return undefined;
  }
  const block = Math.floor(place / CHECKPOINT_EVERY);
  let fold = known.checkpoints[block] ?? startOfFold();
  for (let index = block * CHECKPOINT_EVERY; index <= place; index += 1) {
    const standing = itemAt(known.timeline, index);
    fold = standing === undefined ? fold : folded(fold, standing);
  }
  return fold.state;
}

interface Moved {
  readonly before: StandingEntry | null;
  readonly after: StandingEntry;
}

interface Judge {
  /** Takes in entries and gives every entry, old or new, that now stands otherwise or elsewhere. */
  readonly judged: (entries: readonly Entry[]) => readonly Moved[];
  readonly byId: (id: EntryId) => StandingEntry | undefined;
}

function startJudge(): Judge {
  const standings = startStandings();
  const places = startPlaces();
  const byId = new Map<EntryId, StandingEntry>();
  const byRecorder = new Map<RecorderId, Entry[]>();

  function judged(entries: readonly Entry[]): readonly Moved[] {
    const changed = new Set(standings.add(entries));
    const learnt = [...changed].flatMap((id) => standings.get(id) ?? []);
    for (const { entry } of learnt) {
      if (!byId.has(entry.id)) {
        const own = byRecorder.get(entry.rec);
        if (own === undefined) {
          byRecorder.set(entry.rec, [entry]);
        } else {
          own.push(entry);
        }
      }
    }
    for (const [rec, fromSeq] of places.learn(learnt)) {
      byRecorder
        .get(rec)
        ?.filter((entry) => entry.seq >= fromSeq)
        .forEach((entry) => changed.add(entry.id));
    }
    return [...changed].flatMap((id) => moved(id) ?? []);
  }

  function moved(id: EntryId): Moved | null {
    const own = standings.get(id);
    if (own === undefined) {
      return null;
    }
    const before = byId.get(id) ?? null;
    const after = standingEntry(own, places.placeOf(own), places.ownTimeOf(own));
    if (before !== null && isSameStanding(before, after)) {
      return null;
    }
    byId.set(id, after);
    return { before, after };
  }

  return { judged, byId: (id) => byId.get(id) };
}
