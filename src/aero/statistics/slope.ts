import { ready, unavailable, type Outcome } from '../outcome.ts';
import { fitLinear } from './leastSquares.ts';

/** A straight line through readings in time. */
export interface Slope {
  /** Per second. */
  readonly perS: number;
  readonly standardUncertainty: number;
  /** Infinite where the doubt of a reading was stated. */
  readonly degreesOfFreedom: number;
  /** Of the line at the middle of the times: their mean. */
  readonly middle: number;
}

/**
 * Least-squares slope of readings in time, in any order.
 *
 * @param readingUncertainty of one reading, stated; left out, the scatter about the line serves
 * @returns `tooFewSamples` below three readings, below two with a stated doubt; `oneTime` where all were
 *   taken at one moment
 * @throws RangeError for lists of two lengths, a number that is not finite or a doubt not above zero
 */
export function slopeOf({
  timesS,
  values,
  readingUncertainty,
}: {
  readonly timesS: readonly number[];
  readonly values: readonly number[];
  readonly readingUncertainty?: number;
}): Outcome<Slope, 'tooFewSamples' | 'oneTime'> {
  if (timesS.length !== values.length) {
    throw new RangeError(`${timesS.length} times must have as many values, got ${values.length}`);
  }
  if (timesS.length < (readingUncertainty === undefined ? 3 : 2)) {
    return unavailable('tooFewSamples');
  }
  // About the middle: seconds since 1970 would drown the differences.
  const middleS = timesS.reduce((total, timeS) => total + timeS, 0) / timesS.length;
  const fit = fitLinear({
    rows: timesS.map((timeS) => [1, timeS - middleS]),
    observations: values,
    weighting:
      readingUncertainty === undefined
        ? { kind: 'equal' }
        : { kind: 'absolute', uncertainties: values.map(() => readingUncertainty) },
  });
  if (fit.kind === 'unavailable') return unavailable('oneTime');
  const [middle = 0, perS = 0] = fit.coefficients;
  return ready({
    perS,
    standardUncertainty: Math.sqrt(fit.covariance[1]?.[1] ?? 0),
    degreesOfFreedom: readingUncertainty === undefined ? fit.degreesOfFreedom : Infinity,
    middle,
  });
}
