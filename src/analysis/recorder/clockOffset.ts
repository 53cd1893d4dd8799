import { recordedMarks, type MarkKind } from './recordedSteps.ts';
import type { ScribeFlow, ScribeMark, ScribeSide } from './scribeSide.ts';
import { totalFlowOf, type EvenTrace } from './trace.ts';
import { windowsOf, type Windows } from './windows.ts';

/*
 * Where the recorder's clock stood: every offset is tried, and each is as likely as it makes the scribe's fuel readings
 * fall on the recorded flow and the scribe's marks on the recorded steps. Mean and standard deviation of that likelihood
 * (a uniform prior) are the offset and its doubt, so a level stretch that fits anywhere widens the doubt by itself.
 * Readings and marks may be plain wrong: each is a mixture of a normal and a flat part (Hogg, Bovy and Lang 2010, section 3).
 */

/** Recorder less aircraft time base, as for every other clock. */
export interface RecorderOffset {
  readonly kind: 'offset';
  readonly offsetS: number;
  readonly standardUncertaintyS: number;
  /** Recorded flow less the corrected gauges, where they agree: no time, but a person should see it. */
  readonly flowBiasKgPerS: number;
  readonly readings: { readonly agree: number; readonly of: number };
  readonly marks: readonly MatchedMark[];
}

export interface MatchedMark extends ScribeMark {
  /** Recorded step less mark, after the offset; null where no step lies near. */
  readonly residualS: number | null;
}

export interface NoOffset {
  readonly kind: 'noOffset';
  readonly because:
    /** No recorded flow for every engine, and no mark that the recorder shows. */
    | 'nothingToMatch'
    | 'tooFewReadings'
    /** At no offset do half of the readings lie in the recording. */
    | 'noOverlap'
    /** Wherever it is laid, the flows differ by more than the gauges' doubt: another flight, or another channel. */
    | 'doesNotFit'
    /** The flow never changed between readings that both saw: many offsets fit alike. */
    | 'tooFewSteps'
    /** Two places fit nearly alike. */
    | 'ambiguous';
  /** Offsets that would fit, best first. */
  readonly candidatesS: readonly number[];
}

/** Share of readings and marks that are taken for wrong from the start (a choice). */
const WRONG_SHARE = 0.05;
const FEWEST_FACTS = 4;
const COARSE_S = 2;
const FINE_S = 0.1;
/** Peaks so far apart are two places, not one. */
const ONE_PEAK_S = 60;
const OTHER_PEAK_SHARE = 0.05;
/** With more doubt than this, a run's edges can no longer be told from what comes before it (a choice). */
const WIDEST_DOUBT_S = 15;
/** All hands of a crew are late together by some of this: no number of marks averages it out (a choice). */
const HANDS_LATE_S = 0.5;
const AGREES_WITHIN = 4;
/** Flow of a recorder and of a gauge on one pipe differ by no more than this (a choice). */
const BIAS_SHARE = 0.05;

export function recorderOffset(even: EvenTrace, scribe: ScribeSide): RecorderOffset | NoOffset {
  const flow = totalFlowOf(even);
  const shown = recordedMarks(even);
  const marks = scribe.marks.filter(({ kind }) => shown[kind].length > 0);
  const readings = even.engines.length === 0 ? [] : scribe.readings;
  if (readings.length + marks.length === 0) return none('nothingToMatch');
  if (readings.length + marks.length < FEWEST_FACTS) return none('tooFewReadings');
  const trial: Trial = {
    even,
    readings,
    marks,
    shown,
    windows: windowsOf(flow),
    flowRange: rangeOf(flow),
    room: {
      residuals: new Float64Array(readings.length),
      sigmas: new Float64Array(readings.length),
    },
  };
  const coarse = likelihoods(trial, offsetsWithOverlap(trial), COARSE_S);
  const best = mostLikely(coarse);
  if (best === null) return none('noOverlap');
  const finely = between(best - ONE_PEAK_S, best + ONE_PEAK_S, FINE_S);
  const fine = likelihoods(trial, finely, FINE_S);
  const { meanS, deviationS } = momentsOf(fine);
  const outside = coarse.filter(({ offsetS }) => Math.abs(offsetS - best) > ONE_PEAK_S);
  const other = mostLikely(outside);
  if (other !== null && massOf(outside, coarse) > OTHER_PEAK_SHARE * massOf(coarse, coarse)) {
    return none('ambiguous', [best, other]);
  }
  const agreement = agreementAt(trial, meanS);
  const matched = marks.map((mark) => matchedMark(trial, mark, meanS));
  const near = matched.filter(({ residualS }) => residualS !== null).length;
  if (2 * (agreement.agree + near) < readings.length + marks.length) {
    return none('doesNotFit', [meanS]);
  }
  const standardUncertaintyS = Math.hypot(
    deviationS,
    HANDS_LATE_S,
    even.rowEveryS / Math.sqrt(12),
    scribe.timeBaseUncertaintyS,
  );
  if (standardUncertaintyS > WIDEST_DOUBT_S) return none('tooFewSteps', [meanS]);
  return {
    kind: 'offset',
    offsetS: meanS,
    standardUncertaintyS,
    flowBiasKgPerS: agreement.biasKgPerS,
    readings: { agree: agreement.agree, of: readings.length },
    marks: matched,
  };
}

