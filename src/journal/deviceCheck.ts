import { deleteDB, openDB, type DBSchema } from 'idb';
import { browserTicks, randomId } from './stamp.ts';

/** What Brief shows of the tablet's storage. Null where the browser does not say. */
export interface DeviceCheck {
  /** Whether the browser promised not to clear this app's data by itself. */
  readonly persisted: boolean | null;
  readonly freeBytes: number | null;
  readonly quotaBytes: number | null;
  readonly write:
    | { readonly kind: 'readBack'; readonly durationMs: number }
    | { readonly kind: 'failed'; readonly because: 'notReadBack' | 'refused' };
}

interface Schema extends DBSchema {
  trial: { key: string; value: string };
}

/** Asks the browser to keep this app's data when space runs short. False when it will not, or cannot. */
export async function requestPersistence(): Promise<boolean> {
  try {
    return await navigator.storage.persist();
  } catch {
    return false;
  }
}

/** Looks at the space and writes once for trial: strictly, then read back over a new connection. */
export async function checkDevice(databaseName = 'kneeline-trial'): Promise<DeviceCheck> {
  const estimate = await navigator.storage.estimate().catch((): StorageEstimate => ({}));
  const { quota, usage } = estimate;
  return {
    persisted: await navigator.storage.persisted().catch(() => null),
    quotaBytes: quota ?? null,
    freeBytes: quota === undefined ? null : quota - (usage ?? 0),
    write: await tryWrite(databaseName).catch((): DeviceCheck['write'] => ({
      kind: 'failed',
      because: 'refused',
    })),
  };
}

async function tryWrite(databaseName: string): Promise<DeviceCheck['write']> {
  const open = () =>
    openDB<Schema>(databaseName, 1, { upgrade: (opened) => opened.createObjectStore('trial') });
  const written = randomId();
  const startMs = browserTicks.monoMs();
  const first = await open();
  const tx = first.transaction('trial', 'readwrite', { durability: 'strict' });
  await Promise.all([tx.store.put(written, 'trial'), tx.done]);
  first.close();
  const second = await open();
  const found = await second.get('trial', 'trial');
  second.close();
  const durationMs = browserTicks.monoMs() - startMs;
  await deleteDB(databaseName);
  return found === written
    ? { kind: 'readBack', durationMs }
    : { kind: 'failed', because: 'notReadBack' };
}
