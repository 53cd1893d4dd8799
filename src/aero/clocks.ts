import { ready, requireFinite, requireNotNegative, unavailable } from './outcome.ts';
import type { Outcome, Unavailable } from './outcome.ts';
import { studentTQuantile } from './statistics/distributions.ts';
import { fitLinear, predict, type Fit } from './statistics/leastSquares.ts';

/*
 * Offset and rate of another clock against the tablet's, from time hacks. A rate is used only beyond
 * twice its doubt: two hacks good to 0.1 s hardly resolve a quartz crystal in two hours.
 * Check values: test/reference/clocks.json
 */

/** One comparison of the two clocks. */
export interface TimeHack {
  /** Monotonic tablet time, seconds. */
  readonly tabletS: number;
  /** Other clock less tablet, seconds. */
  readonly offsetS: number;
  /** Of one hack: display steps and the hand. 0 where none is stated. */
  readonly standardUncertaintyS: number;
}

export interface ClockModel {
  readonly kind: 'clock';
  readonly method: 'oneHack' | 'twoHacks' | 'leastSquares';
  readonly firstS: number;
  readonly lastS: number;
  /** Mean tablet time of the hacks: there offset and rate do not share a doubt. */
  readonly middleS: number;
  readonly offsetAtMiddleS: number;
  readonly offsetAtMiddleUncertaintyS: number;
  /** Seconds a second; from one hack there is none. */
  readonly rate: Outcome<ClockRate, 'oneHack'>;
  readonly degreesOfFreedom: number;
  /** Tablet times of hacks that fit badly: the clock may have been set there, so split the fit. */
  readonly suspectedStepsAtS: readonly number[];
}

export interface ClockRate {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Beyond twice its doubt. An unresolved rate moves no time, but its doubt still counts. */
  readonly resolved: boolean;
}

export const RATE_RESOLVED_DOUBTS = 2;
/** A hack off the line by more than this many of the fit's own deviations, or this many seconds. */
export const STEP_DEVIATIONS = 3;
export const STEP_S = 0.5;

/**
 * Offset and rate from hacks in any order.
 *
 * @returns `noHacks`, or `hacksCoincide` when several lie at one tablet time
 * @throws RangeError when a number is not finite or a doubt negative
 */
export function fitClock(
  hacks: readonly TimeHack[],
): ClockModel | Unavailable<'noHacks' | 'hacksCoincide'> {
  for (const hack of hacks) requireHack(hack);
  const [first, second] = hacks;
  if (first === undefined) return unavailable('noHacks');
  if (second === undefined) return oneHack(first);
  if (new Set(hacks.map((hack) => hack.tabletS)).size === 1) return unavailable('hacksCoincide');
  return hacks.length === 2 ? twoHacks(first, second) : manyHacks(hacks);
}

export interface ClockOffset {
  readonly offsetS: number;
  readonly standardUncertaintyS: number;
  readonly expanded95S: number;
  /** Before the first hack or after the last. With one hack, anywhere else. */
  readonly extrapolated: boolean;
}

/** Other clock less tablet at a tablet time. @throws RangeError when it is not finite */
export function offsetAt(model: ClockModel, tabletS: number): ClockOffset {
  requireFinite('tablet time', tabletS);
  const sinceMiddleS = tabletS - model.middleS;
  const rate =
    model.rate.kind === 'ready'
      ? model.rate.value
      : { value: 0, standardUncertainty: 0, resolved: false };
  const standardUncertaintyS = Math.hypot(
    model.offsetAtMiddleUncertaintyS,
    rate.standardUncertainty * sinceMiddleS,
  );
  return {
    offsetS: model.offsetAtMiddleS + (rate.resolved ? rate.value * sinceMiddleS : 0),
    standardUncertaintyS,
    expanded95S:
      standardUncertaintyS *
      studentTQuantile({ probability: 0.975, degreesOfFreedom: model.degreesOfFreedom }),
    extrapolated: tabletS < model.firstS || tabletS > model.lastS,
  };
}