interface Trial {
  readonly even: EvenTrace;
  readonly readings: readonly ScribeFlow[];
  readonly marks: readonly ScribeMark[];
  readonly shown: Readonly<Record<MarkKind, readonly number[]>>;
  readonly windows: Windows;
  readonly flowRange: number;
  readonly room: { readonly residuals: Float64Array; readonly sigmas: Float64Array };
}

interface Tried {
  readonly offsetS: number;
  readonly logLikelihood: number;
}

function likelihoods(trial: Trial, offsetsS: readonly number[], stepS: number): readonly Tried[] {
  return offsetsS.map((offsetS) => ({
    offsetS,
    logLikelihood: logLikelihoodAt(trial, offsetS, stepS),
  }));
}

function logLikelihoodAt(trial: Trial, offsetS: number, stepS: number): number {
  const { even, readings, marks, shown, flowRange } = trial;
  const { residuals, sigmas, count } = residualsAt(trial, offsetS);
  const wrong = WRONG_SHARE / flowRange;
  // A reading outside the recording is as likely as a wrong one.
  let total = (readings.length - count) * Math.log(wrong);
  for (let index = 0; index < count; index += 1) {
    const density = normal(residuals[index] ?? 0, sigmas[index] ?? 1);
    total += Math.log((1 - WRONG_SHARE) * density + wrong);
  }
  for (const mark of marks) {
    const at = secondsInto(even, mark.at, offsetS);
    const steps = shown[mark.kind];
    // A mark sharper than the steps of the search would be stepped over.
    const sigma = Math.max(markSigma(mark), stepS);
    let density = 0;
    for (const step of steps) density += normal(step - at, sigma);
    total += Math.log(
      ((1 - WRONG_SHARE) * density) / steps.length + WRONG_SHARE / Math.max(1, even.seconds),
    );
  }
  return total;
}

interface Residuals {
  /** Recorded flow less reading, the common bias taken out; readings outside the recording are left out. */
  readonly residuals: Float64Array;
  readonly sigmas: Float64Array;
  readonly count: number;
  readonly biasKgPerS: number;
}

/** Tried at thousands of offsets, so one set of arrays serves for all. */
function residualsAt({ even, readings, windows, room }: Trial, offsetS: number): Residuals {
  const { residuals, sigmas } = room;
  let count = 0;
  let sum = 0;
  for (const reading of readings) {
    const at = secondsInto(even, reading.at, offsetS);
    // Evenly over a time of this half width has the standard deviation that the reading's time has.
    const half = Math.max(0.5, Math.sqrt(3) * reading.doubtS);
    const recorded = windows.over(at - half, at + half);
    if (recorded === null) continue;
    sum += reading.kgPerS;
    residuals[count] = recorded.mean - reading.kgPerS;
    sigmas[count] = Math.sqrt(reading.standardUncertaintyKgPerS ** 2 + recorded.variance) || 1e-9;
    count += 1;
  }
  if (count === 0) return { residuals, sigmas, count, biasKgPerS: 0 };
  const most = (BIAS_SHARE * sum) / count;
  const inOrder = residuals.slice(0, count).sort();
  const middle =
    ((inOrder[Math.floor((count - 1) / 2)] ?? 0) + (inOrder[Math.floor(count / 2)] ?? 0)) / 2;
  const biasKgPerS = Math.max(-most, Math.min(most, middle));
  for (let index = 0; index < count; index += 1) {
    residuals[index] = (residuals[index] ?? 0) - biasKgPerS;
  }
  return { residuals, sigmas, count, biasKgPerS };
}

