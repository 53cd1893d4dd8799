import { flightId, type FlightId } from '../record/brand.ts';
import type { Author, Draft, Entry, Stamp } from '../record/entry.ts';
import { browserCanary } from './canary.ts';
import { kneelineDatabase, type FlightRow } from './database.ts';
import { twice, type JournalContext } from './context.ts';
import { inTime } from './faults.ts';
import { openJournal, type LiveJournal } from './flightJournal.ts';
import { loadFlight } from './flightStore.ts';
import type {
  Clock,
  FlightJoining,
  FlightOpening,
  FlightSummary,
  Journal,
  Shelf,
} from './journal.ts';
import { openFlights } from './openFlights.ts';
import { browserPorts, type JournalPorts } from './ports.ts';

const OPEN_WITHIN_MS = 10_000;

/** What this tablet keeps, in its database. */
export async function openShelf({
  clock,
  device,
  ports = browserPorts(),
}: {
  readonly clock: Clock;
  /** How the tablet is called in the record. */
  readonly device: string;
  readonly ports?: JournalPorts;
}): Promise<Shelf> {
  const canary = browserCanary(ports.memory, ports.schedule);
  const open = openFlights(ports.locks, canary);
  const live = new Map<FlightId, Promise<LiveJournal>>();
  const wakeAll = () => {
    for (const journal of live.values()) {
      void journal.then((it) => it.wake()).catch(() => {});
    }
  };
  const database = kneelineDatabase(ports.databaseName, wakeAll);
  const context: JournalContext = { clock, device, ports, database, canary, open };
  ports.onShown(() => {
    open.pageShown();
    wakeAll();
  });
  ports.onLeaving(() => {
    canary.flush();
    open.pageLeft();
  });

  const rows = () =>
    twice(context, () => database.read(['flights'], (tx) => tx.objectStore('flights').getAll()));
  const markOf = (flight: FlightId) => canary.marks().some((mark) => mark.flight === flight);
  const isKnown = async (flight: FlightId) =>
    markOf(flight) || (await rows()).some((row) => row.flight === flight);

  function journal(flight: FlightId, flown: boolean): Promise<LiveJournal> {
    const opened =
      live.get(flight) ??
      openJournal(context, flight, { flown, onClosed: () => live.delete(flight) });
    live.set(flight, opened);
    opened.catch(() => live.delete(flight));
    return opened;
  }

  async function openFlight(opening: FlightOpening): Promise<Journal> {
    const { stamp, author, nature, title, date, device: tablet, sheet } = opening;
    const opened = await journal(flightId(ports.randomId()), true);
    opened.setAuthor(author);
    const body = { nature, title, date, device: tablet, sheet };
    const saved = opened.append({ kind: 'flightOpened', body, stamp });
    try {
      await inTime(saved, OPEN_WITHIN_MS, ports.schedule);
    } catch (reason) {
      opened.abandon();
      throw new Error('the flight could not be saved', { cause: reason });
    }
    return opened;
  }

  async function joinFlight({ flight, device: tablet, author, stamp }: FlightJoining) {
    if (!live.has(flight) && !(await isKnown(flight))) {
      throw new RangeError(`this tablet must have the flight, got ${flight}`);
    }
    const joined = await journal(flight, false);
    const draft = joiningDraft(joined, { tablet, author, stamp });
    joined.setAuthor(author);
    joined.flyHere();
    try {
      await inTime(joined.append(draft), OPEN_WITHIN_MS, ports.schedule);
    } catch (reason) {
      joined.abandon();
      throw new Error('the flight could not be joined', { cause: reason });
    }
    return joined;
  }

  async function takeIn(entries: readonly Entry[]) {
    const flight = entries[0]?.flight;
    if (flight === undefined || entries.some((entry) => entry.flight !== flight)) {
      throw new RangeError('entries to take in must be of one flight');
    }
    const alreadyOpen = live.has(flight);
    const into = await journal(flight, false);
    try {
      return { flight, outcome: await into.merge(entries) };
    } finally {
      if (!alreadyOpen) {
        await into.close();
      }
    }
  }

  const write = (work: Parameters<typeof database.write<void>>[1]) =>
    twice(context, () => database.write(['sheets'], work));

  // Opened once here, so that a database that cannot be opened is told before the first touch.
  await rows();
  return {
    flights: async () => {
      const known = await rows();
      const counts = await twice(context, () => countEntries(context, known));
      return known
        .toSorted((a, b) => b.keptAt - a.keptAt)
        .map(({ flight, title, date, nature, mark, state, recorder }): FlightSummary => ({
          flight,
          title,
          date,
          nature,
          mark,
          state,
          entries: counts.get(flight) ?? 0,
          recordedHere: recorder !== null,
        }));
    },
    openFlight,
    journalOf: async (flight) => {
      if (!live.has(flight) && !(await isKnown(flight))) {
        throw new RangeError(`this tablet must have the flight, got ${flight}`);
      }
      return journal(flight, false);
    },
    entriesOf: async (flight) => {
      const opened = live.get(flight);
      if (opened !== undefined) {
        return (await opened).entries();
      }
      return (await twice(context, () => loadFlight(database, canary, flight))).entries.sorted();
    },
    joinFlight,
    takeIn,
    openedFlight: async () => {
      const known = await rows();
      const openHere = known
        .filter(({ flownHere, state }) => flownHere && state === 'open')
        .toSorted((a, b) => b.keptAt - a.keptAt);
      const lost = canary
        .marks()
        .find((mark) => mark.open && !known.some(({ flight }) => flight === mark.flight));
      return openHere[0]?.flight ?? lost?.flight ?? null;
    },
    stoppedUncleanly: () => canary.stoppedUncleanly,
    sheets: () =>
      twice(context, () => database.read(['sheets'], (tx) => tx.objectStore('sheets').getAll())),
    keepSheet: (sheet) =>
      write(async (tx) => {
        await tx.objectStore('sheets').put(sheet);
      }),
    removeSheet: (id) => write((tx) => tx.objectStore('sheets').delete(id)),
  };
}

/** What a tablet writes to take its place in a flight: once as a recorder, afterwards as another pen. */
export function joiningDraft(
  journal: Pick<Journal, 'recorder' | 'author'>,
  given: { readonly tablet: string; readonly author: Author; readonly stamp: Stamp },
): Draft {
  const { tablet, author, stamp } = given;
  return journal.recorder() === null
    ? { kind: 'recorderJoined', body: { device: tablet, purpose: 'inFlight' }, stamp }
    : {
        kind: 'scribeChanged',
        body: { from: journal.author().author, to: author.author, role: author.role },
        stamp,
      };
}

async function countEntries(
  { database }: JournalContext,
  known: readonly FlightRow[],
): Promise<ReadonlyMap<FlightId, number>> {
  return database.read(['heads', 'foreign'], async (tx) => {
    const counts = new Map<FlightId, number>();
    const allHeads = await tx.objectStore('heads').getAll();
    for (const { flight } of known) {
      const heads = allHeads.filter((head) => head.flight === flight);
      const foreign = await tx.objectStore('foreign').index('flight').count(flight);
      counts.set(
        flight,
        heads.reduce((sum, { seq }) => sum + seq, foreign),
      );
    }
    return counts;
  });
}
