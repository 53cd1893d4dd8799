import type { Run } from '../record/flightState.ts';
import { baselineAfterLanding, type BaselineRunUsed } from './baselineRuns.ts';
import { cardOf, type Context } from './reading/context.ts';
import { reductionOf, type BaselineInUse, type Reduction } from './reading/figure.ts';
import { pooledScatter, runMean, type RunMean } from './reading/runMean.ts';
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
}

/** Every run of the flight, in the order in which they were flown. */
export function reducedRuns(context: Context): readonly ReducedRun[] {
  const flown = runsOf(context).map((run) => ({ run, readings: runReadings(context, run) }));
  const scatter = pooledScatter(
    flown.map(({ readings }) => readings.used.map(({ reading }) => reading)),
  );
  const baselines = baselineRunsAfterLanding(context);
  return flown.map(({ run, readings }) => {
    const used = readings.used.map(({ reading }) => reading);
    const mean = used.length === 0 ? null : runMean(context.terms, used, scatter);
    const suction = cardOf(context, run)?.suction ?? 'on';
    const against =
      mean === null || suction === 'off' ? null : againstBaseline(context, mean, baselines);
    return { run, readings, mean, suction, against };
  });
}

function againstBaseline(
  context: Context,
  mean: RunMean,
  baselines: readonly BaselineRunUsed[],
): ReducedRun['against'] {
  if (baselines.length === 0) return null;
  const chosen = baselineAfterLanding(context, baselines, mean.weightAtCardN);
  if (chosen === null) return null;
  const reduction = reductionOf(context.terms, mean, chosen.inUse);
  return reduction === null ? null : { ...chosen, reduction };
}
