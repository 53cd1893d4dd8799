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

/**
 * Adds only what is new since it was last asked, so that a touch never folds the flight again. What was touched and not
 * yet saved stands in the view at once, or a second touch on a slow disk would be taken for a first one; the count of
 * saved entries alone says what is safe.
 */
function projectionOf(journal: Journal): () => FlightView {
  let flight = startFlight();
  let known = new Set<EntryId>();
  let seen: readonly Entry[] = [];
  let unsaved: readonly Entry[] = [];
  return () => {
    const entries = journal.entries();
    const waiting = journal.status().unsaved;
    if (entries !== seen || waiting !== unsaved) {
      let fresh = freshOf(entries, seen);
      if (unsaved.some((entry) => !has(waiting, entry) && !has(fresh, entry))) {
        // The journal went on under another recorder: these will never be saved under the ids they were shown by.
        flight = startFlight();
        known = new Set();
        fresh = entries;
      }
      seen = entries;
      unsaved = waiting;
      const added = [...fresh, ...waiting].filter(({ id }) => !known.has(id));
      for (const { id } of added) {
        known.add(id);
      }
      flight.add(added);
    }
    return flight.view();
  };
}

function has(entries: readonly Entry[], wanted: Entry): boolean {
  return entries.some(({ id }) => id === wanted.id);
}

/** Nearly always the new entries stand at the end; only a late clock or a merge makes it worth looking everywhere. */
function freshOf(entries: readonly Entry[], seen: readonly Entry[]): readonly Entry[] {
  const before = seen.length;
  return before > 0 && entries[before - 1] === seen[before - 1] ? entries.slice(before) : entries;
}
