import type { Run } from '../record/flightState.ts';
import { baselineAfterLanding, bracketAround, type BaselineRunUsed } from './baselineRuns.ts';
import { cardOf, type Context } from './reading/context.ts';
import type { BaselineInUse } from './reading/doubts.ts';
import { reductionOf, type Reduction } from './reading/figure.ts';
import { runMean, type RunMean } from './reading/runMean.ts';
import { pooledScatter } from './reading/scatter.ts';
import type { Gate } from './results.ts';
import { baselineRunsAfterLanding, runReadings, runsOf, type RunReadings } from './runReadings.ts';

/** One run after landing: its readings, their mean, and what the mean says against the baseline. */
export interface ReducedRun {
  readonly run: Run;
  readonly readings: RunReadings;
  /** Null where no reading is left. */
  readonly mean: RunMean | null;
  readonly suction: 'on' | 'off';
  /** Null for a suction-off run, and where there is nothing to compare with. */
  readonly against: {
    readonly inUse: BaselineInUse;
    readonly broken: readonly Gate[];
    readonly reduction: Reduction;
  } | null;
  /** Why there is nothing to compare with; `noBaseline` too for a suction-off run, which needs none. */
  readonly because: 'noBaseline' | 'bracketDrifts';
}

/** Every run of the flight, in the order in which they were flown. */
export function reducedRuns(context: Context): readonly ReducedRun[] {
  const flown = runsOf(context).map((run) => ({ run, readings: runReadings(context, run) }));
  const scatter = pooledScatter(
    context.terms,
    flown.map(({ readings }) => readings.used.map(({ reading }) => reading)),
  );
  const baselines = baselineRunsAfterLanding(context);
  return flown.map(({ run, readings }) => {
    const used = readings.used.map(({ reading }) => reading);
    const mean = used.length === 0 ? null : runMean(context.terms, used, scatter);
    const suction = cardOf(context, run)?.suction ?? 'on';
    if (mean === null || suction === 'off') {
      return { run, readings, mean, suction, against: null, because: 'noBaseline' };
    }
    return { run, readings, mean, suction, ...againstBaseline(context, run, mean, baselines) };
  });
}

/** What a mean says against the suction-off runs, by the same choice of a baseline for every source of readings. */
export function againstBaseline(
  context: Context,
  run: Run,
  mean: RunMean,
  baselines: readonly BaselineRunUsed[],
): Pick<ReducedRun, 'against' | 'because'> {
  if (baselines.length === 0) return { against: null, because: 'noBaseline' };
  const bracket = bracketAround(context, baselines, run.started.at);
  const chosen =
    bracket === null
      ? baselineAfterLanding(context, baselines, mean.weightAtCardN, mean.mach)
      : { inUse: bracket, broken: [] };
  const reduction = chosen === null ? null : reductionOf(context.terms, mean, chosen.inUse);
  if (chosen === null || reduction === null) {
    return { against: null, because: bracket === null ? 'noBaseline' : 'bracketDrifts' };
  }
  return { against: { ...chosen, reduction }, because: 'noBaseline' };
}
