import type { EpochMs, FlightId, RecorderId } from '../record/brand.ts';
import type { Author, Draft, Entry, Stamp } from '../record/entry.ts';
import type { FlightSheet } from '../record/sheet.ts';

/** The append-only record of one flight on this device. Everything the screens know comes from here. */
export interface Journal {
  readonly flight: FlightId;
  /** This device's recorder in this flight; null while nothing was written here (an opened file, a replay). */
  readonly recorder: () => RecorderId | null;
  /**
   * Resolves with the entry once it is on disk. Until then it is kept, shown by `pending` and resubmitted as the same
   * bytes; it rejects only when this window may not write at all (see `JournalStatus.writer`). No update, no delete.
   */
  readonly append: (draft: Draft) => Promise<Entry>;
  /** The entries on disk, own and foreign, by (ord, rec, seq, id). The same array until something is added. */
  readonly entries: () => readonly Entry[];
  readonly status: () => JournalStatus;
  /** Calls `listener` after each durable append, each merge and each change of status. Returns the way to stop. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Adds entries of other recorders, verified by `file`; own entries among them are skipped when equal. All or nothing. */
  readonly merge: (foreign: readonly Entry[]) => Promise<MergeOutcome>;
  readonly author: () => Author;
  readonly setAuthor: (author: Author) => void;
  /** Resolves when everything pending is saved and another window may write. */
  readonly close: () => Promise<void>;
}

export interface MergeOutcome {
  readonly added: number;
  readonly known: number;
}

export interface JournalStatus {
  /** Own and foreign entries that survive a crash. */
  readonly saved: number;
  /** Touched and not yet saved, oldest first. */
  readonly pending: readonly Draft[];
  /** The same, and what the journal adds itself, as the entries they are to be: to be shown at once, never as saved. */
  readonly unsaved: readonly Entry[];
  readonly writer:
    | { readonly kind: 'writing' }
    | { readonly kind: 'anotherWindow' }
    | { readonly kind: 'readOnly'; readonly because: 'replay' | 'fileOnly' };
  /** Set from the first failure or the two-second watchdog until everything pending is saved again. */
  readonly trouble:
    | null
    | {
        readonly kind: 'notSaved';
        readonly since: EpochMs;
        readonly because: 'full' | 'lostConnection' | 'slow' | 'unknown';
      }
    /** This tablet remembers more of its own log than the disk holds. Recording goes on under a new recorder. */
    | { readonly kind: 'missing'; readonly expectedSeq: number; readonly foundSeq: number }
    /** Somebody else wrote under this recorder's number. Recording goes on under a new recorder. */
    | { readonly kind: 'fork'; readonly seq: number };
  /** Own head: count and hash, for the canary, the file and reading aloud. */
  readonly head: { readonly seq: number; readonly hash: string } | null;
}

/** What this tablet keeps: flights, flight sheets in preparation, and which flight is open. */
export interface Shelf {
  readonly flights: () => Promise<readonly FlightSummary[]>;
  /** Opens a flight anew: a new flight id, a new recorder, `flightOpened` as its first entry. */
  readonly openFlight: (opening: FlightOpening) => Promise<Journal>;
  /** The journal of a flight on this device, also one that came from a file. */
  readonly journalOf: (flight: FlightId) => Promise<Journal>;
  /** What this device holds of a flight, to be read only: nobody's pen is taken. Empty where it has no such flight. */
  readonly entriesOf: (flight: FlightId) => Promise<readonly Entry[]>;
  /**
   * Takes a place as one more recorder in a flight that came in a file: from here on it is flown on this tablet too.
   * Resolves once `recorderJoined` is on disk; where this tablet is a recorder of it already, `scribeChanged`.
   */
  readonly joinFlight: (joining: FlightJoining) => Promise<Journal>;
  /** Keeps the entries of a file as a flight of this device, or merges them into the flight it already has. */
  readonly takeIn: (
    entries: readonly Entry[],
  ) => Promise<{ readonly flight: FlightId; readonly outcome: MergeOutcome }>;
  /** The flight that was open when the app last ran, for resume; null when none is open. */
  readonly openedFlight: () => Promise<FlightId | null>;
  /** Whether the app last stopped without a goodbye while a flight was open, for the words of the `resumed` entry. */
  readonly stoppedUncleanly: () => boolean;
  readonly sheets: () => Promise<readonly FlightSheet[]>;
  /** Keeps a flight sheet in preparation; flight sheets of opened flights stand in the record and are not touched. */
  readonly keepSheet: (sheet: FlightSheet) => Promise<void>;
  readonly removeSheet: (id: string) => Promise<void>;
}

export interface FlightOpening {
  readonly nature: 'flight' | 'practice';
  readonly title: string;
  readonly date: string;
  readonly device: string;
  readonly sheet: FlightSheet;
  readonly author: Author;
  readonly stamp: Stamp;
}

export interface FlightJoining {
  readonly flight: FlightId;
  readonly device: string;
  readonly author: Author;
  readonly stamp: Stamp;
}

export interface FlightSummary {
  readonly flight: FlightId;
  readonly title: string;
  readonly date: string;
  readonly nature: 'flight' | 'practice' | 'demo';
  readonly mark: string;
  readonly entries: number;
  readonly state: 'open' | 'closed' | 'aborted' | 'signed';
  /** Whether this device has a recorder in it. */
  readonly recordedHere: boolean;
}

/** The only clock and id source, handed to screens by main.tsx so that a test hands in its own. */
export interface Clock {
  readonly now: () => EpochMs;
  /** Time of contact of a pointer or key event: wall now less the age of the event, age judged by the monotonic clock. */
  readonly stampOf: (event: { readonly timeStamp: number }) => Stamp;
  readonly stampNow: () => Stamp;
}
