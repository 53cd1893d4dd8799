// `npm run drill`: everything that must not lose an entry, long form, with a table at the end. Recorders through seeded
// mishaps, mutated files, merges and corrections; then the whole browser killed in bursts of touches, 200 times, and a
// flight of five hours with 500 touches and 20 kills. `-- --short` is what needs no browser, within a minute or so;
// `-- --kills` and `-- --flight` are one of the last two alone. SEED=n changes the seed.
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { runnerImport } from 'vite';
import { ensureBrowser } from './browser.mjs';
import { ensureBuilt } from './built.mjs';

/** @typedef {import('../test/drills/seen.ts').DrillSeen} DrillSeen */

const ROOT = join(import.meta.dirname, '..');
const { values: asked } = parseArgs({
  options: {
    short: { type: 'boolean', default: false },
    kills: { type: 'boolean', default: false },
    flight: { type: 'boolean', default: false },
  },
});
const seed = Number(process.env['SEED'] ?? 20_320_602);
const KILLS = 200;

/** @param {string} file */
const load = async (file) =>
  (await runnerImport(file, { root: ROOT, configFile: false, logLevel: 'error' })).module;

/**
 * @param {string} executablePath
 * @returns {Promise<DrillSeen>}
 */
async function flight(executablePath) {
  const { flyLong } = await load('/test/browser/longFlight.ts');
  /** @type {import('../test/browser/longFlight.ts').FlightSeen} */
  const seen = await flyLong({ executablePath, hours: 5, touches: 500, kills: 20, seed });
  const { touches, entries, kills, faults, reminders, heaps } = seen;
  for (const { firstMiB, lastMiB, touches: between } of heaps) {
    console.log(`${between} touches: ${firstMiB.toFixed(2)} MiB, then ${lastMiB.toFixed(2)} MiB`);
  }
  console.log(`reminders in each hour: ${reminders.join(', ')}`);
  return {
    drill: 'flight of five hours',
    rounds: touches,
    faults: kills,
    lost: faults.length,
    broken: faults,
    note: `${touches} touches, ${entries} entries`,
  };
}

/**
 * @param {string} executablePath
 * @returns {Promise<DrillSeen>}
 */
async function kills(executablePath) {
  const { drillOnNewTablet } = await load('/test/browser/drillRun.ts');
  let round = 0;
  let acknowledged = 0;
  /** @type {string[]} */
  const broken = [];
  await drillOnNewTablet({
    executablePath,
    rounds: KILLS,
    seed,
    /** @param {import('../test/browser/drillJudge.ts').Seen} seen */
    onRound: (seen) => {
      round += 1;
      acknowledged += seen.acknowledged;
      broken.push(...seen.faults.map((fault) => `kill ${round}: ${fault}`));
      console.log(
        `kill ${round}: ${seen.acknowledged} acknowledged, ${seen.unacknowledged} not yet, ${seen.faults.length} faults`,
      );
    },
  });
  return {
    drill: 'browser killed',
    rounds: round,
    faults: round,
    lost: broken.length,
    broken,
    note: `${acknowledged} touches acknowledged`,
  };
}

/** @returns {Promise<readonly ((seed: number) => DrillSeen | Promise<DrillSeen>)[] | null>} */
async function drillsAsked() {
  const { pureDrills } = await load('/test/drills/pureDrills.ts');
  if (asked.short) return pureDrills(true);
  const executablePath = ensureBrowser();
  if (executablePath === null || !ensureBuilt()) return null;
  if (asked.kills) return [() => kills(executablePath)];
  if (asked.flight) return [() => flight(executablePath)];
  return [...pureDrills(false), () => kills(executablePath), () => flight(executablePath)];
}

const drills = await drillsAsked();
const { tableOf } = await load('/test/drills/table.ts');
/** @type {(DrillSeen & { seconds: number })[]} */
const rows = [];
for (const drill of drills ?? []) {
  const startMs = performance.now();
  const seen = await drill(seed);
  rows.push({ ...seen, seconds: (performance.now() - startMs) / 1000 });
  for (const words of seen.broken) console.error(words);
  console.log(`${seen.drill}: done`);
}
console.log(`\nseed ${seed}\n${tableOf(rows)}`);
const held = rows.every(({ broken, lost }) => broken.length + lost === 0);
process.exitCode = drills !== null && held ? 0 : 1;
