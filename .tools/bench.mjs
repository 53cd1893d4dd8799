// `npm run bench`: each promise beside its yardstick, measured in this one run. Prints; asserts nothing.
import { availableParallelism, loadavg } from 'node:os';
import { join } from 'node:path';
import { runnerImport } from 'vite';
import { ensureBrowser } from './browser.mjs';
import { ensureBuilt } from './built.mjs';

const ROOT = join(import.meta.dirname, '..');
/** @param {string} file */
const load = async (file) =>
  (await runnerImport(file, { root: ROOT, configFile: false, logLevel: 'error' })).module;

const { printed } = await load('/test/bench/ratios.ts');
const { pureRatios } = await load('/test/bench/pure.ts');
for (const ratio of pureRatios()) {
  console.log(printed(ratio));
}
const executablePath = ensureBrowser();
if (executablePath !== null && ensureBuilt()) {
  const { browserRatios } = await load('/test/bench/browser.ts');
  for (const ratio of await browserRatios(executablePath)) {
    console.log(printed(ratio));
  }
  // Latencies are of a real clock: a machine with more to do than processors shows its own waiting in them.
  const [oneMinute = 0] = loadavg();
  console.log(
    `machine: load ${oneMinute.toFixed(1)} on ${availableParallelism()} processors at the end`,
  );
} else {
  process.exitCode = 1;
}
