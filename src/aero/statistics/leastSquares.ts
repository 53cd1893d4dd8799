import { ready, requireFinite, requirePositive, unavailable } from '../outcome.ts';
import type { Outcome, Unavailable } from '../outcome.ts';
import { factorise, type Factors } from './householder.ts';

/*
 * Linear least squares by Householder QR: forming XᵀX would square the condition of the problem.
 * Check values: test/reference/regression.json (NIST Norris, certified; GUM H.3)
 */

/** How far each observation is trusted, and whether the doubts are believed as they stand. */
export type Weighting =
  | { readonly kind: 'equal' }
  /** Only the ratios of the doubts count; the scatter found sets their size. */
  | { readonly kind: 'relative'; readonly uncertainties: readonly number[] }
  /** The doubts are standard uncertainties; the scatter found does not change them. */
  | { readonly kind: 'absolute'; readonly uncertainties: readonly number[] };

export interface Fit {
  readonly kind: 'fit';
  readonly coefficients: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** Observed less fitted, unweighted. */
  readonly residuals: readonly number[];
  /** Weighted where weights were given: then it is χ². */
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  /** √(rss/ν). With relative or absolute weights it is that of an observation of weight one. */
  readonly residualStandardDeviation: Outcome<number, 'noDegreesOfFreedom'>;
  readonly leverages: readonly number[];
  /** ∂coefficient/∂observation, a row a coefficient: what a doubt of one observation does to the fit. */
  readonly sensitivities: readonly (readonly number[])[];
  /** (XᵀWX)⁻¹: the covariance before any scale. */
  readonly inverseNormal: readonly (readonly number[])[];
  /** What `inverseNormal` was multiplied by: s², or 1 for absolute doubts. */
  readonly varianceScale: number;
}

export type NoFit = Unavailable<'tooFewObservations' | 'dependentColumns' | 'noDegreesOfFreedom'>;

/**
 * Fits observations to the columns of `rows`.
 *
 * @param rows one row an observation, one column a coefficient
 * @returns a reason for fewer observations than coefficients, for columns that say the same, or, unless
 *   the doubts are absolute, for no observation to spare
 * @throws RangeError for ragged input, a number that is not finite or a doubt not above zero
 */
export function fitLinear({
  rows,
  observations,
  weighting,
}: {
  readonly rows: readonly (readonly number[])[];
  readonly observations: readonly number[];
  readonly weighting: Weighting;
}): Fit | NoFit {
  const width = requireShape(rows, observations, weighting);
  const degreesOfFreedom = rows.length - width;
  if (degreesOfFreedom < 0) return unavailable('tooFewObservations');
  if (degreesOfFreedom === 0 && weighting.kind !== 'absolute') {
    return unavailable('noDegreesOfFreedom');
  }
  const roots = observations.map((_, index) => rootWeight(weighting, index));
  const weighted = rows.map((row, index) => row.map((x) => x * at(roots, index)));
  const factors = factorise(weighted);
  if (factors === 'dependentColumns') return unavailable('dependentColumns');
  const scaled = observations.map((y, index) => y * at(roots, index));
  const coefficients = factors.solve(scaled);
  const residuals = observations.map((y, index) => y - dot(at(rows, index), coefficients));
  const residualSumOfSquares = squareSum(residuals.map((e, index) => e * at(roots, index)));
  const varianceScale = weighting.kind === 'absolute' ? 1 : residualSumOfSquares / degreesOfFreedom;
  const inverseNormal = inverseNormalOf(factors, width);
  return {
    kind: 'fit',
    coefficients,
    covariance: inverseNormal.map((row) => row.map((value) => value * varianceScale)),
    residuals,
    residualSumOfSquares,
    degreesOfFreedom,
    residualStandardDeviation:
      degreesOfFreedom === 0
        ? unavailable('noDegreesOfFreedom')
        : ready(Math.sqrt(residualSumOfSquares / degreesOfFreedom)),
    leverages: weighted.map((row) => squareSum(factors.solveTransposed(row))),
    sensitivities: sensitivitiesOf(factors, roots, width),
    inverseNormal,
    varianceScale,
  };
}

