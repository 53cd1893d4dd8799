import { useMemo, useSyncExternalStore } from 'react';
import type { Journal, JournalStatus } from '../journal/journal.ts';
import type { EntryId } from '../record/brand.ts';
import type { Entry } from '../record/entry.ts';
import { startFlight, type FlightView } from '../record/flight.ts';

/** The flight as it stands and the state of its record: the one hook that a screen reads. */
export function useFlight(journal: Journal): {
  readonly view: FlightView;
  readonly status: JournalStatus;
} {
  const projection = useMemo(() => projectionOf(journal), [journal]);
  const view = useSyncExternalStore(journal.subscribe, projection);
  const status = useSyncExternalStore(journal.subscribe, journal.status);
  return { view, status };
}

/** Adds only what is new since it was last asked, so that a touch never folds the flight again. */
function projectionOf(journal: Journal): () => FlightView {
  const flight = startFlight();
  const known = new Set<EntryId>();
  let seen: ReturnType<Journal['entries']> | null = null;
  return () => {
    const entries = journal.entries();
    if (entries !== seen) {
      const fresh = freshOf(entries, seen, known);
      seen = entries;
      for (const entry of fresh) {
        known.add(entry.id);
      }
      flight.add(fresh);
    }
    return flight.view();
  };
}

/** Nearly always the new entries stand at the end; only a late clock or a merge makes it worth looking everywhere. */
function freshOf(
  entries: readonly Entry[],
  seen: readonly Entry[] | null,
  known: ReadonlySet<EntryId>,
): readonly Entry[] {
  const before = seen?.length ?? 0;
  return before > 0 && entries[before - 1] === seen?.[before - 1]
    ? entries.slice(before)
    : entries.filter((entry) => !known.has(entry.id));
}
