// `npm run drill`: kills the whole browser in bursts of touches, 200 times, `-- --short` 20 times, and counts what was lost.
import { join } from 'node:path';
import { runnerImport } from 'vite';
import { ensureBrowser } from './browser.mjs';
import { ensureBuilt } from './built.mjs';

const ROOT = join(import.meta.dirname, '..');
const rounds = process.argv.includes('--short') ? 20 : 200;
const seed = Number(process.env['SEED'] ?? 20_320_602);

async function drill() {
  const executablePath = ensureBrowser();
  if (executablePath === null || !ensureBuilt()) return false;
  const { module } = await runnerImport('/test/browser/drillRun.ts', {
    root: ROOT,
    configFile: false,
    logLevel: 'error',
  });
  let round = 0;
  let acknowledged = 0;
  /** @type {string[]} */
  const faults = [];
  await module.drillOnNewTablet({
    executablePath,
    rounds,
    seed,
    /** @param {import('../test/browser/drillJudge.ts').Seen} seen */
    onRound: (seen) => {
      round += 1;
      acknowledged += seen.acknowledged;
      faults.push(...seen.faults.map((fault) => `round ${round}: ${fault}`));
      console.log(
        `kill ${round}: ${seen.acknowledged} acknowledged, ${seen.unacknowledged} not yet, ${seen.faults.length} faults`,
      );
    },
  });
  for (const fault of faults) console.error(fault);
  console.log(
    `${round} kills, ${acknowledged} acknowledged, ${faults.length} faults (seed ${seed})`,
  );
  return faults.length === 0;
}

if (!(await drill())) process.exitCode = 1;