/** The fitted mean at a new row. */
export interface Prediction {
  readonly value: number;
  /** Doubt of the mean, √(x0 cov x0ᵀ). */
  readonly standardUncertainty: number;
  /** h0 = x0 (XᵀWX)⁻¹ x0ᵀ, to be held against the largest leverage of the data. */
  readonly leverage: number;
  /** ∂value/∂observation, one an observation. */
  readonly shares: readonly number[];
}

/** @throws RangeError when the row has not one number a coefficient */
export function predict(fit: Fit, row: readonly number[]): Prediction {
  if (row.length !== fit.coefficients.length) {
    throw new RangeError(`a row must have ${fit.coefficients.length} numbers, got ${row.length}`);
  }
  for (const x of row) requireFinite('row entry', x);
  const leverage = Math.max(0, quadratic(fit.inverseNormal, row));
  return {
    value: dot(row, fit.coefficients),
    standardUncertainty: Math.sqrt(leverage * fit.varianceScale),
    leverage,
    shares: fit.residuals.map((_, k) =>
      dot(
        row,
        fit.sensitivities.map((of) => at(of, k)),
      ),
    ),
  };
}

/**
 * Doubt of one new reading, √(u_mean² + u_reading²); for equal weights s √(1 + h0).
 *
 * @param readingUncertainty its own doubt; left out, the scatter of the fit serves
 * @returns `noDegreesOfFreedom` when there is neither
 */
export function predictionUncertainty(
  fit: Fit,
  row: readonly number[],
  readingUncertainty?: number,
): Outcome<number, 'noDegreesOfFreedom'> {
  const { standardUncertainty } = predict(fit, row);
  if (readingUncertainty !== undefined) {
    requirePositive('reading uncertainty', readingUncertainty);
    return ready(Math.hypot(standardUncertainty, readingUncertainty));
  }
  if (fit.residualStandardDeviation.kind === 'unavailable') return fit.residualStandardDeviation;
  return ready(Math.hypot(standardUncertainty, fit.residualStandardDeviation.value));
}

function inverseNormalOf(factors: Factors, width: number): readonly (readonly number[])[] {
  // Rows of R⁻ᵀ are enough: (XᵀWX)⁻¹ = R⁻¹R⁻ᵀ, and column k of R⁻ᵀ solves Rᵀz = e_k.
  const columns = unitVectors(width).map((unit) => factors.solveTransposed(unit));
  return columns.map((a) => columns.map((b) => dot(a, b)));
}

function sensitivitiesOf(
  factors: Factors,
  roots: readonly number[],
  width: number,
): readonly (readonly number[])[] {
  const columns = unitVectors(roots.length).map((unit, k) =>
    factors.solve(unit.map((one) => one * at(roots, k))),
  );
  return unitVectors(width).map((_, j) => columns.map((column) => at(column, j)));
}

function rootWeight(weighting: Weighting, index: number): number {
  return weighting.kind === 'equal' ? 1 : 1 / at(weighting.uncertainties, index);
}

function quadratic(matrix: readonly (readonly number[])[], row: readonly number[]): number {
  return dot(
    row,
    matrix.map((of) => dot(of, row)),
  );
}

function unitVectors(size: number): readonly (readonly number[])[] {
  return Array.from({ length: size }, (_, k) =>
    Array.from({ length: size }, (__, j) => (j === k ? 1 : 0)),
  );
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((total, value, index) => total + value * at(b, index), 0);
}

function squareSum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value ** 2, 0);
}

function at<Item>(items: readonly Item[], index: number): Item {
  const item = items[index];
  if (item === undefined) throw new RangeError(`no element ${index} among ${items.length}`);
  return item;
}

/** @returns the number of columns */
function requireShape(
  rows: readonly (readonly number[])[],
  observations: readonly number[],
  weighting: Weighting,
): number {
  const width = rows[0]?.length ?? 0;
  if (width === 0) throw new RangeError('a fit needs at least one row with one column');
  if (rows.some((row) => row.length !== width)) {
    throw new RangeError(`every row must have ${width} numbers`);
  }
  if (observations.length !== rows.length) {
    throw new RangeError(`${rows.length} rows must have as many observations`);
  }
  for (const value of [...rows.flat(), ...observations]) requireFinite('fit input', value);
  if (weighting.kind !== 'equal') {
    if (weighting.uncertainties.length !== rows.length) {
      throw new RangeError(`${rows.length} rows must have as many uncertainties`);
    }
    for (const u of weighting.uncertainties) requirePositive('uncertainty', u);
  }
  return width;
}
