import { baselineAt } from '../aero/baseline.ts';
import type { EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import { itemAt } from '../record/trail.ts';
import {
  baselineInFlight,
  liveBaselineRuns,
  provisionalBaseline,
  scatterOf,
  type BaselineRunUsed,
} from './baselineRuns.ts';
import {
  contextOf,
  isBaselineReading,
  isFuelReading,
  readingAt,
  runOf,
  type Context,
  type ReadingOutcome,
} from './reading/context.ts';
import type { BaselineInUse } from './reading/doubts.ts';
import { reductionOf } from './reading/figure.ts';
import { brokenLive, LIVE_GATES } from './reading/gates.ts';
import { runMean } from './reading/runMean.ts';
import type { LiveEstimate, MadeOf, Missing, Provisional } from './results.ts';

/**
 * What may be shown at the newest fuel reading, from what is written now. Looks at the baseline runs and
 * a bounded number of readings back, so it costs the same late in a flight.
 */
export function liveEstimate(view: FlightView): LiveEstimate {
  const context = contextOf(view);
  if (context === null) return notYet(noContext(view));
  const newest = newestFuelReading(context);
  if (newest === null) return notYet('noReading');
  return estimateAt(context, liveBaselineRuns(context), newest);
}

/** The same for any reading, judged by what is known in this view: baselines flown since included. */
export function liveEstimateOf(view: FlightView, glanceIndex: number): LiveEstimate {
  const context = contextOf(view);
  if (context === null) return notYet(noContext(view));
  return estimateAt(context, liveBaselineRuns(context), glanceIndex);
}

/** Every fuel reading since an instant, oldest first, for the trend; gaps are among them. */
export function liveHistory(view: FlightView, sinceMs: EpochMs): readonly LiveEstimate[] {
  const context = contextOf(view);
  if (context === null) return [];
  const baselines = liveBaselineRuns(context);
  const history: LiveEstimate[] = [];
  const { glances } = context.state;
  for (let index = glances.length - 1; index >= 0; index -= 1) {
    const glance = itemAt(glances, index);
    if (glance === undefined || glance.at < sinceMs) break;
    if (isFuelReading(context, glance)) history.unshift(estimateAt(context, baselines, index));
  }
  return history;
}

function estimateAt(
  context: Context,
  baselines: readonly BaselineRunUsed[],
  index: number,
): LiveEstimate {
  const glance = itemAt(context.state.glances, index);
  if (glance === undefined || !isFuelReading(context, glance)) return notYet('noReading');
  const outcome = readingAt(context, index, 'atTheTime');
  if (outcome.kind === 'missing') {
    return { kind: 'notYet', because: outcome.because, at: glance.at, glance: index };
  }
  if (isBaselineReading(context, glance)) return baselineEstimate(context, baselines, outcome);
  const inUse = baselines.length === 0 ? null : baselineInFlight(context, baselines);
  if (inUse === null) {
    return { kind: 'notYet', because: 'noBaseline', at: glance.at, glance: index };
  }
  return reductionEstimate(context, inUse, outcome, scatterOf(context.terms, baselines));
}

type Reduced = Extract<ReadingOutcome, { kind: 'reduced' }>;

function reductionEstimate(
  context: Context,
  inUse: BaselineInUse,
  { reading, glance, entries, notes }: Reduced,
  scatter: ReturnType<typeof scatterOf>,
): LiveEstimate {
  const { terms } = context;
  const mean = runMean(terms, [reading], scatter);
  const reduction = reductionOf(terms, mean, inUse);
  if (reduction === null) {
    return { kind: 'notYet', because: 'noBaseline', at: glance.at, glance: reading.glance };
  }
  const broken = brokenLive(context, glance, reading);
  const run = runOf(context, glance);
  const madeOf: MadeOf = {
    entries: [...new Set([...entries, ...inUse.entries])],
    method: inUse.method,
    dragBy: reduction.dragBy,
    baselineRuns: inUse.labels,
    borrowedFrom: inUse.borrowedFrom,
    flowKgPerS: mean.flowKgPerS,
    flowAtCardKgPerS: mean.flowAtCardKgPerS,
    weightN: mean.weightN,
    weightAtCardN: mean.weightAtCardN,
    baselineAtThatWeightKgPerS: reduction.baselineKgPerS,
    suctionFlowKgPerS: mean.unit?.kgPerS ?? null,
    uncertaintyParts: reduction.parts,
  };
  return {
    kind: broken.length === 0 ? 'value' : 'struck',
    at: glance.at,
    glance: reading.glance,
    broken,
    passed: LIVE_GATES.filter((gate) => !broken.includes(gate)),
    provisional: [
      ...inUse.provisional,
      ...provisionalMethod(context, mean.repeatabilityDeclared),
      ...reduction.provisional,
    ],
    fuel: reduction.fuel,
    drag: reduction.drag,
    net: reduction.net,
    savings: reduction.savings,
    madeOf,
    point: run?.point ?? null,
    run: run?.run ?? null,
    notes,
  };
}

function baselineEstimate(
  context: Context,
  baselines: readonly BaselineRunUsed[],
  { reading, glance, notes, entries }: Reduced,
): LiveEstimate {
  const { terms } = context;
  const own = glance.circumstances.run;
  const run = runOf(context, glance);
  const mean = runMean(terms, [reading], scatterOf(context.terms, baselines));
  const earlier = baselines.filter(
    ({ index, startedAt }) => index !== own && run !== null && startedAt < run.started.at,
  );
  const inUse = earlier.length === 0 ? null : baselineInFlight(context, earlier);
  const moved = inUse === null ? null : baselineAt(inUse.baseline, reading.weightAtCardN);
  const difference = moved === null ? 0 : reading.flowAtCardKgPerS - moved.fuelFlowKgPerS;
  return {
    kind: 'baselineReading',
    entries,
    at: glance.at,
    glance: reading.glance,
    broken: brokenLive(context, glance, reading).filter((gate) => gate !== 'moisture'),
    provisional: [
      ...provisionalBaseline(context, glance),
      ...provisionalMethod(context, mean.repeatabilityDeclared),
    ],
    flowAtCardKgPerS: reading.flowAtCardKgPerS,
    weightN: reading.weightN,
    weightAtCardN: reading.weightAtCardN,
    againstEarlier:
      moved === null
        ? null
        : {
            movedKgPerS: moved.fuelFlowKgPerS,
            differenceFraction: difference / moved.fuelFlowKgPerS,
            overU:
              difference /
              Math.hypot(moved.standardUncertaintyKgPerS, mean.standardUncertaintyKgPerS),
          },
    readingsInRun: baselines.find(({ index }) => index === own)?.readings.length ?? 0,
    notes: notes.filter((note) => note !== 'suctionOffOutsideBaseline'),
  };
}

/** What the method itself lacks, whichever reading. */
export function provisionalMethod(
  { terms, calibrations }: Context,
  repeatabilityDeclared: boolean,
): readonly Provisional[] {
  const doubts: Provisional[] = [...calibrations.provisional];
  const levelled = terms.drag?.kind === 'map';
  if (!levelled) doubts.push('noEngineMap');
  if (!levelled && !terms.liftToDragVouched) doubts.push('noLiftToDrag');
  if (!repeatabilityDeclared) doubts.push('noRepeatability');
  return doubts;
}

function newestFuelReading(context: Context): number | null {
  const { glances } = context.state;
  for (let index = glances.length - 1; index >= 0; index -= 1) {
    const glance = itemAt(glances, index);
    if (glance !== undefined && isFuelReading(context, glance)) return index;
  }
  return null;
}

function noContext({ state }: FlightView): Missing {
  return state.sheet === null ? 'noFlightSheet' : 'outsideAtmosphere';
}

function notYet(because: Missing): LiveEstimate {
  return { kind: 'notYet', because, at: null, glance: null };
}
