import { flightId, type FlightId, type RecorderId } from '../../src/record/brand.ts';
import { checkChains } from '../../src/record/chain.ts';
import type { Author, Draft, Entry } from '../../src/record/entry.ts';
import { viewOf } from '../../src/record/flight.ts';
import { union } from '../../src/record/merge.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import type {
  Clock,
  FlightOpening,
  FlightSummary,
  Journal,
  JournalStatus,
  Shelf,
} from '../../src/journal/journal.ts';
import { joiningDraft } from '../../src/journal/idbJournal.ts';
import { ownChain } from '../../src/journal/ownChain.ts';
import { randomId } from '../../src/journal/stamp.ts';

interface KeptFlight {
  entries: readonly Entry[];
  recorder: RecorderId | null;
  flownHere: boolean;
}

/** What outlives a restart. Hand the same one in to open a shelf again. */
export interface Kept {
  readonly flights: Map<FlightId, KeptFlight>;
  readonly sheets: Map<string, FlightSheet>;
}

export function nothingKept(): Kept {
  return { flights: new Map(), sheets: new Map() };
}

/** A shelf without a disk: saved means in this map. For screens, and to hold the contract to account. */
export function memoryShelf({
  clock,
  device,
  kept = nothingKept(),
}: {
  readonly clock: Clock;
  readonly device: string;
  readonly kept?: Kept;
}): Shelf {
  const live = new Map<FlightId, Journal>();

  function journal(flight: FlightId): Journal {
    const found = kept.flights.get(flight);
    if (found === undefined) {
      throw new RangeError(`this tablet must have the flight, got ${flight}`);
    }
    const opened =
      live.get(flight) ??
      memoryJournal(flight, found, { clock, device, onClosed: () => live.delete(flight) });
    live.set(flight, opened);
    return opened;
  }

  const states = () =>
    [...kept.flights].map(([flight, it]) => ({ flight, it, state: viewOf(it.entries).state }));

  return {
    flights: async () =>
      states()
        .map(({ flight, it, state }) => ({
          flight,
          title: state.title,
          date: state.date ?? '',
          nature: state.nature,
          mark: state.sheet?.aircraft.mark ?? '',
          entries: it.entries.length,
          state: standing(state),
          recordedHere: it.recorder !== null,
        }))
        .toReversed(),
    openFlight: async (opening: FlightOpening) => {
      const flight = flightId(randomId());
      kept.flights.set(flight, { entries: [], recorder: null, flownHere: true });
      const { stamp, author, nature, title, date, device: tablet, sheet } = opening;
      const opened = journal(flight);
      opened.setAuthor(author);
      const body = { nature, title, date, device: tablet, sheet };
      await opened.append({ kind: 'flightOpened', body, stamp });
      return opened;
    },
    journalOf: async (flight) => journal(flight),
    entriesOf: async (flight) => kept.flights.get(flight)?.entries ?? [],
    joinFlight: async ({ flight, device: tablet, author, stamp }) => {
      const joined = journal(flight);
      const draft = joiningDraft(joined, { tablet, author, stamp });
      joined.setAuthor(author);
      const found = kept.flights.get(flight);
      if (found !== undefined) {
        found.flownHere = true;
      }
      await joined.append(draft);
      return joined;
    },
    takeIn: async (entries) => {
      const flight = entries[0]?.flight;
      if (flight === undefined || entries.some((entry) => entry.flight !== flight)) {
        throw new RangeError('entries to take in must be of one flight');
      }
      if (!kept.flights.has(flight)) {
        kept.flights.set(flight, { entries: [], recorder: null, flownHere: false });
      }
      return { flight, outcome: await journal(flight).merge(entries) };
    },
    openedFlight: async () =>
      states().findLast(({ it, state }) => it.flownHere && standing(state) === 'open')?.flight ??
      null,
    stoppedUncleanly: () => false,
    sheets: async () => [...kept.sheets.values()],
    keepSheet: async (sheet) => {
      kept.sheets.set(sheet.id, sheet);
    },
    removeSheet: async (id) => {
      kept.sheets.delete(id);
    },
  };
}

function standing(state: ReturnType<typeof viewOf>['state']): FlightSummary['state'] {
  if (state.signed.length > 0) {
    return 'signed';
  }
  if (state.closed === null) {
    return 'open';
  }
  return state.closed.how === 'aborted' ? 'aborted' : 'closed';
}

function memoryJournal(
  flight: FlightId,
  kept: KeptFlight,
  {
    clock,
    device,
    onClosed,
  }: { readonly clock: Clock; readonly device: string; readonly onClosed: () => void },
): Journal {
  const chain = ownChain(flight, clock.now);
  const listeners = new Set<() => void>();
  const own = () => kept.entries.filter(({ rec }) => rec === kept.recorder);
  const last = own().at(-1);
  chain.restart(last ?? null);
  chain.saw(kept.entries);
  let author: Author = { author: last?.author ?? '', role: last?.role ?? '' };
  let closed = false;
  let status = statusNow();

  function statusNow(): JournalStatus {
    const head = chain.saved();
    return {
      saved: kept.entries.length,
      pending: [],
      unsaved: [],
      writer: { kind: 'writing' },
      trouble: null,
      head: head === null ? null : { seq: head.seq, hash: head.id },
    };
  }

  function keep(entries: readonly Entry[]) {
    kept.entries = union(kept.entries, entries);
    if (checkChains(own()).length > 0) {
      throw new Error('the own chain must hold together');
    }
    status = statusNow();
    listeners.forEach((listener) => listener());
  }

  function write(draft: Draft): Entry {
    const entry = chain.seal(draft, author);
    kept.recorder = entry.rec;
    chain.accept([entry]);
    keep([entry]);
    return entry;
  }

  return {
    flight,
    recorder: () => kept.recorder,
    append: async (draft) => {
      if (closed) {
        throw new Error('this window may not write to the flight');
      }
      if (chain.recorder() === null) {
        chain.nameRecorder(randomId());
        if (draft.kind !== 'flightOpened' && draft.kind !== 'recorderJoined') {
          const body = { device, purpose: 'debrief' as const };
          write({ kind: 'recorderJoined', body, stamp: draft.stamp });
        }
      }
      return write(draft);
    },
    entries: () => kept.entries,
    status: () => status,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    merge: async (foreign) => {
      if (foreign.some((entry) => entry.flight !== flight)) {
        throw new RangeError('entries to merge must be of this flight');
      }
      const before = kept.entries.length;
      chain.saw(foreign);
      keep(foreign);
      const added = kept.entries.length - before;
      return { added, known: foreign.length - added };
    },
    author: () => author,
    setAuthor: (next) => {
      author = next;
    },
    close: async () => {
      closed = true;
      onClosed();
    },
  };
}
