// Draws the inputs that a second implementation answers: node draw.mjs | Rscript agreement.R > agreement.json
import process from 'node:process';

/** Park and Miller's generator: the same cases on every machine. */
let state = 20_240_229;
function share() {
  state = (state * 48_271) % 2_147_483_647;
  return state / 2_147_483_647;
}

/** @type {(low: number, high: number) => number} */
const whole = (low, high) => low + Math.floor(share() * (high - low + 1));
/** With few decimals, so that both sides read the same number. @type {(low: number, high: number, places: number) => number} */
const decimal = (low, high, places) => Number((low + share() * (high - low)).toFixed(places));
/** @type {<Drawn>(count: number, draw: (k: number) => Drawn) => Drawn[]} */
const many = (count, draw) => Array.from({ length: count }, (_, k) => draw(k));

/**
 * Weight, and in every third case Mach, against fuel flow with doubts of several sizes.
 * @param {number} k
 */
function regression(k) {
  const withMach = k % 3 === 2;
  const [level, perWeight] = [decimal(1000, 20_000, 2), decimal(500, 9000, 2)];
  const perMach = decimal(-20_000, 20_000, 2);
  const points = many(whole(withMach ? 8 : 4, 14), () => {
    const [z, mach] = [decimal(0.6, 1.3, 6), decimal(-0.01, 0.01, 5)];
    const flow = level + perWeight * z + (withMach ? perMach * mach : 0);
    const scatter = decimal(-60, 60, 3) + decimal(-60, 60, 3);
    return { row: withMach ? [1, z, mach] : [1, z], flow: Number((flow + scatter).toFixed(3)) };
  });
  const [z, mach] = [decimal(0.5, 1.4, 5), decimal(-0.012, 0.012, 5)];
  return {
    rows: points.map(({ row }) => row),
    observations: points.map(({ flow }) => flow),
    uncertainties: points.map(() => decimal(5, 60, 2)),
    at: withMach ? [1, z, mach] : [1, z],
    readingUncertainty: decimal(5, 60, 2),
  };
}

/**
 * Whole degrees of freedom, few, some and many.
 * @param {number} k
 */
function quantile(k) {
  const degrees = [whole(1, 60), decimal(0.7, 6, 4), decimal(1, 50, 3), decimal(1, 5000, 3)];
  return { probability: decimal(0.0005, 0.9995, 6), degreesOfFreedom: degrees[k % 4] };
}

/**
 * Small and lopsided tables beside even ones; cells at their end, but never an empty column.
 * @param {number} k
 */
function table(k) {
  const most = k % 3 === 0 ? 4 : k % 3 === 1 ? 15 : 60;
  const cells = many(4, () => whole(1, most));
  if (k % 7 < 4) cells[k % 7] = 0;
  return [cells.slice(0, 2), cells.slice(2)];
}

/**
 * Whole seconds, so that ties are common; from nobody censored to nearly all.
 * @param {number} k
 */
function survival(k) {
  const observed = [1, 0.8, 0.5, 0.2][k % 4] ?? 1;
  // An even number, one after the other: the curve lies at exactly a half.
  if (k % 8 === 4)
    return many(2 * whole(3, 20), (n) => ({ duration: 7 * (n + 1), observed: true }));
  return many(whole(5, 40), () => ({
    duration: whole(1, k % 2 === 0 ? 12 : 300),
    observed: share() < observed,
  }));
}

/** Two runs of different length and scatter. */
const twoRuns = () => {
  const [m, n] = [whole(2, 12), whole(2, 12)];
  const [first, second] = [decimal(1, 40, 2), decimal(1, 40, 2)];
  return {
    first: many(m, () => decimal(2300 - first, 2300 + first, 2)),
    second: many(n, () => decimal(2150 - second, 2150 + second, 2)),
  };
};

const burst = () => {
  const held = share() * 0.9;
  let last = 0;
  return many(whole(10, 40), () => {
    last = held * last + decimal(-10, 10, 3);
    return Number((2300 + last).toFixed(2));
  });
};

process.stdout.write(
  JSON.stringify({
    regressions: many(30, regression),
    quantiles: many(90, quantile),
    tables: many(42, table),
    survivals: many(24, survival),
    pairs: many(20, twoRuns),
    bursts: many(12, burst),
  }),
);
