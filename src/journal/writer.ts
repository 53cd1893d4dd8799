import type { EpochMs } from '../record/brand.ts';
import type { Author, Draft, Entry } from '../record/entry.ts';
import { inTime, notSavedBecause } from './faults.ts';
import type { JournalStatus } from './journal.ts';
import type { Schedule } from './stamp.ts';

export type NotSaved = Extract<JournalStatus['trouble'], { readonly kind: 'notSaved' }>;
/** The chain is not whole, or not ours alone. */
export type Diverged =
  | { readonly kind: 'missing'; readonly expectedSeq: number; readonly foundSeq: number }
  | { readonly kind: 'fork'; readonly seq: number };
/** What the disk shows when an earlier answer was lost: how many of the sealed entries it has, from the first. */
export interface Found {
  readonly stored: number;
  readonly diverged: Diverged | null;
}

/** One recorder's chain: on disk and in memory. */
export interface Chain {
  /** What must stand before `first` when nothing was written under this recorder; names a new recorder then. */
  readonly opening: (first: Draft) => readonly Draft[];
  /**
   * The draft as the next entry of the chain, saved or not: the same bytes for every attempt.
   * @throws when it cannot be an entry; nothing is queued then
   */
  readonly seal: (draft: Draft, author: Author) => Entry;
  /** One transaction; all of them or none. A rejection leaves open which. */
  readonly extend: (entries: readonly Entry[]) => Promise<void>;
  readonly findStored: (entries: readonly Entry[]) => Promise<Found>;
  /** They are on disk. */
  readonly accept: (entries: readonly Entry[]) => void;
  /** This chain is not ours alone or not whole: go on under a new recorder. */
  readonly beginAnew: (why: Diverged) => void;
  /** The connection failed: the next call needs a new one. */
  readonly discard: () => void;
}

export interface Writer {
  readonly append: (draft: Draft, author: Author) => Promise<Entry>;
  readonly pending: () => readonly Draft[];
  /** The whole queue as sealed, oldest first. */
  readonly unsaved: () => readonly Entry[];
  readonly trouble: () => NotSaved | null;
  /** Tries at once instead of at the end of a pause. */
  readonly nudge: () => void;
  /** Looks whether the disk still ends where this window left it, and opens it anew when it does not answer. */
  readonly probe: () => void;
  /** Resolves when nothing is pending. */
  readonly drained: () => Promise<void>;
  /** Drops what is pending and stops; for a flight that could not be opened. */
  readonly abandon: () => void;
}

interface Waiting {
  readonly draft: Draft;
  readonly author: Author;
  /** False for what the journal itself adds. */
  readonly touched: boolean;
  readonly entry: Entry;
  readonly saved: (entry: Entry) => void;
  readonly unwatch: () => void;
}

/** A strict transaction costs one flush, however many entries it holds. */
const LARGEST_BATCH = 32;
const WATCHDOG_MS = 2_000;
/** After this long without an answer the connection is taken for dead and the same bytes go to a new one. */
const GIVE_UP_MS = 10_000;
/** Looking costs nothing to repeat. */
const LOOK_GIVE_UP_MS = 1_000;
const PAUSES_MS = [0, 250, 500, 1_000, 2_000, 5_000] as const;

