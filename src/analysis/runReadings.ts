import type { Glance, Run } from '../record/flightState.ts';
import { itemAt, items } from '../record/trail.ts';
import { runUsed, suctionOffRuns, type BaselineRunUsed } from './baselineRuns.ts';
import {
  cardOf,
  isFuelReading,
  readingAt,
  type Context,
  type ReadingOutcome,
} from './reading/context.ts';
import { leftOut } from './reading/gates.ts';
import type { LeftOut, Missing } from './results.ts';

/** The readings of one run, sorted after landing into those that count and those that do not. */
export interface RunReadings {
  readonly used: readonly Reduced[];
  readonly leftOut: readonly { readonly glance: number; readonly broken: readonly LeftOut[] }[];
  /** What the first unusable reading lacked, when that is why nothing is left. */
  readonly missing: Missing | null;
}

type Reduced = Extract<ReadingOutcome, { kind: 'reduced' }>;

export function runReadings(context: Context, run: Run): RunReadings {
  const used: Reduced[] = [];
  const out: { glance: number; broken: readonly LeftOut[] }[] = [];
  let missing: Missing | null = null;
  for (const index of run.fuelGlances) {
    const glance = itemAt(context.state.glances, index);
    if (glance === undefined || !isFuelReading(context, glance)) continue;
    const outcome = readingAt(context, index, 'afterLanding');
    if (outcome.kind === 'missing') {
      missing ??= outcome.because;
      out.push({
        glance: index,
        broken: [outcome.because === 'readingQueried' ? 'queried' : 'incomplete'],
      });
      continue;
    }
    const broken = [
      ...leftOut(context, glance, outcome.reading, beforeOnCondition(context, run, glance)),
      ...suctionLeftOn(context, run, glance),
    ];
    if (broken.length === 0) used.push(outcome);
    else out.push({ glance: index, broken });
  }
  return { used, leftOut: out, missing };
}

/**
 * Suction-off runs that may make a baseline after landing: finished ones, else whatever there is. One flown
 * wholly in moisture still serves when it is all there is, and says so.
 */
export function baselineRunsAfterLanding(context: Context): readonly BaselineRunUsed[] {
  const runs = suctionOffRuns(context).map(({ run, index }) => {
    const { used, leftOut: out } = runReadings(context, run);
    const wet = used.length > 0 ? used : inMoistureOnly(context, out);
    return { run, index, used: wet };
  });
  const left = runs.filter(({ used }) => used.length > 0);
  const finished = left.filter(({ run }) => run.state === 'complete' || run.state === 'open');
  return (finished.length > 0 ? finished : left).map(({ run, index, used }) =>
    runUsed(context, index, run, used),
  );
}

/** Every run of the flight, in the order in which they were flown. */
export function runsOf(context: Context): readonly Run[] {
  return [...items(context.state.runs)];
}

function inMoistureOnly(context: Context, out: RunReadings['leftOut']): readonly Reduced[] {
  return out
    .filter(({ broken }) => broken.every((reason) => reason === 'moisture'))
    .map(({ glance }) => readingAt(context, glance, 'afterLanding'))
    .filter((outcome) => outcome.kind === 'reduced');
}

/** Read before the first on-condition call inside its run; without such a call nothing is too early. */
function beforeOnCondition({ state }: Context, run: Run, glance: Glance): boolean {
  const from = run.started.at;
  const called = (at: number | null): boolean =>
    at !== null && at >= from && (run.ended === null || at <= run.ended.at);
  if (called(glance.circumstances.conditionReachedAt)) return false;
  return (
    called(state.condition.lastReachedAt) ||
    run.fuelGlances.some((index) =>
      called(itemAt(state.glances, index)?.circumstances.conditionReachedAt ?? null),
    )
  );
}

function suctionLeftOn(context: Context, run: Run, glance: Glance): readonly LeftOut[] {
  const off = cardOf(context, run)?.suction === 'off';
  return off && glance.circumstances.suctionOn ? ['suctionChanging'] : [];
}
