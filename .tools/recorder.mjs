// `npm run bench:recorder`: opens a recorder file of three million rows and prints what the page felt of it.
import { join } from 'node:path';
import { runnerImport } from 'vite';
import { ensureBrowser } from './browser.mjs';
import { ensureBuilt } from './built.mjs';

const ROOT = join(import.meta.dirname, '..');
const executablePath = ensureBrowser();
if (executablePath !== null && ensureBuilt()) {
  const { recorderRows, printedOpening } = (
    await runnerImport('/test/bench/recorderRows.ts', {
      root: ROOT,
      configFile: false,
      logLevel: 'error',
    })
  ).module;
  const opened = await recorderRows(executablePath);
  console.log(printedOpening(opened));
} else {
  process.exitCode = 1;
}
