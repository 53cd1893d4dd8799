import * as v from 'valibot';
import { BUILD_ID } from './build.ts';
import { scriptAddress } from './scriptAddress.ts';

/** The page holds this lock as long as a flight is open; the worker reads it too. */
const OPEN_FLIGHT_LOCK = 'kneeline-flight-open';
const ANSWER_WITHIN_MS = 5_000;

/** Whether the app starts with no network, as found by our own check of what is kept on this device. */
export type OfflineCheck =
  | { readonly kind: 'ready'; readonly build: string; readonly files: number }
  | {
      readonly kind: 'notReady';
      readonly because:
        | 'unsupported'
        | 'notInstalled'
        | 'stillInstalling'
        | 'noAnswer'
        | 'otherBuild'
        | 'filesMissing';
      /** Addresses of files that are absent or hold other bytes than the build wrote. */
      readonly missing: readonly string[];
    };

const Kept = v.object({
  build: v.string(),
  cacheName: v.string(),
  files: v.pipe(v.array(v.object({ url: v.string(), revision: v.string() })), v.minLength(1)),
});
type Kept = v.InferOutput<typeof Kept>;

type NotReady = Extract<OfflineCheck, { kind: 'notReady' }>;

function notReady(because: NotReady['because'], missing: readonly string[] = []): NotReady {
  return { kind: 'notReady', because, missing };
}

function workers(): ServiceWorkerContainer | null {
  // Absent on plain http and in some private windows, whatever the types say.
  return 'serviceWorker' in navigator ? navigator.serviceWorker : null;
}

async function flightIsOpen(): Promise<boolean> {
  const { held } = await navigator.locks.query();
  return held?.some(({ name }) => name === OPEN_FLIGHT_LOCK) ?? false;
}

/** Calls `onWaiting` when a newer build has been fetched whole; it starts once every window is closed. */
function watchForWaiting(registration: ServiceWorkerRegistration, onWaiting: () => void): void {
  if (registration.waiting !== null) onWaiting();
  registration.addEventListener('updatefound', () => {
    const arriving = registration.installing;
    arriving?.addEventListener('statechange', () => {
      if (arriving.state === 'installed' && registration.active !== null) onWaiting();
    });
  });
}

/**
 * Registers the worker, in this one place, and looks for a newer build whenever the window is shown again, but never
 * while a flight is open.
 *
 * @returns the way to stop looking
 */
export async function startOffline(onWaiting: () => void): Promise<() => void> {
  const container = workers();
  if (container === null) return () => {};
  const base = import.meta.env.BASE_URL;
  const registration = await container.register(scriptAddress('sw', `${base}worker.js`), {
    scope: base,
    updateViaCache: 'none',
  });
  watchForWaiting(registration, onWaiting);
  const look = async () => {
    if (document.visibilityState !== 'visible' || (await flightIsOpen())) return;
    // With no network there is nothing newer to be had.
    await registration.update().catch(() => undefined);
  };
  const onShown = () => void look();
  document.addEventListener('visibilitychange', onShown);
  return () => document.removeEventListener('visibilitychange', onShown);
}

/** What the worker should be keeping; null when it gives no answer that can be read. */
function askWorker(worker: ServiceWorker): Promise<Kept | null> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    const finish = (answer: Kept | null) => {
      clearTimeout(timer);
      port1.close();
      resolve(answer);
    };
    const timer = setTimeout(() => finish(null), ANSWER_WITHIN_MS);
    port1.onmessage = ({ data }: MessageEvent<unknown>) => {
      const read = v.safeParse(Kept, data);
      finish(read.success ? read.output : null);
    };
    worker.postMessage({ kind: 'whatIsKept' }, [port2]);
  });
}

async function isWhole(cache: Cache, url: string, revision: string): Promise<boolean> {
  const kept = await cache.match(url, { ignoreVary: true });
  if (kept === undefined) return false;
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', await kept.arrayBuffer()));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('') === revision;
}

/** Reads back every file that the app is made of and compares its bytes with the build's list. */
export async function checkOffline(): Promise<OfflineCheck> {
  const container = workers();
  if (container === null) return notReady('unsupported');
  const registration = await container.getRegistration(import.meta.env.BASE_URL);
  if (registration === undefined) return notReady('notInstalled');
  if (registration.active === null) {
    return notReady(registration.installing === null ? 'notInstalled' : 'stillInstalling');
  }
  const kept = await askWorker(registration.active);
  if (kept === null) return notReady('noAnswer');
  if (kept.build !== BUILD_ID) return notReady('otherBuild');
  const cache = await caches.open(kept.cacheName);
  const whole = await Promise.all(
    kept.files.map(({ url, revision }) => isWhole(cache, url, revision)),
  );
  const missing = kept.files.filter((_, index) => whole[index] !== true).map(({ url }) => url);
  return missing.length > 0
    ? notReady('filesMissing', missing)
    : { kind: 'ready', build: kept.build, files: kept.files.length };
}
