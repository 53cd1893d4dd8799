import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { BROWSER_ARGS, findBrowser } from './.tools/browser.mjs';
import { buildId } from './.tools/buildId.mjs';

const root = import.meta.dirname;
const define = { __BUILD_ID__: JSON.stringify(buildId()) };
const executablePath = findBrowser() ?? '';

/** What each vitest project shares. They do not inherit from the app's build: no worker is made for a unit test. */
const project = { root, define, plugins: [react()] };

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  base: '/',
  define,
  plugins: [react()],
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    modulePreload: false,
    rolldownOptions: { output: { codeSplitting: false } },
  },
  test: {
    root,
    projects: [
      {
        ...project,
        test: {
          name: 'pure',
          root,
          environment: 'node',
          include: ['test/{aero,record,analysis,file,copies,house,reference}/**/*.test.{ts,tsx}'],
        },
      },
      {
        ...project,
        test: {
          name: 'screens',
          root,
          environment: 'happy-dom',
          include: ['test/ui/**/*.test.{ts,tsx}'],
          setupFiles: ['test/ui/setup.ts'],
        },
      },
      {
        ...project,
        test: {
          name: 'journal',
          root,
          environment: 'node',
          include: ['test/journal/**/*.test.ts'],
          exclude: ['test/journal/**/*.browser.test.ts'],
        },
      },
      {
        ...project,
        test: {
          name: 'journal-browser',
          root,
          include: ['test/journal/**/*.browser.test.ts'],
          fileParallelism: false,
          testTimeout: 60_000,
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
        ...project,
        test: {
          name: 'journeys',
          root,
          environment: 'node',
          include: ['test/browser/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
    ],
  },
});
