import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { DIST } from '../../.tools/built.mjs';
import type { Entry } from '../../src/record/entry.ts';
import { startApp, type AppServer } from './appServer.ts';
import type { PageShelf, Saying } from './shelfInPage.ts';

const MODULE = 'page-shelf.js';
/** A page of the app's origin on which the app itself does not run. */
const BARE_PAGE = '/face.js';

/** The built app, with one file more: the shelf for a page on which a test sets a tablet up. */
export interface PreparedSite {
  readonly server: AppServer;
  readonly origin: string;
  /** The folder that is served. */
  readonly folder: string;
  readonly close: () => Promise<void>;
}

export async function preparedSite(): Promise<PreparedSite> {
  const folder = mkdtempSync(join(tmpdir(), 'kneeline-site-'));
  cpSync(DIST, folder, { recursive: true });
  await buildModule(folder, join(import.meta.dirname, 'shelfInPage.ts'), MODULE);
  const server = await startApp(folder);
  return {
    server,
    origin: server.origin,
    folder,
    close: async () => {
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Builds a module of ours for a page to import, as `/fileName` of the served folder. */
export async function buildModule(folder: string, entry: string, fileName: string): Promise<void> {
  await build({
    configFile: false,
    logLevel: 'silent',
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      outDir: folder,
      emptyOutDir: false,
      lib: { entry, formats: ['es'], fileName: () => fileName },
    },
  });
}

async function goToBarePage(page: Page, origin: string): Promise<void> {
  await page.goto(origin + BARE_PAGE);
  // As text: the test runner would replace an import inside a function by its own.
  await page.evaluate(`import('/${MODULE}').then(() => undefined)`);
}

/**
 * Leaves a flight open on this tablet as if it had been recorded here. Set-up: not the thing under test.
 *
 * @returns the id that it got
 */
export async function leaveFlightOpen(
  page: Page,
  origin: string,
  entries: readonly Entry[],
  nature: 'flight' | 'practice' = 'flight',
): Promise<string> {
  await goToBarePage(page, origin);
  const sayings = entries.flatMap((entry): readonly Saying[] =>
    entry.kind === 'unrecognised' ? [] : [entry],
  );
  return page.evaluate(
    (given) => {
      const shelf: PageShelf = Reflect.get(globalThis, 'pageShelf');
      return shelf.recordFlight(given.nature, given.sayings);
    },
    { nature, sayings },
  );
}
