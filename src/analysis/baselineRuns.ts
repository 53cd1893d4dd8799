import { UNKNOWN_WEIGHT_ELASTICITY, type BaselineRun } from '../aero/baseline.ts';
import { BASELINE_LIMITS, baselineGates, type BaselineGate } from '../aero/baselineGates.ts';
import type { EntryId, EpochMs } from '../record/brand.ts';
import type { Run } from '../record/flightState.ts';
import { itemAt, items } from '../record/trail.ts';
import { laminarAt } from './laminar.ts';
import {
  cardOf,
  isBaselineReading,
  readingAt,
  type Context,
  type ReadingOutcome,
} from './reading/context.ts';
import { bracketModel, carriedModel, fittedModel, type BaselineModel } from './baselineModels.ts';
import type { BaselineInUse } from './reading/doubts.ts';
import { brokenLive, onConditionCalled } from './reading/gates.ts';
import { runMean, type RunMean } from './reading/runMean.ts';
import { pooledScatter, type Scatter } from './reading/scatter.ts';
import type { SheetTerms } from './reading/sheetTerms.ts';
import type { ReducedReading } from './reduceReading.ts';
import type { Gate, Provisional } from './results.ts';

/** A suction-off run with the readings that are left in it. */
export interface BaselineRunUsed {
  /** Index in the runs of the flight. */
  readonly index: number;
  readonly label: string;
  readonly startedAt: EpochMs;
  readonly readings: readonly ReducedReading[];
  readonly entries: readonly EntryId[];
  readonly provisional: readonly Provisional[];
}

type Reduced = Extract<ReadingOutcome, { kind: 'reduced' }>;

/** Every suction-off run with readings left, judged by what is known now; moisture only makes one provisional. */
export function liveBaselineRuns(context: Context): readonly BaselineRunUsed[] {
  return suctionOffRuns(context).flatMap(({ run, index }) => {
    const left = run.fuelGlances
      .map((glance) => baselineReadingAt(context, glance))
      .filter((outcome) => outcome !== null)
      .filter(({ reading, glance }) =>
        brokenLive(context, glance, reading).every((gate) => gate === 'moisture'),
      );
    return left.length === 0 ? [] : [runUsed(context, index, run, left)];
  });
}

/** No mean of gauges is known better than this share of itself (a choice). */
const LEAST_RUN_DOUBT = 1e-6;

/** A baseline run made of these readings; at least one. */
export function runUsed(
  context: Context,
  index: number,
  run: Run,
  left: readonly Reduced[],
): BaselineRunUsed {
  const doubts = new Set<Provisional>(
    left.flatMap(({ glance }) => provisionalBaseline(context, glance)),
  );
  return {
    index,
    label: run.run > 1 ? `${run.point} run ${run.run}` : run.point,
    startedAt: run.started.at,
    readings: left.map(({ reading }) => reading),
    entries: left.flatMap(({ entries }) => entries),
    provisional: [...doubts],
  };
}

/** What makes a suction-off reading doubtful as a baseline without striking it. */
export function provisionalBaseline(
  context: Context,
  glance: Reduced['glance'],
): readonly Provisional[] {
  const doubts: Provisional[] = [];
  if (glance.circumstances.moistureSince !== null) doubts.push('baselineInMoisture');
  if (!onConditionCalled(glance)) doubts.push('baselineNotOnCondition');
  const laminar = laminarAt(context.state, glance.at);
  if (laminar.kind === 'laminar' && laminar.byAreaFraction > LAMINAR_LEFT_ON) {
    doubts.push('baselineNotTurbulent');
  }
  return doubts;
}

/** More laminar area than this is flow left on, not one stray probe (a choice). */
const LAMINAR_LEFT_ON = 0.1;

function baselineReadingAt(context: Context, index: number): Reduced | null {
  const glance = itemAt(context.state.glances, index);
  if (glance === undefined || !isBaselineReading(context, glance)) return null;
  const outcome = readingAt(context, index, 'atTheTime');
  return outcome.kind === 'reduced' ? outcome : null;
}

/** In flight: one run moved with the borrowed elasticity, a fit with the borrowed row from the second on. */
export function baselineInFlight(
  context: Context,
  used: readonly BaselineRunUsed[],
): BaselineInUse | null {
  const { borrowed } = context.terms;
  const means = meansOf(context, used);
  const model = carriedModel(means.map(runFor), borrowed?.elasticity ?? UNKNOWN_WEIGHT_ELASTICITY);
  if (model === null) return null;
  return {
    ...model,
    means,
    labels: used.map(({ label }) => label),
    entries: used.flatMap(({ entries }) => entries),
    borrowedFrom: borrowed?.from ?? null,
    provisional: [
      ...provisionalOf(used),
      ...(borrowed === null ? (['noBorrowedElasticity'] as const) : []),
    ],
  };
}

