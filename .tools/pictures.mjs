// `npm run pictures`: the screens as PNG files in .pictures/, at the four sizes, day and night; `--all` adds the other
// three themes, `--readme` writes the pictures that the README shows, names such as `fly debrief` pick screens.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runnerImport } from 'vite';
import { ensureBrowser } from './browser.mjs';
import { ensureBuilt } from './built.mjs';

const ROOT = join(import.meta.dirname, '..');
const SIZES = [
  { width: 744, height: 1133 },
  { width: 1180, height: 820 },
  { width: 1366, height: 1024 },
  { width: 1440, height: 900 },
];
const README_SCREENS = ['brief', 'fly', 'debrief'];

const options = process.argv.slice(2);
const forReadme = options.includes('--readme');
const folder = join(ROOT, forReadme ? '.readme' : '.pictures');

/** @param {readonly string[]} known */
function screensAsked(known) {
  const named = options.filter((option) => !option.startsWith('--'));
  const unknown = named.filter((name) => !known.includes(name));
  if (unknown.length > 0) throw new RangeError(`a screen must be one of ${known.join(' ')}`);
  if (forReadme) return README_SCREENS;
  return named.length === 0 ? known : named;
}

async function run() {
  const executablePath = ensureBrowser();
  if (executablePath === null || !ensureBuilt()) return false;
  const { module } = await runnerImport('/test/browser/screens.ts', {
    root: ROOT,
    configFile: false,
    logLevel: 'error',
  });
  mkdirSync(folder, { recursive: true });
  await module.takePictures(
    {
      sizes: forReadme ? [SIZES[1]] : SIZES,
      themes: options.includes('--all')
        ? ['day', 'sun', 'dark', 'night', 'night-red']
        : ['day', 'night'],
      screens: screensAsked(module.SCREENS),
      executablePath,
    },
    /** @param {import('../test/browser/screens.ts').Picture} picture */
    ({ screen, theme, width, height, png }) => {
      const size = forReadme ? '' : `-${width}x${height}`;
      writeFileSync(join(folder, `${screen}${size}-${theme}.png`), png);
    },
  );
  return true;
}

if (!(await run())) process.exitCode = 1;
