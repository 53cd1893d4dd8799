// `npm run drill`: kills the whole browser in bursts of touches, 200 times, `-- --short` 20 times, and counts what was lost.
// `-- --flight`: a flight of five hours with 500 touches and 20 kills at random instants.
import { join } from 'node:path';
import { runnerImport } from 'vite';
import { ensureBrowser } from './browser.mjs';
import { ensureBuilt } from './built.mjs';

const ROOT = join(import.meta.dirname, '..');
const rounds = process.argv.includes('--short') ? 20 : 200;
const seed = Number(process.env['SEED'] ?? 20_320_602);

/** @param {string} file */
const load = async (file) =>
  (await runnerImport(file, { root: ROOT, configFile: false, logLevel: 'error' })).module;

/** @param {string} executablePath */
async function flight(executablePath) {
  const { flyLong } = await load('/test/browser/longFlight.ts');
  /** @type {import('../test/browser/longFlight.ts').FlightSeen} */
  const seen = await flyLong({ executablePath, hours: 5, touches: 500, kills: 20, seed });
  const { touches, entries, kills, faults, reminders, heaps } = seen;
  for (const { firstMiB, lastMiB, touches: between } of heaps) {
    console.log(`${between} touches: ${firstMiB.toFixed(2)} MiB, then ${lastMiB.toFixed(2)} MiB`);
  }
  for (const fault of faults) console.error(fault);
  console.log(`reminders in each hour: ${reminders.join(', ')}`);
  console.log(
    `${touches} touches, ${kills} kills, ${entries} entries, ${faults.length} faults (seed ${seed})`,
  );
  return faults.length === 0;
}

async function drill() {
  const executablePath = ensureBrowser();
  if (executablePath === null || !ensureBuilt()) return false;
  if (process.argv.includes('--flight')) return flight(executablePath);
  const module = await load('/test/browser/drillRun.ts');
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
