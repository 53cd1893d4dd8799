import { requireNotNegative, requirePositive } from '../outcome.ts';
import { studentTQuantile } from './distributions.ts';

/*
 * Combination of uncertainties by JCGM 100:2008 (GUM), clauses 5 and G. Check values:
 * test/reference/uncertainty.json
 */

/** One source of doubt: how far the result moves with it, its size, and how well that size is known. */
export interface Component {
  readonly sensitivity: number;
  readonly standardUncertainty: number;
  /** Infinity for a doubt that is stated rather than estimated from a few readings. */
  readonly degreesOfFreedom: number;
}

/** Components `first` and `second`, by position, move together to this degree, −1 to 1. */
export interface Correlation {
  readonly first: number;
  readonly second: number;
  readonly coefficient: number;
}

/**
 * Combined standard uncertainty, √(Σ(c u)² + 2 ΣΣ c c′ u u′ r).
 *
 * @throws RangeError for a negative uncertainty, a correlation outside −1 to 1 or of an unknown
 *   component, or correlations that contradict each other so that the variance falls below zero
 */
export function combinedUncertainty(
  components: readonly Component[],
  correlations: readonly Correlation[] = [],
): number {
  const parts = components.map(contribution);
  let variance = parts.reduce((total, part) => total + part ** 2, 0);
  const independent = variance;
  for (const { first, second, coefficient } of correlations) {
    const a = parts[first];
    const b = parts[second];
    if (a === undefined || b === undefined || first === second) {
      throw new RangeError(`a correlation must name two components, got ${first} and ${second}`);
    }
    if (!(Math.abs(coefficient) <= 1)) {
      throw new RangeError(`a correlation must be -1 to 1, got ${coefficient}`);
    }
    variance += 2 * a * b * coefficient;
  }
  // Full cancellation leaves rounding, which may lie a hair below zero.
  if (variance < 0 && variance > -independent * 1e-12) return 0;
  if (variance < 0) throw new RangeError('correlations must not make the variance negative');
  return Math.sqrt(variance);
}

/**
 * Effective degrees of freedom by Welch and Satterthwaite, components taken as independent.
 *
 * @returns infinity when no component with a finite number of them contributes
 */
export function effectiveDegreesOfFreedom(components: readonly Component[]): number {
  const combined = combinedUncertainty(components);
  let denominator = 0;
  for (const component of components) {
    if (!(component.degreesOfFreedom > 0)) {
      throw new RangeError(`degrees of freedom must be above 0, got ${component.degreesOfFreedom}`);
    }
    // Relative to the whole: a fourth power of a small SI number would vanish.
    if (combined > 0) {
      denominator += (contribution(component) / combined) ** 4 / component.degreesOfFreedom;
    }
  }
  return 1 / denominator;
}

/**
 * Half-width of the interval that holds the truth with this confidence, t·u.
 *
 * @param confidence above 0 and below 1, 0.95 unless said
 */
export function expandedUncertainty({
  standardUncertainty,
  degreesOfFreedom,
  confidence = 0.95,
}: {
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  readonly confidence?: number;
}): number {
  requireNotNegative('standard uncertainty', standardUncertainty);
  const probability = (1 + confidence) / 2;
  return standardUncertainty * studentTQuantile({ probability, degreesOfFreedom });
}

/** Doubt of one look at a display that moves in steps: rectangular, step/√12. */
export function resolutionUncertainty(step: number): number {
  requireNotNegative('display step', step);
  return step / Math.sqrt(12);
}

/** Doubt of a value known to lie within ± a, nowhere likelier: a/√3. */
export function halfRangeUncertainty(halfRange: number): number {
  requireNotNegative('half-range', halfRange);
  return halfRange / Math.sqrt(3);
}

/** Doubt of the mean of independent readings, s/√m. Resolution does not shrink this way on one digit. */
export function meanUncertainty({
  standardDeviation,
  count,
}: {
  readonly standardDeviation: number;
  readonly count: number;
}): number {
  requireNotNegative('standard deviation', standardDeviation);
  requirePositive('count', count);
  return standardDeviation / Math.sqrt(count);
}

/** Doubt of a flow from two looks at a totaliser, √2 · step/√12 / Δt, in steps a second. */
export function totaliserFlowUncertainty({
  step,
  durationS,
}: {
  readonly step: number;
  readonly durationS: number;
}): number {
  requirePositive('duration', durationS);
  return (Math.SQRT2 * resolutionUncertainty(step)) / durationS;
}

function contribution({ sensitivity, standardUncertainty }: Component): number {
  requireNotNegative('standard uncertainty', standardUncertainty);
  if (!Number.isFinite(sensitivity)) {
    throw new RangeError(`sensitivity must be finite, got ${sensitivity}`);
  }
  return sensitivity * standardUncertainty;
}
