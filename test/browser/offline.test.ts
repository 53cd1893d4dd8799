import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { build } from 'vite';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { BROWSER_ARGS, findBrowser } from '../../.tools/browser.mjs';
import { DIST } from '../../.tools/built.mjs';
import { sha256Hex } from '../../.tools/precache.mjs';
import { startApp, type AppServer } from './appServer.ts';

const ROOT = join(import.meta.dirname, '../..');
const BUILD = shownIn(readFileSync(join(DIST, 'index.html'), 'utf8'));

function shownIn(html: string): string {
  const id = /<meta name="build" content="([^"]+)"/.exec(html)?.[1];
  if (id === undefined) throw new Error('a built page must carry its build id');
  return id;
}

let scratch = '';
let site = '';
let server: AppServer;
let context: BrowserContext;
let page: Page;

/** The app's own check, built as a module of its own so that a test can call it inside the page. */
async function writeCheckModule(): Promise<void> {
  await build({
    configFile: false,
    logLevel: 'silent',
    define: { __BUILD_ID__: JSON.stringify(BUILD), 'import.meta.env.BASE_URL': '"/"' },
    build: {
      outDir: site,
      emptyOutDir: false,
      lib: {
        entry: join(ROOT, 'src/ui/offline.ts'),
        formats: ['es'],
        fileName: () => 'offline-check.js',
      },
    },
  });
}

async function openBrowser(): Promise<void> {
  context = await chromium.launchPersistentContext(join(scratch, 'profile'), {
    executablePath: findBrowser() ?? '',
    args: BROWSER_ARGS,
  });
  page = context.pages()[0] ?? (await context.newPage());
}

/** Opens the app and waits until the worker rules the page, which on a first visit takes a reload. */
async function openApp(): Promise<void> {
  await page.goto(server.origin);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  if (await page.evaluate(() => navigator.serviceWorker.controller === null)) await page.reload();
}

// As text: the test runner would replace an import inside a function by its own.
const checkOffline = () =>
  page.evaluate<unknown>(`import('/offline-check.js').then((module) => module.checkOffline())`);

/** What the app shows once it has looked what it holds; until then its page is empty. */
const shownWords = async () => {
  await page.locator('#root > *').first().waitFor();
  return page.locator('#root').innerText();
};

const shownBuild = () => page.locator('meta[name=build]').getAttribute('content');

/** Turns the served build into another one: its id changes, and with it the page and the worker's list. */
function deploy(nextBuild: string): void {
  const file = (name: string) => join(site, name);
  const pageBefore = readFileSync(file('index.html'), 'utf8');
  const pageAfter = pageBefore.replaceAll(/(<meta name="build" content=")[^"]+/g, `$1${nextBuild}`);
  writeFileSync(file('index.html'), pageAfter);
  const worker = readFileSync(file('worker.js'), 'utf8');
  writeFileSync(
    file('worker.js'),
    worker.replaceAll(BUILD, nextBuild).replaceAll(sha256Hex(pageBefore), sha256Hex(pageAfter)),
  );
}

/** Looks for a newer build and waits for what becomes of it: null when there is none. */
const lookForUpdate = () =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration?.update();
    const arriving = registration?.installing ?? registration?.waiting;
    if (arriving === null || arriving === undefined) return null;
    return new Promise<string>((resolve) => {
      const look = () => {
        if (arriving.state === 'installed' || arriving.state === 'redundant')
          resolve(arriving.state);
      };
      arriving.addEventListener('statechange', look);
      look();
    });
  });

const openFlight = () =>
  page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        void navigator.locks.request('kneeline-flight-open', () => {
          resolve();
          return new Promise(() => undefined);
        });
      }),
  );

beforeEach(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'kneeline-offline-'));
  site = join(scratch, 'site');
  cpSync(DIST, site, { recursive: true });
  await writeCheckModule();
  server = await startApp(site);
  await openBrowser();
});

afterEach(async () => {
  await context.close();
  await server.close();
  rmSync(scratch, { recursive: true, force: true });
});

