import { ready, unavailable, type Outcome } from '../outcome.ts';

/** Rows are exposed and not exposed, columns are loss and no loss. */
export type TwoByTwo = readonly [
  exposed: readonly [loss: number, noLoss: number],
  notExposed: readonly [loss: number, noLoss: number],
];

/** An association, not a cause. */
export interface FisherResult {
  readonly pTwoSided: number;
  /** First cell as small as seen, or smaller. */
  readonly pLess: number;
  /** First cell as large as seen, or larger. */
  readonly pGreater: number;
  /** Conditional maximum likelihood: 0 or infinite when the first cell is at its end. */
  readonly oddsRatio: number;
  readonly oddsRatioInterval95: readonly [low: number, high: number];
}

/** Tables this close to the one seen count as no likelier: rounding must not drop a tie (R's own factor). */
export const TIE_FACTOR = 1e-7;

const HALF_LEVEL = 0.025;
const LOG_ODDS_BOUND = 60;

/**
 * Fisher's exact test of a 2×2 table.
 *
 * @returns `zeroMargin` when a row or column is empty: there is nothing to compare
 * @throws RangeError for a count that is not a whole number of zero or more
 * @see R manual, fisher.test. Check values: test/reference/statistics.json
 */
export function fisherExact(table: TwoByTwo): Outcome<FisherResult, 'zeroMargin'> {
  const [[a, b], [c, d]] = table;
  for (const count of [a, b, c, d]) requireCount(count);
  const exposed = a + b;
  const notExposed = c + d;
  const loss = a + c;
  if (exposed === 0 || notExposed === 0 || loss === 0 || b + d === 0) {
    return unavailable('zeroMargin');
  }
  const lowest = Math.max(0, loss - notExposed);
  const highest = Math.min(exposed, loss);
  const logWeights = centralLogWeights({ exposed, notExposed, loss, lowest, highest });
  const family: Family = { lowest, logWeights };
  const central = probabilities(family, 0);
  const seen = central[a - lowest] ?? 0;
  return ready({
    pTwoSided: sumOf(central.filter((p) => p <= seen * (1 + TIE_FACTOR))),
    pLess: lowerTail(family, a, 0),
    pGreater: upperTail(family, a, 0),
    oddsRatio: likeliestOdds(family, a, highest),
    oddsRatioInterval95: [
      a === lowest ? 0 : oddsWhere((log) => upperTail(family, a, log) - HALF_LEVEL),
      a === highest ? Infinity : oddsWhere((log) => HALF_LEVEL - lowerTail(family, a, log)),
    ],
  });
}

/** The first cell given all margins: from `lowest` up, with logarithms of C(r1, k) C(r2, c1 − k). */
interface Family {
  readonly lowest: number;
  readonly logWeights: readonly number[];
}

function centralLogWeights(margins: {
  readonly exposed: number;
  readonly notExposed: number;
  readonly loss: number;
  readonly lowest: number;
  readonly highest: number;
}): readonly number[] {
  const { exposed, notExposed, loss, lowest, highest } = margins;
  const weights = [0];
  let last = 0;
  for (let k = lowest; k < highest; k += 1) {
    // The ratio of neighbours needs no factorial, so nothing overflows or cancels.
    last += Math.log(((exposed - k) * (loss - k)) / ((k + 1) * (notExposed - loss + k + 1)));
    weights.push(last);
  }
  return weights;
}

function probabilities({ lowest, logWeights }: Family, logOdds: number): readonly number[] {
  const logs = logWeights.map((log, index) => log + (lowest + index) * logOdds);
  const largest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - largest));
  const total = sumOf(weights);
  return weights.map((weight) => weight / total);
}

function lowerTail(family: Family, cell: number, logOdds: number): number {
  return sumOf(probabilities(family, logOdds).slice(0, cell - family.lowest + 1));
}

function upperTail(family: Family, cell: number, logOdds: number): number {
  return sumOf(probabilities(family, logOdds).slice(cell - family.lowest));
}

function likeliestOdds(family: Family, cell: number, highest: number): number {
  if (cell === family.lowest) return 0;
  if (cell === highest) return Infinity;
  return oddsWhere((log) => {
    const expected = probabilities(family, log).map((p, index) => p * (family.lowest + index));
    return sumOf(expected) - cell;
  });
}

/** The odds at which a rising function of the log odds crosses zero, by halving. */
function oddsWhere(rising: (logOdds: number) => number): number {
  let low = -LOG_ODDS_BOUND;
  let high = LOG_ODDS_BOUND;
  for (let middle = 0; low < middle && middle < high; middle = (low + high) / 2) {
    if (rising(middle) < 0) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

function sumOf(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function requireCount(count: number): void {
  if (!(Number.isInteger(count) && count >= 0)) {
    throw new RangeError(`a count must be a whole number of 0 or more, got ${count}`);
  }
}
