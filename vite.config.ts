import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { BROWSER_ARGS, findBrowser } from './.tools/browser.mjs';
import { buildId } from './.tools/buildId.mjs';
import { PAGE_POLICY } from './.tools/headers.mjs';
import { sha256Hex } from './.tools/precache.mjs';

const root = import.meta.dirname;
const build = buildId();
/** Where this build goes; `--outDir` may say otherwise. */
let outDir = join(root, 'dist');
const define = { __BUILD_ID__: JSON.stringify(build) };
const executablePath = findBrowser() ?? '';

/** Writes the build id and the content policy into the built page; development needs inline styles. */
const pageMeta: Plugin = {
  name: 'page-meta',
  apply: 'build',
  configResolved: (config) => {
    outDir = resolve(config.root, config.build.outDir);
  },
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { name: 'build', content: build }, injectTo: 'head-prepend' },
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: PAGE_POLICY },
      injectTo: 'head-prepend',
    },
  ],
};

/** Builds our own worker with the list of all built files in it, each with the SHA-256 of its bytes. */
const worker = VitePWA({
  strategies: 'injectManifest',
  srcDir: 'sw',
  filename: 'worker.ts',
  registerType: 'prompt',
  injectRegister: false,
  manifest: false,
  includeManifestIcons: false,
  injectManifest: {
    rollupFormat: 'iife',
    target: 'es2023',
    globPatterns: ['**/*'],
    globIgnores: ['worker.js'],
    maximumFileSizeToCacheInBytes: 1_500_000,
    manifestTransforms: [
      (entries) => ({
        manifest: entries.map((entry) => ({
          ...entry,
          revision: sha256Hex(readFileSync(join(outDir, entry.url))),
        })),
      }),
    ],
  },
});

/** Ends a test that hangs. No test is judged by its time, so a slow machine must not fail one. */
const PATIENCE_MS = 60_000;

/** What each vitest project has. They do not inherit from the app's build: no worker is made for a unit test. */
const project = () => ({
  root,
  // A copy each: vitest takes the entries out of the object that it is given.
  define: { ...define },
  plugins: [react()],
});

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  base: '/',
  define: { ...define },
  plugins: [react(), ...(process.env['VITEST'] === undefined ? [pageMeta, worker] : [])],
  worker: { format: 'es' },
  // Names as short as they can be: the long ones are a tenth of what the style sheet weighs.
  css: { modules: { generateScopedName: '_[hash:base64:5]' } },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    modulePreload: false,
  },
  test: {
    root,
    reporters: [
      'default',
      './test/browser/requirements/tableReporter.ts',
      './test/browser/trial/trialReporter.ts',
    ],
    projects: [
      {
        ...project(),
        test: {
          name: 'pure',
          root,
          environment: 'node',
          testTimeout: PATIENCE_MS,
          include: [
            'test/{aero,record,analysis,file,handover,copies,desk,sw,house,reference,simulation}/**/*.test.{ts,tsx}',
          ],
          exclude: ['test/desk/**/*.built.test.ts'],
        },
      },
      {
        ...project(),
        test: {
          name: 'screens',
          root,
          environment: 'happy-dom',
          testTimeout: PATIENCE_MS,
          include: ['test/ui/**/*.test.{ts,tsx}'],
          setupFiles: ['test/ui/setup.ts'],
        },
      },
      {
        ...project(),
        test: {
          name: 'journal',
          root,
          environment: 'node',
          testTimeout: PATIENCE_MS,
          include: ['test/journal/**/*.test.ts'],
          exclude: ['test/journal/**/*.browser.test.ts'],
        },
      },
      {
        ...project(),
        test: {
          name: 'browser',
          root,
          include: ['test/journal/**/*.browser.test.ts'],
          fileParallelism: false,
          testTimeout: PATIENCE_MS,
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({ launchOptions: { executablePath, args: BROWSER_ARGS } }),
            instances: [{ browser: 'chromium', name: 'journal-browser' }],
          },
        },
      },
      {
        ...project(),
        test: {
          name: 'foreign',
          root,
          environment: 'node',
          testTimeout: PATIENCE_MS,
          include: ['test/foreign/**/*.foreign.ts'],
        },
      },
      {
        ...project(),
        test: {
          name: 'journeys',
          root,
          environment: 'node',
          include: ['test/browser/**/*.test.ts', 'test/desk/**/*.built.test.ts'],
          globalSetup: ['test/browser/builtFirst.ts'],
          fileParallelism: false,
          testTimeout: 600_000,
          hookTimeout: 600_000,
        },
      },
    ],
  },
});
