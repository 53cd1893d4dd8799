import { forceCloseDatabase } from 'fake-indexeddb';
import { intercept } from './intercept.ts';

/** How a disk fails. `lostAnswer`: the work is done and the answer says that it was not. */
export const FAULTS = [
  'QuotaExceededError',
  'AbortError',
  'InvalidStateError',
  'UnknownError',
  'noAnswer',
  'lostAnswer',
  'closedUnder',
] as const;
export type Fault = (typeof FAULTS)[number];

export interface FaultyDisk {
  /** How often the fault happened. */
  readonly count: () => number;
  /** The disk is well from here on, and gives the answers that it kept back. */
  readonly heal: () => void;
  readonly restore: () => void;
}

type Call = 'open' | 'transaction' | 'read' | 'write' | 'commit';

/**
 * Makes the stand-in for the database fail at one of its calls, counted from 1: opening, beginning a transaction, each
 * request and each commit.
 *
 * @param lasting whether every call from that one on fails until `heal`
 * @param only the database that is on this disk; every one when it is not given
 */
export function faultyDisk(
  fault: Fault,
  atCall: number,
  lasting: boolean,
  only?: string,
): FaultyDisk {
  let calls = 0;
  let count = 0;
  let healed = false;
  let keptBack: (() => void)[] = [];

  /** Whether this call is to fail in this way. */
  function fails(call: Call, databaseName: unknown): boolean {
    if (healed || (only !== undefined && databaseName !== only) || !CALLS[fault].includes(call)) {
      return false;
    }
    calls += 1;
    const due = lasting ? calls >= atCall : calls === atCall;
    count += due ? 1 : 0;
    return due;
  }

  function spoil(tx: IDBTransaction) {
    switch (fault) {
      case 'InvalidStateError':
        throw new DOMException('spoilt', fault);
      case 'closedUnder':
        // Its declared type asks for the class where the instance is meant.
        Reflect.apply(forceCloseDatabase, undefined, [tx.db]);
        return;
      case 'lostAnswer':
        loseAnswer(tx);
        return;
      case 'noAnswer':
        keptBack = [...keptBack, hold(tx)];
        return;
      case 'AbortError':
      case 'QuotaExceededError':
      case 'UnknownError':
        Reflect.apply(Reflect.get(tx, '_abort'), tx, [fault]);
    }
  }

  const undo = [
    intercept(IDBFactory.prototype, 'open', (_, run, [databaseName]) => {
      if (!fails('open', databaseName)) {
        return run();
      }
      if (fault === 'noAnswer') {
        return new IDBOpenDBRequest();
      }
      throw new DOMException('spoilt', fault);
    }),
    intercept(IDBDatabase.prototype, 'transaction', (db, run) => {
      if (!fails('transaction', db.name)) {
        return run();
      }
      if (fault !== 'noAnswer') {
        throw new DOMException('spoilt', fault);
      }
      const tx = run();
      if (tx instanceof IDBTransaction) {
        spoil(tx);
      }
      return tx;
    }),
    ...['get', 'add', 'put', 'getAll'].map((name) =>
      intercept(IDBObjectStore.prototype, name, (store, run) => {
        const request = run();
        if (fails(name.startsWith('get') ? 'read' : 'write', store.transaction.db.name)) {
          spoil(store.transaction);
        }
        return request;
      }),
    ),
    intercept(IDBTransaction.prototype, 'commit', (tx, run) => {
      if (fails('commit', tx.db.name)) {
        spoil(tx);
        return fault === 'lostAnswer' ? run() : undefined;
      }
      return run();
    }),
  ];

  return {
    count: () => count,
    heal: () => {
      healed = true;
      keptBack.forEach((release) => release());
      keptBack = [];
    },
    restore: () => undo.forEach((it) => it()),
  };
}

const CALLS: Readonly<Record<Fault, readonly Call[]>> = {
  QuotaExceededError: ['write', 'commit'],
  AbortError: ['transaction', 'read', 'write', 'commit'],
  InvalidStateError: ['open', 'transaction', 'read', 'write', 'commit'],
  UnknownError: ['open', 'read', 'write', 'commit'],
  noAnswer: ['open', 'transaction'],
  lostAnswer: ['commit'],
  closedUnder: ['read', 'write', 'commit'],
};

/** Everything is written; then the transaction says that it was given up. */
function loseAnswer(tx: IDBTransaction) {
  const dispatch: unknown = Reflect.get(tx, 'dispatchEvent');
  Reflect.set(tx, 'dispatchEvent', (event: { readonly type: string }): unknown => {
    if (event.type === 'complete') {
      // The stand-in has its own class of events, whose type can be changed.
      Reflect.set(event, 'type', 'abort');
    }
    return typeof dispatch === 'function' && Reflect.apply(dispatch, tx, [event]);
  });
}

/** The transaction does not begin until released, and none that overlaps it does. */
function hold(tx: IDBTransaction): () => void {
  const start: unknown = Reflect.get(tx, '_start');
  let isHeld = true;
  let asked = false;
  Reflect.set(tx, '_start', function () {
    if (isHeld) {
      asked = true;
    } else if (typeof start === 'function') {
      Reflect.apply(start, tx, []);
    }
  });
  return () => {
    isHeld = false;
    if (asked && typeof start === 'function') {
      Reflect.apply(start, tx, []);
    }
  };
}