/** A baseline with what strikes a number against it. */
export interface BaselineChosen {
  readonly inUse: BaselineInUse;
  readonly broken: readonly Gate[];
}

/**
 * After landing: a fit through the runs alone where it may be used at this weight. Else the borrowed
 * elasticity carries it, which is said; with nothing to borrow the number is struck.
 *
 * @param mach of the run, asked by a baseline with a Mach term alone; left out, that of the card
 */
export function baselineAfterLanding(
  context: Context,
  used: readonly BaselineRunUsed[],
  weightAtCardN: number,
  mach: number = context.terms.cardMach,
): BaselineChosen | null {
  const carried = baselineInFlight(context, used);
  if (carried === null) return null;
  const model = fittedModel(carried.baseline.runs, context.terms.cardMach);
  const gates = gatesAt(model, weightAtCardN, mach);
  const fitted: BaselineInUse | null =
    model === null
      ? null
      : { ...carried, ...model, borrowedFrom: null, provisional: provisionalOf(used) };
  if (fitted !== null && gates.length === 0) return { inUse: fitted, broken: [] };
  if (context.terms.borrowed === null) {
    return { inUse: fitted ?? carried, broken: fitted === null ? [] : ['outsideBaseline'] };
  }
  const inUse: BaselineInUse = {
    ...carried,
    provisional: [...carried.provisional, 'borrowedElasticity'],
  };
  return { inUse, broken: [] };
}

/**
 * A run between two suction-off runs that are too thin for a fit, with no elasticity to borrow: the bracket of the nearest
 * ones serves. Null where a fit or a borrowed elasticity does better, or where nothing was flown on one side.
 */
export function bracketAround(
  context: Context,
  used: readonly BaselineRunUsed[],
  startedAt: EpochMs,
): BaselineInUse | null {
  if (context.terms.borrowed !== null) return null;
  const before = used.findLastIndex((run) => run.startedAt < startedAt);
  const after = used.findIndex((run) => run.startedAt > startedAt);
  if (before < 0 || after < 0) return null;
  const carried = baselineInFlight(context, used);
  if (carried === null) return null;
  const count = carried.means.reduce((total, { looks }) => total + looks, 0);
  if (count >= BASELINE_LIMITS.fewestReadings) return null;
  const model = bracketModel(carried.baseline.runs, [before, after]);
  if (model === null) return null;
  const flown = [before, after].flatMap((place) => used[place] ?? []);
  return {
    ...carried,
    ...model,
    labels: flown.map(({ label }) => label),
    entries: flown.flatMap(({ entries }) => entries),
  };
}

function gatesAt(
  model: BaselineModel | null,
  weightN: number,
  mach: number,
): readonly BaselineGate[] {
  if (model === null) return ['tooFewReadings'];
  return baselineGates({
    baseline: model.baseline,
    weightN,
    mach,
    machDifference: 0,
    altitudeDifferenceM: 0,
  });
}

function meansOf({ terms }: Context, used: readonly BaselineRunUsed[]): readonly RunMean[] {
  const scatter = scatterOf(terms, used);
  return used.map(({ readings }) => runMean(terms, readings, scatter));
}

/** Scatter seen in the baseline runs, for gauges whose repeatability nobody declared. */
export function scatterOf(terms: SheetTerms, used: readonly BaselineRunUsed[]): Scatter | null {
  return pooledScatter(
    terms,
    used.map(({ readings }) => readings),
  );
}

function provisionalOf(used: readonly BaselineRunUsed[]): readonly Provisional[] {
  const count = used.reduce((total, { readings }) => total + readings.length, 0);
  const doubts = new Set(used.flatMap(({ provisional }) => provisional));
  return count === 1 ? [...doubts, 'oneBaselineReading'] : [...doubts];
}

function runFor(mean: RunMean): BaselineRun {
  return {
    fuelFlowKgPerS: mean.flowAtCardKgPerS,
    weightN: mean.weightAtCardN,
    // A flight sheet of zeros must not make a run exact: weights are one over its square.
    standardUncertaintyKgPerS: Math.max(
      mean.standardUncertaintyKgPerS,
      LEAST_RUN_DOUBT * mean.flowAtCardKgPerS,
    ),
    readingCount: mean.looks,
    mach: mean.mach,
  };
}

export function suctionOffRuns(
  context: Context,
): readonly { readonly run: Run; readonly index: number }[] {
  return [...items(context.state.runs)]
    .map((run, index) => ({ run, index }))
    .filter(({ run }) => cardOf(context, run)?.suction === 'off');
}