describe('the app on a tablet', () => {
  it('starts with the server gone, also after the browser was closed, and at any screen', async () => {
    await openApp();
    await server.close();
    await context.close();
    await openBrowser();
    await page.goto(`${server.origin}/`);
    expect(await page.title()).toBe('Kneeline');
    expect(await shownWords()).not.toBe('');
    await page.goto(`${server.origin}/debrief`);
    expect(await shownWords()).not.toBe('');
    expect(await page.evaluate(() => navigator.serviceWorker.controller?.state)).toBe('activated');
  });

  it('is cross-origin isolated, asks no other origin, and breaks no rule of its own policy', async () => {
    const asked: string[] = [];
    const complaints: string[] = [];
    context.on('request', (request) => asked.push(new URL(request.url()).origin));
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
    page.on('pageerror', (error) => complaints.push(error.message));
    await openApp();
    await page.reload();
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
    expect(new Set(asked)).toEqual(new Set([server.origin]));
    expect(complaints).toEqual([]);
  });

  it('says that it is ready once every file was read back', async () => {
    await openApp();
    const listed = readFileSync(join(site, 'worker.js'), 'utf8').match(/\brevision\b["']?:["'`]/g);
    expect(await checkOffline()).toEqual({ kind: 'ready', build: BUILD, files: listed?.length });
  });

  it('names the files that are missing or damaged', async () => {
    await openApp();
    await page.evaluate(async () => {
      const [name] = await caches.keys();
      const cache = await caches.open(name ?? '');
      await cache.delete('/icon.svg');
      await cache.put('/face.js', new Response('damaged'));
    });
    expect(await checkOffline()).toEqual({
      kind: 'notReady',
      because: 'filesMissing',
      missing: expect.toSatisfy(
        (missing: string[]) =>
          missing.toSorted().join() ===
          [`${server.origin}/face.js`, `${server.origin}/icon.svg`].join(),
      ),
    });
  });

  it('is not ready when a file came damaged, and keeps nothing of that build', async () => {
    writeFileSync(join(site, 'face.js'), '// cut');
    const fate = new Promise((resolve) => {
      void page.exposeFunction('workerBecame', resolve);
    });
    await page.addInitScript(() => {
      const register = navigator.serviceWorker.register.bind(navigator.serviceWorker);
      navigator.serviceWorker.register = async (...how) => {
        const registration = await register(...how);
        const arriving = registration.installing;
        arriving?.addEventListener('statechange', () => {
          Reflect.get(globalThis, 'workerBecame')(arriving.state);
        });
        return registration;
      };
    });
    await page.goto(server.origin);
    expect(await fate).toBe('redundant');
    expect(await checkOffline()).toMatchObject({ kind: 'notReady', because: 'notInstalled' });
    expect(await page.evaluate(() => caches.keys())).toEqual([]);
  });

  it('takes no new build while a flight is open', async () => {
    await openApp();
    await openFlight();
    deploy('0.0.0-next');
    expect(await lookForUpdate()).toBe('redundant');
    await context.close();
    await openBrowser();
    await openApp();
    expect(await shownBuild()).toBe(BUILD);
  });

  it('takes a new build when no flight is open, and starts it only after every window was closed', async () => {
    await openApp();
    deploy('0.0.0-next');
    expect(await lookForUpdate()).toBe('installed');
    await page.reload();
    expect(await shownBuild()).toBe(BUILD);
    expect(await checkOffline()).toMatchObject({ kind: 'ready', build: BUILD });
    await context.close();
    await server.close();
    await openBrowser();
    await page.goto(server.origin);
    expect(await shownBuild()).toBe('0.0.0-next');
    expect(await page.evaluate(async () => (await caches.keys()).length)).toBe(1);
  });

  it('shows the chosen theme in the first frame', async () => {
    await openApp();
    await page.evaluate(() => localStorage.setItem('kneeline-theme', 'night'));
    // The page's own script is held back, so that only what came before the first paint has run.
    await context.route('**/assets/*.js', () => undefined);
    const next = await context.newPage();
    await next.goto(server.origin, { waitUntil: 'commit' });
    await next.waitForFunction(() => document.styleSheets.length > 0 && document.body !== null);
    expect(await next.locator('html').getAttribute('data-theme')).toBe('night');
    const ground = await next.evaluate(
      () => getComputedStyle(document.documentElement).backgroundColor,
    );
    expect(ground).toBe('rgb(0, 0, 0)');
  });
});
