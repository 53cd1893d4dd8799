// `npm run bench`: each promise beside its yardstick, measured in this one run. Prints; asserts nothing.
import { join } from 'node:path';
import { runnerImport } from 'vite';

const ROOT = join(import.meta.dirname, '..');
/** @param {string} file */
const load = async (file) =>
  (await runnerImport(file, { root: ROOT, configFile: false, logLevel: 'error' })).module;

const { printed } = await load('/test/bench/ratios.ts');
const { pureRatios } = await load('/test/bench/pure.ts');
for (const ratio of pureRatios()) {
  console.log(printed(ratio));
}
