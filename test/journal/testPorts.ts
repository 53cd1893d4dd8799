import type { JournalPorts, Locks } from '../../src/journal/ports.ts';
import { randomId as anyId, type Schedule } from '../../src/journal/stamp.ts';

export interface TestPorts extends JournalPorts {
  /** The page is shown again. */
  readonly show: () => void;
  /** The page goes away in order. */
  readonly leave: () => void;
  readonly memory: NonNullable<JournalPorts['memory']>;
}

/** One page of a tablet. Pages of one tablet share the name of the database, the memory and the locks. */
export function testPorts({
  schedule,
  databaseName = `kneeline-${anyId()}`,
  memory = testMemory(),
  locks = testLocks(),
  randomId = anyId,
}: {
  readonly schedule: Schedule;
  readonly databaseName?: string;
  readonly memory?: TestPorts['memory'];
  readonly locks?: Locks | null;
  readonly randomId?: () => string;
}): TestPorts {
  const shown = new Set<() => void>();
  const leaving = new Set<() => void>();
  const into = (listeners: Set<() => void>) => (listener: () => void) => {
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
    };
  };
  return {
    databaseName,
    randomId,
    schedule,
    locks,
    memory,
    onShown: into(shown),
    onLeaving: into(leaving),
    show: () => shown.forEach((listener) => listener()),
    leave: () => leaving.forEach((listener) => listener()),
  };
}

export function testMemory(): TestPorts['memory'] {
  const items = new Map<string, string>();
  return {
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, value) => {
      items.set(key, value);
    },
    removeItem: (key) => {
      items.delete(key);
    },
    key: (index) => [...items.keys()][index] ?? null,
    get length() {
      return items.size;
    },
  };
}

interface Request {
  readonly name: string;
  readonly shared: boolean;
  readonly run: () => void;
}

/** Locks as the browser's manager grants them, for one process: first come, first served, shared ones together. */
export function testLocks(): Locks & {
  readonly held: () => readonly string[];
  /** Every window is gone at once. */
  readonly drop: () => void;
} {
  let holding: Request[] = [];
  let waiting: Request[] = [];

  const mayHave = (request: Request) =>
    holding.every(({ name, shared }) => name !== request.name || (shared && request.shared));

  function grantNext() {
    const next = waiting.find(mayHave);
    if (next !== undefined) {
      waiting = waiting.filter((it) => it !== next);
      next.run();
      grantNext();
    }
  }

  return {
    held: () => holding.map(({ name }) => name).sort(),
    drop: () => {
      holding = [];
      waiting = [];
    },
    request: (name, options, granted) =>
      new Promise((resolve, reject) => {
        const request: Request = {
          name,
          shared: options.mode === 'shared',
          run: () => {
            holding = [...holding, request];
            const letGo = () => {
              holding = holding.filter((it) => it !== request);
              grantNext();
            };
            Promise.resolve(granted({ name })).finally(letGo).then(resolve, reject);
          },
        };
        if (mayHave(request)) {
          request.run();
        } else if (options.ifAvailable === true) {
          Promise.resolve(granted(null)).then(resolve, reject);
        } else {
          waiting = [...waiting, request];
          options.signal?.addEventListener('abort', () => {
            waiting = waiting.filter((it) => it !== request);
            reject(new DOMException('called off', 'AbortError'));
          });
        }
      }),
  };
}
