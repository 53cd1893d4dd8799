// Starts the app with no network. It never skips waiting and never claims a page: a running page keeps the build
// that it was loaded with until its last window is closed.
import { fetchVerified, fileFor, type ListedFile } from './precache.ts';

declare const __BUILD_ID__: string;
declare const self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: readonly ListedFile[] };

/** The page holds this lock as long as a flight is open. */
const OPEN_FLIGHT_LOCK = 'kneeline-flight-open';
const CACHE_PREFIX = 'kneeline-build ';

const build = __BUILD_ID__;
const cacheName = CACHE_PREFIX + build;
const scope = self.registration.scope;
const files = self.__WB_MANIFEST.map(({ url, revision }) => ({
  url: new URL(url, scope).href,
  revision,
}));
const urls: ReadonlySet<string> = new Set(files.map(({ url }) => url));

/**
 * An installed build waits, and the next restart of the browser would start it, in the middle of a flight if one is
 * open. So it is not installed at all. The first build of all replaces nothing and is let in.
 */
async function refuseDuringFlight(): Promise<void> {
  if (self.registration.active === null) return;
  const { held } = await self.navigator.locks.query();
  if (held?.some(({ name }) => name === OPEN_FLIGHT_LOCK) === true) {
    throw new Error('no build is installed while a flight is open');
  }
}

async function install(): Promise<void> {
  await refuseDuringFlight();
  const verified = await fetchVerified(files, (url) =>
    fetch(url, { cache: 'reload', credentials: 'same-origin' }),
  );
  // A flight may have been opened while the files came in.
  await refuseDuringFlight();
  const cache = await caches.open(cacheName);
  await Promise.all(verified.map(({ url, response }) => cache.put(url, response)));
}

async function removeOldBuilds(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(CACHE_PREFIX) && name !== cacheName);
  await Promise.all(old.map((name) => caches.delete(name)));
}

async function answer(url: string, request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  const kept = await cache.match(url, { ignoreVary: true });
  return kept ?? fetch(request);
}

self.addEventListener('install', (event) => {
  event.waitUntil(install());
});

self.addEventListener('activate', (event) => {
  event.waitUntil(removeOldBuilds());
});

self.addEventListener('fetch', (event) => {
  const url = fileFor(event.request, urls, scope);
  if (url !== null) event.respondWith(answer(url, event.request));
});

// The page makes its own check of the cache; from here it needs only what should be there.
self.addEventListener('message', (event) => {
  event.ports[0]?.postMessage({ build, cacheName, files });
});
