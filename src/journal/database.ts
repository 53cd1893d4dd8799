import { openDB, unwrap, type DBSchema, type IDBPDatabase, type IDBPTransaction } from 'idb';
import type { EntryId, FlightId, RecorderId } from '../record/brand.ts';
import type { FlightSheet } from '../record/sheet.ts';
import type { FlightSummary } from './journal.ts';

/** Where a recorder's chain ends. */
export interface Head {
  readonly rec: RecorderId;
  readonly flight: FlightId;
  readonly seq: number;
  readonly id: EntryId;
  readonly ord: number;
}

export interface ForeignLine {
  readonly id: EntryId;
  readonly flight: FlightId;
  readonly line: string;
}

/** What the list of flights shows without reading a flight. The lines decide; this is their summary. */
export interface FlightRow extends Pick<
  FlightSummary,
  'flight' | 'title' | 'date' | 'nature' | 'mark' | 'state'
> {
  /** The recorder that this tablet writes under; null while nothing was written here. */
  readonly recorder: RecorderId | null;
  /** Opened on this tablet to be flown, not to be read afterwards. */
  readonly flownHere: boolean;
  /** Order of arrival on this tablet, by its clock. */
  readonly keptAt: number;
}

/** Lines are stored as their exact text, so that no change of this schema can alter one. */
interface Schema extends DBSchema {
  /** Own record, by [recorder, number]: a line written twice fails instead of overwriting. */
  lines: { key: [string, number]; value: { readonly line: string } };
  foreign: { key: string; value: ForeignLine; indexes: { flight: string } };
  /** One for each recorder of this tablet: few, and an index over them would cost every touch. */
  heads: { key: string; value: Head };
  flights: { key: string; value: FlightRow };
  /** Flight sheets in preparation. */
  sheets: { key: string; value: FlightSheet };
}

type Store = 'lines' | 'foreign' | 'heads' | 'flights' | 'sheets';
export type Reading = IDBPTransaction<Schema, Store[]>;
export type Writing = IDBPTransaction<Schema, Store[], 'readwrite'>;

/** A later version may add stores and indexes and never rewrites a line. */
const VERSION = 1;

export interface Database {
  readonly read: <T>(stores: readonly Store[], work: (tx: Reading) => Promise<T>) => Promise<T>;
  /**
   * One strict transaction. Resolves after `complete` and by nothing else; when it rejects, the work may still be on
   * disk (an answer can be lost), so the caller looks before it writes the same again.
   */
  readonly write: <T>(stores: readonly Store[], work: (tx: Writing) => Promise<T>) => Promise<T>;
  /** The same for requests that are all known at once, on the platform's own transaction: the way of every touch. */
  readonly writeAtOnce: (
    stores: readonly Store[],
    ask: (tx: IDBTransaction) => void,
  ) => Promise<void>;
  /** Lets go of the connection, dead or alive: the next call opens a new one. */
  readonly discard: () => void;
}

/** @param onLost called when the browser ended the connection, or another window asks for it. */
export function kneelineDatabase(name: string, onLost: () => void): Database {
  let opening: Promise<IDBPDatabase<Schema>> | null = null;

  function connection(): Promise<IDBPDatabase<Schema>> {
    if (opening !== null) {
      return opening;
    }
    const mine = openDB<Schema>(name, VERSION, {
      upgrade: (db) => {
        db.createObjectStore('lines');
        db.createObjectStore('foreign', { keyPath: 'id' }).createIndex('flight', 'flight');
        db.createObjectStore('heads', { keyPath: 'rec' });
        db.createObjectStore('flights', { keyPath: 'flight' });
        db.createObjectStore('sheets', { keyPath: 'id' });
      },
      // A newer release waits for this connection. Transactions under way still complete before it closes.
      blocking: () => lost(),
      terminated: () => lost(),
    });
    const lost = () => {
      if (opening === mine) {
        discard();
        onLost();
      }
    };
    opening = mine;
    mine.catch(() => {
      if (opening === mine) {
        opening = null;
      }
    });
    return mine;
  }

  function discard() {
    // A connection that opens after it was given up is closed then.
    opening?.then((db) => db.close()).catch(() => {});
    opening = null;
  }

  return {
    read: async (stores, work) => {
      const tx = (await connection()).transaction([...stores], 'readonly');
      return settled(tx.done, work(tx), () => tx.abort());
    },
    write: async (stores, work) => {
      const tx = (await connection()).transaction([...stores], 'readwrite', {
        durability: 'strict',
      });
      const result = work(tx).then((value) => {
        tx.commit();
        return value;
      });
      return settled(tx.done, result, () => tx.abort());
    },
    writeAtOnce: async (stores, ask) => {
      const tx = unwrap(await connection()).transaction([...stores], 'readwrite', {
        durability: 'strict',
      });
      const done = new Promise<void>((resolve, reject) => {
        tx.oncomplete = () => resolve();
        tx.onabort = () => reject(tx.error ?? new DOMException('given up', 'AbortError'));
      });
      const asked = new Promise<void>((resolve) => {
        ask(tx);
        tx.commit();
        resolve();
      });
      return settled(done, asked, () => tx.abort());
    },
    discard,
  };
}

/**
 * The transaction decides, not its requests: on a full disk some browsers abort it and leave the request without an
 * answer. The work's own reason for stopping tells more than a bare abort that follows from it.
 */
async function settled<T>(done: Promise<void>, work: Promise<T>, abort: () => void): Promise<T> {
  let stopped: { readonly reason: unknown } | null = null;
  work.catch((reason: unknown) => {
    stopped = { reason };
    try {
      abort();
    } catch {
      // Already over.
    }
  });
  try {
    await done;
  } catch (reason) {
    throw tellingReason(stopped, reason);
  }
  return work;
}

function tellingReason(stopped: { readonly reason: unknown } | null, reason: unknown): Error {
  const saysNothing = reason instanceof Error && reason.name === 'AbortError';
  const told = stopped !== null && saysNothing ? stopped.reason : reason;
  return told instanceof Error ? told : new Error('the transaction ended', { cause: told });
}