function agreementAt(
  trial: Trial,
  offsetS: number,
): { readonly agree: number; readonly biasKgPerS: number } {
  const { residuals, sigmas, count, biasKgPerS } = residualsAt(trial, offsetS);
  const agree = residuals
    .subarray(0, count)
    .filter((residual, index) => Math.abs(residual) <= AGREES_WITHIN * (sigmas[index] ?? 0));
  return { agree: agree.length, biasKgPerS };
}

function matchedMark({ even, shown }: Trial, mark: ScribeMark, offsetS: number): MatchedMark {
  const at = secondsInto(even, mark.at, offsetS);
  const residuals = shown[mark.kind].map((step) => step - at);
  const nearest = residuals.toSorted((a, b) => Math.abs(a) - Math.abs(b))[0] ?? Infinity;
  const isNear = Math.abs(nearest) <= AGREES_WITHIN * markSigma(mark);
  return { ...mark, residualS: isNear ? nearest : null };
}

/** A step is known to the second of the trace. */
function markSigma({ doubtS }: ScribeMark): number {
  return Math.hypot(doubtS, 1 / Math.sqrt(12));
}

function offsetsWithOverlap({ even, readings, marks }: Trial): readonly number[] {
  const facts = [...readings, ...marks].map(({ at }) => at / 1000).toSorted((a, b) => a - b);
  const startS = even.startMs / 1000;
  const middle = Math.floor(facts.length / 2);
  // Half of the facts lie inside somewhere between these two.
  const low = startS - (facts[middle] ?? 0);
  const high = startS + even.seconds - (facts[Math.max(0, facts.length - 1 - middle)] ?? 0);
  return between(low, high, COARSE_S);
}

function secondsInto(even: EvenTrace, atMs: number, offsetS: number): number {
  return (atMs - even.startMs) / 1000 + offsetS;
}

function between(low: number, high: number, stepS: number): readonly number[] {
  const count = Math.max(0, Math.floor((high - low) / stepS) + 1);
  const from = Math.ceil(low / stepS);
  return Array.from({ length: count }, (_, index) => (from + index) * stepS);
}

function mostLikely(tried: readonly Tried[]): number | null {
  let best: Tried | null = null;
  for (const one of tried) if (best === null || one.logLikelihood > best.logLikelihood) best = one;
  return best?.offsetS ?? null;
}

/** Likelihood summed, in units of the largest among `all`: its own size is far below what a number holds. */
function massOf(tried: readonly Tried[], all: readonly Tried[]): number {
  const top = topOf(all);
  return tried.reduce((sum, { logLikelihood }) => sum + Math.exp(logLikelihood - top), 0);
}

function topOf(tried: readonly Tried[]): number {
  return tried.reduce((most, { logLikelihood }) => Math.max(most, logLikelihood), -Infinity);
}

function momentsOf(tried: readonly Tried[]): { meanS: number; deviationS: number } {
  const top = topOf(tried);
  let mass = 0;
  let first = 0;
  for (const { offsetS, logLikelihood } of tried) {
    const weight = Math.exp(logLikelihood - top);
    mass += weight;
    first += weight * offsetS;
  }
  const meanS = first / mass;
  const second = tried.reduce(
    (sum, { offsetS, logLikelihood }) =>
      sum + Math.exp(logLikelihood - top) * (offsetS - meanS) ** 2,
    0,
  );
  return { meanS, deviationS: Math.sqrt(second / mass) };
}

function normal(x: number, sigma: number): number {
  return Math.exp(-0.5 * (x / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI));
}

function rangeOf(flow: Float64Array): number {
  let [low, high] = [Infinity, -Infinity];
  for (const value of flow) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high > low ? high - low : 1;
}

function none(because: NoOffset['because'], candidatesS: readonly number[] = []): NoOffset {
  return { kind: 'noOffset', because, candidatesS };
}
