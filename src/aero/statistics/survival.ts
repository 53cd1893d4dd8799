import { ready, requireNotNegative, unavailable, type Outcome } from '../outcome.ts';

/** Below this many events the raw list says more than a curve (a product choice). */
export const FEWEST_EVENTS_FOR_CURVE = 5;

const ROUNDING = 1e-12;

/** One encounter: how long it was watched, and whether the event ended it or something else did. */
export interface TimedOutcome {
  readonly duration: number;
  readonly observed: boolean;
}

export interface SurvivalStep {
  readonly time: number;
  readonly atRisk: number;
  readonly events: number;
  /** Share not yet had the event just after `time`. */
  readonly survival: number;
  /** Greenwood's standard error; 0 once nobody is left, where it says nothing. */
  readonly standardError: number;
}

export interface SurvivalCurve {
  /** One step a distinct event time, in order. */
  readonly steps: readonly SurvivalStep[];
  readonly eventCount: number;
  readonly censoredCount: number;
  readonly enoughEvents: boolean;
  /** First time with half or fewer left. */
  readonly median: Outcome<number, 'notReached'>;
}

/**
 * Kaplan and Meier's product-limit curve, in the unit of the durations. At a tie the censored count as
 * still at risk.
 *
 * @throws RangeError when a duration is negative or not finite
 * @see Klein and Moeschberger, Survival Analysis. Check values: test/reference/statistics.json
 */
export function kaplanMeier(outcomes: readonly TimedOutcome[]): SurvivalCurve {
  for (const { duration } of outcomes) requireNotNegative('duration', duration);
  const observed = outcomes.filter((outcome) => outcome.observed);
  const times = [...new Set(observed.map(({ duration }) => duration))].toSorted((a, b) => a - b);
  const steps: SurvivalStep[] = [];
  let survival = 1;
  let greenwood = 0;
  for (const time of times) {
    const atRisk = outcomes.filter(({ duration }) => duration >= time).length;
    const events = observed.filter(({ duration }) => duration === time).length;
    survival *= 1 - events / atRisk;
    if (events < atRisk) greenwood += events / (atRisk * (atRisk - events));
    steps.push({ time, atRisk, events, survival, standardError: survival * Math.sqrt(greenwood) });
  }
  // A product of fractions that is a half on paper may end a hair above it.
  const halfway = steps.find((step) => step.survival <= 0.5 + ROUNDING);
  return {
    steps,
    eventCount: observed.length,
    censoredCount: outcomes.length - observed.length,
    enoughEvents: observed.length >= FEWEST_EVENTS_FOR_CURVE,
    median: halfway === undefined ? unavailable('notReached') : ready(halfway.time),
  };
}

/** The curve just after `time`: share left and its standard error. 1 and 0 before the first event. */
export function survivalAt(
  curve: SurvivalCurve,
  time: number,
): { readonly survival: number; readonly standardError: number } {
  requireNotNegative('time', time);
  return curve.steps.findLast((step) => step.time <= time) ?? { survival: 1, standardError: 0 };
}
