// `npm run simulate`: how often the 95 % intervals hold what is true, over 10,000 flights, `-- --short` 500, or
// `-- --flights N --seed S`. Ends with 1 where a class fails, or where a gate turned off goes unnoticed.
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { runnerImport } from 'vite';

const ROOT = join(import.meta.dirname, '..');
const { values } = parseArgs({
  options: {
    short: { type: 'boolean' },
    flights: { type: 'string' },
    seed: { type: 'string' },
  },
});
const flights = Number(values.flights ?? (values.short === true ? 500 : 10_000));
const seed = Number(values.seed ?? 20_320_602);
if (!(Number.isInteger(flights) && flights > 0 && Number.isInteger(seed))) {
  console.error('flights and seed must be whole numbers');
  process.exit(2);
}
/** Enough to see a gate fail; each fault flies its flights twice. */
const controlFlights = Math.max(60, Math.round(flights / 50));

/** @param {string} file */
const load = async (file) =>
  (await runnerImport(file, { root: ROOT, configFile: false, logLevel: 'error' })).module;
const { controlFailed, controls, simulated } = await load('/test/simulation/simulation.ts');
const { controlTableOf, tableOf } = await load('/test/simulation/table.ts');

console.log(`${flights} flights, seed ${seed}\n`);
/** @type {readonly import('../test/simulation/classes.ts').Tally[]} */
const rows = simulated(flights, seed);
console.log(tableOf(rows));
console.log(`\n${controlFlights} flights with bad readings in them, twice for each fault\n`);
/** @type {readonly import('../test/simulation/simulation.ts').Control[]} */
const checked = controls(controlFlights, seed);
console.log(controlTableOf(checked));

const failed = rows.filter(({ verdict }) => verdict === 'tooLow' || verdict === 'tooHigh');
const unnoticed = checked.filter(controlFailed);
console.log(
  `\n${rows.length} classes, ${failed.length} failed; ${unnoticed.length} controls failed`,
);
process.exitCode = failed.length + unnoticed.length === 0 ? 0 : 1;
