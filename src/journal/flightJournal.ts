import type { FlightId } from '../record/brand.ts';
import type { Author } from '../record/entry.ts';
import type { JournalContext } from './context.ts';
import { openLog, type FlightLog } from './flightLog.ts';
import type { Journal, JournalStatus } from './journal.ts';
import { claim } from './locks.ts';
import { createWriter } from './writer.ts';

/** A journal as the shelf holds it. */
export interface LiveJournal extends Journal {
  /** The page is shown again, or the connection was lost. */
  readonly wake: () => void;
  /** The flight is flown here from now on, as one more recorder. */
  readonly flyHere: () => void;
  /** Drops what is pending: the flight could not be opened. */
  readonly abandon: () => void;
}

/**
 * Claims the pen before it reads, so that nobody writes between the two.
 *
 * @param flown whether a flight that the disk does not know yet is opened here to be flown
 * @param onClosed called once this journal is closed
 */
export async function openJournal(
  context: JournalContext,
  flight: FlightId,
  { flown, onClosed }: { readonly flown: boolean; readonly onClosed: () => void },
): Promise<LiveJournal> {
  let whenFreed: () => void = () => {};
  let claimed = false;
  const lock = await claim(context.ports.locks, `kneeline-recorder-${flight}`, () => {
    claimed = true;
    whenFreed();
  });
  claimed ||= lock.held;
  const mayWrite = claimed;
  try {
    const log = await openLog(context, flight, flown);
    const end = () => {
      lock.release();
      onClosed();
    };
    const journal = journalOver(context, log, { flight, mayWrite, isClaimed: () => claimed, end });
    whenFreed = journal.wake;
    if (claimed && !mayWrite) {
      journal.wake();
    }
    return journal;
  } catch (reason) {
    lock.release();
    throw new Error('the flight could not be read', { cause: reason });
  }
}

interface Hold {
  readonly flight: FlightId;
  readonly mayWrite: boolean;
  readonly isClaimed: () => boolean;
  readonly end: () => void;
}

function journalOver(context: JournalContext, log: FlightLog, hold: Hold): LiveJournal {
  const { clock, ports, open } = context;
  const { flight } = hold;
  const listeners = new Set<() => void>();
  let mayWrite = hold.mayWrite;
  let closed = false;
  let author: Author = log.lastAuthor();
  let status: JournalStatus | null = null;
  const writer = createWriter(log.chain, {
    schedule: ports.schedule,
    now: clock.now,
    onChange: changed,
  });
  followState();

  function followState() {
    open.set(flight, !closed && log.isOpenHere());
  }

  function changed() {
    status = null;
    followState();
    for (const listener of listeners) {
      try {
        listener();
      } catch (error) {
        // A screen's mistake must not come between a touch and the disk.
        queueMicrotask(() => {
          throw error;
        });
      }
    }
  }

  /** A window that only reads follows what the other one wrote, and takes the pen when it is free. */
  async function follow() {
    const takesPen = hold.isClaimed();
    try {
      await log.reload();
    } catch {
      // The next time the page is shown tries again.
      return;
    }
    mayWrite ||= takesPen;
    author = log.lastAuthor();
    changed();
  }

  function end() {
    closed = true;
    followState();
    hold.end();
  }

  return {
    flight,
    recorder: () => log.head()?.rec ?? null,
    append: (draft) =>
      mayWrite && !closed
        ? writer.append(draft, author)
        : Promise.reject(new Error('this window may not write to the flight')),
    entries: log.entries,
    status: () => {
      status ??= statusOf(log, writer, mayWrite);
      return status;
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    merge: async (foreign) => {
      if (foreign.some((entry) => entry.flight !== flight)) {
        throw new RangeError('entries to merge must be of this flight');
      }
      if (!mayWrite) {
        await follow();
      }
      const outcome = await log.keepForeign(foreign);
      changed();
      return outcome;
    },
    author: () => author,
    setAuthor: (next) => {
      author = next;
    },
    close: async () => {
      closed = true;
      await writer.drained();
      context.canary.flush();
      end();
    },
    wake: () => {
      if (mayWrite) {
        writer.probe();
      } else if (!closed) {
        void follow();
      }
    },
    flyHere: log.flyHere,
    abandon: () => {
      writer.abandon();
      end();
    },
  };
}

function statusOf(
  log: FlightLog,
  writer: ReturnType<typeof createWriter>,
  mayWrite: boolean,
): JournalStatus {
  const head = log.head();
  return {
    saved: log.size(),
    pending: writer.pending(),
    unsaved: writer.unsaved(),
    writer: { kind: mayWrite ? 'writing' : 'anotherWindow' },
    trouble: writer.trouble() ?? log.diverged(),
    head: head === null ? null : { seq: head.seq, hash: head.id },
  };
}