/** The one queue to the disk of a window: first in, first out, nothing leaves it before it is saved. */
export function createWriter(
  chain: Chain,
  {
    schedule,
    now,
    onChange,
  }: {
    readonly schedule: Schedule;
    readonly now: () => EpochMs;
    readonly onChange: () => void;
  },
): Writer {
  let queue: Waiting[] = [];
  let trouble: NotSaved | null = null;
  let running = false;
  let failures = 0;
  /** The last attempt left open what is on disk. */
  let doubtful = false;
  let callOffRetry: (() => void) | null = null;
  let drainedListeners: (() => void)[] = [];

  function setTrouble(because: NotSaved['because']) {
    if (trouble?.because !== because) {
      trouble = { kind: 'notSaved', since: trouble?.since ?? now(), because };
      onChange();
    }
  }

  function enqueue(item: Omit<Waiting, 'entry' | 'unwatch'>) {
    const entry = chain.seal(item.draft, item.author);
    const unwatch = schedule(WATCHDOG_MS, () => {
      if (trouble === null) {
        setTrouble('slow');
      }
    });
    queue = [...queue, { ...item, entry, unwatch }];
  }

  function enqueueOpening(first: Draft, author: Author) {
    for (const draft of chain.opening(first)) {
      enqueue({ draft, author, touched: false, saved: () => {} });
    }
  }

  function accept(count: number) {
    const done = queue.slice(0, count);
    queue = queue.slice(count);
    failures = 0;
    if (queue.length === 0) {
      trouble = null;
    }
    chain.accept(done.map(({ entry }) => entry));
    done.forEach(({ entry, saved, unwatch }) => {
      unwatch();
      saved(entry);
    });
    onChange();
  }

  function beginAnew(why: Diverged) {
    const touches = queue.filter(({ touched }) => touched);
    queue.forEach(({ unwatch }) => unwatch());
    queue = [];
    chain.beginAnew(why);
    touches.forEach((item) => {
      enqueueOpening(item.draft, item.author);
      enqueue(item);
    });
    onChange();
  }

  /** One attempt to bring the front of the queue to the disk. */
  async function step(): Promise<void> {
    if (doubtful) {
      const found = await inTime(
        chain.findStored(queue.map(({ entry }) => entry)),
        LOOK_GIVE_UP_MS,
        schedule,
      );
      doubtful = false;
      if (found.stored > 0) {
        accept(found.stored);
      }
      if (found.diverged !== null) {
        beginAnew(found.diverged);
      } else if (queue.length === 0 && trouble !== null) {
        trouble = null;
        onChange();
      }
      return;
    }
    const batch = queue.slice(0, LARGEST_BATCH);
    await inTime(chain.extend(batch.map(({ entry }) => entry)), GIVE_UP_MS, schedule);
    accept(batch.length);
  }

  async function run(): Promise<void> {
    while (queue.length > 0 || doubtful) {
      try {
        await step();
      } catch (error) {
        doubtful = true;
        chain.discard();
        if (queue.length > 0) {
          setTrouble(notSavedBecause(error));
        }
        const pauseMs = PAUSES_MS[Math.min(failures, PAUSES_MS.length - 1)] ?? 0;
        failures += 1;
        if (pauseMs > 0) {
          callOffRetry = schedule(pauseMs, nudge);
          return;
        }
      }
    }
    const listeners = drainedListeners;
    drainedListeners = [];
    listeners.forEach((listener) => listener());
  }

  function nudge() {
    callOffRetry?.();
    callOffRetry = null;
    if (!running && (queue.length > 0 || doubtful)) {
      running = true;
      void run().finally(() => {
        running = false;
        // A touch that came between the last look at the queue and here.
        if (callOffRetry === null) {
          nudge();
        }
      });
    }
  }

  return {
    append: (draft, author) =>
      new Promise((saved) => {
        enqueueOpening(draft, author);
        enqueue({ draft, author, touched: true, saved });
        onChange();
        nudge();
      }),
    pending: () => queue.filter(({ touched }) => touched).map(({ draft }) => draft),
    unsaved: () => queue.map(({ entry }) => entry),
    trouble: () => trouble,
    nudge,
    probe: () => {
      doubtful = true;
      nudge();
    },
    drained: () =>
      queue.length === 0
        ? Promise.resolve()
        : new Promise((resolve) => {
            drainedListeners = [...drainedListeners, resolve];
          }),
    abandon: () => {
      callOffRetry?.();
      queue.forEach(({ unwatch }) => unwatch());
      queue = [];
      doubtful = false;
      trouble = null;
    },
  };
}
