import type { EpochMs, FlightId } from '../record/brand.ts';
import type { Entry } from '../record/entry.ts';
import { union } from '../record/merge.ts';
import type { Journal, JournalStatus } from './journal.ts';

/** A journal that shows given entries and takes none. */
export interface Replay {
  readonly journal: Journal;
  /** Shows what was touched up to then. It never takes back: to go back, make a new replay. */
  readonly reveal: (until: EpochMs) => void;
}

/** Lets a recorded flight happen again, by a clock that the caller moves. */
export function replayJournal(flight: FlightId, entries: readonly Entry[]): Replay {
  return readOnly(flight, entries, 'replay');
}

/** The entries of a file, looked at without keeping them on this tablet. */
export function fileJournal(flight: FlightId, entries: readonly Entry[]): Journal {
  const { journal, revealAll } = readOnly(flight, entries, 'fileOnly');
  revealAll();
  return journal;
}

function readOnly(
  flight: FlightId,
  entries: readonly Entry[],
  because: 'replay' | 'fileOnly',
): Replay & { readonly revealAll: () => void } {
  const refusal = () =>
    Promise.reject(
      new Error(because === 'replay' ? 'a replay takes no entries' : 'a file takes no entries'),
    );
  const listeners = new Set<() => void>();
  let hidden = union(entries, []);
  let shown: readonly Entry[] = [];
  let status = statusOf(shown, because);

  function show(isDue: (entry: Entry) => boolean) {
    const due = hidden.filter(isDue);
    if (due.length > 0) {
      hidden = hidden.filter((entry) => !isDue(entry));
      shown = union(shown, due);
      status = statusOf(shown, because);
      listeners.forEach((listener) => listener());
    }
  }

  return {
    reveal: (until) => show(({ wall }) => wall <= until),
    revealAll: () => show(() => true),
    journal: {
      flight,
      recorder: () => null,
      append: refusal,
      entries: () => shown,
      status: () => status,
      subscribe: (listener) => {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
      merge: refusal,
      author: () => ({ author: shown.at(-1)?.author ?? '', role: shown.at(-1)?.role ?? '' }),
      setAuthor: () => {},
      close: () => Promise.resolve(),
    },
  };
}

function statusOf(shown: readonly Entry[], because: 'replay' | 'fileOnly'): JournalStatus {
  return {
    saved: shown.length,
    pending: [],
    unsaved: [],
    writer: { kind: 'readOnly', because },
    trouble: null,
    head: null,
  };
}
