import { entryId, flightId, recorderId } from '../record/brand.ts';
import type { EntryId, FlightId, RecorderId } from '../record/brand.ts';
import type { JournalPorts } from './ports.ts';
import type { Schedule } from './stamp.ts';

/** What the tablet remembers of its own log outside the database: catches a log that shrank, not a cleared profile. */
export interface Mark {
  readonly flight: FlightId;
  readonly rec: RecorderId;
  readonly seq: number;
  readonly headHash: EntryId;
  /** A flight flown on this tablet and not closed. */
  readonly open: boolean;
}

export interface Canary {
  /** Written down a moment later: it costs a tenth of a touch, and the browser itself keeps it back for seconds. */
  readonly remember: (mark: Mark) => void;
  /** Writes down at once what is still to be. */
  readonly flush: () => void;
  readonly marks: () => readonly Mark[];
  /** Whether the session before this one ended while a flight was open, without a goodbye. */
  readonly stoppedUncleanly: boolean;
  readonly noteFlightOpen: (open: boolean) => void;
}

const MARK = 'kneeline-canary-';
const SESSION = 'kneeline-session';
const WRITE_AFTER_MS = 250;

export function browserCanary(memory: JournalPorts['memory'], schedule: Schedule): Canary {
  let waiting = new Map<RecorderId, Mark>();
  const before = attempt(() => memory?.getItem(SESSION) ?? null);

  function flush() {
    for (const [rec, mark] of waiting) {
      attempt(() => memory?.setItem(MARK + rec, JSON.stringify(mark)));
    }
    waiting = new Map();
  }

  return {
    remember: (mark) => {
      if (waiting.size === 0) {
        schedule(WRITE_AFTER_MS, flush);
      }
      waiting.set(mark.rec, mark);
    },
    flush,
    marks: () => {
      flush();
      return keys(memory)
        .filter((key) => key.startsWith(MARK))
        .flatMap((key) => attempt(() => readMark(memory?.getItem(key) ?? '')) ?? []);
    },
    stoppedUncleanly: before === 'open',
    noteFlightOpen: (open) => {
      attempt(() => (open ? memory?.setItem(SESSION, 'open') : memory?.removeItem(SESSION)));
    },
  };
}

function keys(memory: JournalPorts['memory']): readonly string[] {
  return Array.from({ length: memory?.length ?? 0 }, (_, index) => memory?.key(index) ?? '');
}

/** @throws when the text is not a mark: somebody else's or a half-written one says nothing */
function readMark(text: string): Mark {
  const raw: unknown = JSON.parse(text);
  if (typeof raw !== 'object' || raw === null) {
    throw new TypeError('a mark must be an object');
  }
  const field = (name: string): unknown => Object.getOwnPropertyDescriptor(raw, name)?.value;
  const seq = field('seq');
  if (typeof seq !== 'number' || !Number.isSafeInteger(seq)) {
    throw new TypeError('a mark must have a whole number');
  }
  return {
    flight: flightId(String(field('flight'))),
    rec: recorderId(String(field('rec'))),
    seq,
    headHash: entryId(String(field('headHash'))),
    open: field('open') === true,
  };
}

/** The small memory may be full or refused; the record does not depend on it. */
function attempt<T>(work: () => T): T | null {
  try {
    return work();
  } catch {
    return null;
  }
}
