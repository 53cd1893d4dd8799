import { browserSchedule, randomId, type Schedule } from './stamp.ts';

/** As much of the browser's lock manager as is used. */
export interface Locks {
  request(
    name: string,
    options: LockOptions,
    granted: (lock: object | null) => Promise<void> | undefined,
  ): Promise<unknown>;
}

/** What a journal asks of the browser beside its database; a test hands in its own. */
export interface JournalPorts {
  readonly databaseName: string;
  readonly randomId: () => string;
  readonly schedule: Schedule;
  /** Null where the browser has none (a page not served securely): the check of the head stays the last line. */
  readonly locks: Locks | null;
  /** Small memory beside the database; null where the browser refuses it. */
  readonly memory: Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'> | null;
  /** Calls when the page is shown again. Returns the way to stop. */
  readonly onShown: (listener: () => void) => () => void;
  /** Calls when the page goes away in order. Returns the way to stop. */
  readonly onLeaving: (listener: () => void) => () => void;
}

export function browserPorts(): JournalPorts {
  return {
    databaseName: 'kneeline',
    randomId,
    schedule: browserSchedule,
    locks: navigator.locks ?? null,
    memory: smallMemory(),
    onShown: (listener) => {
      const whenVisible = () => {
        if (document.visibilityState === 'visible') {
          listener();
        }
      };
      document.addEventListener('visibilitychange', whenVisible);
      document.addEventListener('resume', listener);
      window.addEventListener('pageshow', listener);
      return () => {
        document.removeEventListener('visibilitychange', whenVisible);
        document.removeEventListener('resume', listener);
        window.removeEventListener('pageshow', listener);
      };
    },
    onLeaving: (listener) => {
      window.addEventListener('pagehide', listener);
      return () => window.removeEventListener('pagehide', listener);
    },
  };
}

function smallMemory(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