function oneHack({ tabletS, offsetS, standardUncertaintyS }: TimeHack): ClockModel {
  return {
    kind: 'clock',
    method: 'oneHack',
    firstS: tabletS,
    lastS: tabletS,
    middleS: tabletS,
    offsetAtMiddleS: offsetS,
    offsetAtMiddleUncertaintyS: standardUncertaintyS,
    rate: unavailable('oneHack'),
    degreesOfFreedom: Infinity,
    suspectedStepsAtS: [],
  };
}

function twoHacks(a: TimeHack, b: TimeHack): ClockModel {
  const apartS = b.tabletS - a.tabletS;
  // √2 u of one hack when both are equally good.
  const both = Math.hypot(a.standardUncertaintyS, b.standardUncertaintyS);
  return {
    kind: 'clock',
    method: 'twoHacks',
    firstS: Math.min(a.tabletS, b.tabletS),
    lastS: Math.max(a.tabletS, b.tabletS),
    middleS: (a.tabletS + b.tabletS) / 2,
    offsetAtMiddleS: (a.offsetS + b.offsetS) / 2,
    offsetAtMiddleUncertaintyS: both / 2,
    rate: ready(judgedRate((b.offsetS - a.offsetS) / apartS, both / Math.abs(apartS))),
    degreesOfFreedom: Infinity,
    suspectedStepsAtS: [],
  };
}

function manyHacks(hacks: readonly TimeHack[]): ClockModel {
  const middleS = hacks.reduce((total, hack) => total + hack.tabletS, 0) / hacks.length;
  const fit = lineThrough(hacks, middleS);
  const at = predict(fit, [1, 0]);
  const slope = predict(fit, [0, 1]);
  const scatterS = Math.sqrt(fit.residualSumOfSquares / fit.degreesOfFreedom);
  const statedS =
    Math.hypot(...hacks.map((hack) => hack.standardUncertaintyS)) / Math.sqrt(hacks.length);
  // Hacks read to whole tenths can agree to the digit: then what was stated of each is the better guide.
  const perHackS = Math.max(scatterS, statedS);
  const off = fit.residuals.map(Math.abs);
  return {
    kind: 'clock',
    method: 'leastSquares',
    firstS: Math.min(...hacks.map((hack) => hack.tabletS)),
    lastS: Math.max(...hacks.map((hack) => hack.tabletS)),
    middleS,
    offsetAtMiddleS: at.value,
    offsetAtMiddleUncertaintyS: perHackS * Math.sqrt(at.leverage),
    rate: ready(judgedRate(slope.value, perHackS * Math.sqrt(slope.leverage))),
    degreesOfFreedom: scatterS >= statedS ? fit.degreesOfFreedom : Infinity,
    suspectedStepsAtS: hacks
      .filter((_, k) => (off[k] ?? 0) > STEP_S || (off[k] ?? 0) > STEP_DEVIATIONS * perHackS)
      .map((hack) => hack.tabletS),
  };
}

function lineThrough(hacks: readonly TimeHack[], middleS: number): Fit {
  const fit = fitLinear({
    rows: hacks.map((hack) => [1, hack.tabletS - middleS]),
    observations: hacks.map((hack) => hack.offsetS),
    weighting: { kind: 'equal' },
  });
  if (fit.kind === 'unavailable') {
    throw new RangeError(`hacks at two or more times must give a line, got ${fit.because}`);
  }
  return fit;
}

function judgedRate(value: number, standardUncertainty: number): ClockRate {
  const resolved = Math.abs(value) > RATE_RESOLVED_DOUBTS * standardUncertainty;
  return { value, standardUncertainty, resolved };
}

function requireHack({ tabletS, offsetS, standardUncertaintyS }: TimeHack): void {
  requireFinite('tablet time', tabletS);
  requireFinite('offset', offsetS);
  requireNotNegative('uncertainty of a hack', standardUncertaintyS);
}
