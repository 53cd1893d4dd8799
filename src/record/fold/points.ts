import type { EntryOf } from '../entry.ts';
import type { Run, Timed } from '../flightState.ts';
import { appended, itemAt, replaced } from '../trail.ts';
import { doubted, type Fold, MOST_OPEN, withMemory, withState } from './fold.ts';
import { askedForOrder, begun, endedIfOpen, lonelyEnd, subjectOf } from './intervals.ts';

type Ending = 'complete' | 'interrupted' | 'terminated';

/** One point is open at a time; a second one is a doubt, and both stay open until each is closed. */
export function pointStarted(fold: Fold, entry: EntryOf<'testPointStarted'>, timed: Timed): Fold {
  const { point, run } = entry.body;
  const label = labelOf(point, run);
  const going = openRunsOf(fold);
  const asked = going.length > 0 ? doubted(fold, timed, 'pointAlreadyOpen', label) : fold;
  if (going.some(([, open]) => open.point === point && open.run === run)) {
    return asked;
  }
  const index = asked.state.runs.length;
  const runs = appended<Run>(asked.state.runs, {
    point,
    run,
    started: timed,
    ended: null,
    state: 'open',
    reason: null,
    fuelGlances: [],
  });
  const ordered = askedForOrder(asked, 'testPoint', label, timed);
  const next = begun(withState(ordered, { runs, openRun: index }), 'testPoint', label, timed);
  return withMemory(next, { openRuns: [...next.memory.openRuns, index].slice(-MOST_OPEN) });
}

export function pointEnded(
  fold: Fold,
  entry: EntryOf<'testPointEnded' | 'testPointInterrupted' | 'testPointTerminated'>,
  timed: Timed,
): Fold {
  const { point, run } = entry.body;
  const [found] =
    openRunsOf(fold).findLast(([, open]) => open.point === point && open.run === run) ?? [];
  if (found === undefined) {
    const label = labelOf(point, run);
    return lonelyEnd(doubted(fold, timed, 'pointNotOpen', label), subjectOf('testPoint', label));
  }
  switch (entry.kind) {
    case 'testPointEnded':
      return runClosed(fold, found, 'complete', null, timed);
    case 'testPointInterrupted':
      return runClosed(fold, found, 'interrupted', entry.body.reason ?? null, timed);
    case 'testPointTerminated':
      return runClosed(fold, found, 'terminated', entry.body.reason ?? null, timed);
  }
}

/** A stop call by anyone closes every open point, never the log. */
export function stopCalled(fold: Fold, entry: EntryOf<'stopCalled'>, timed: Timed): Fold {
  const reason = entry.body.reason ?? null;
  return fold.memory.openRuns.reduce(
    (next, index) => runClosed(next, index, 'terminated', reason, timed),
    fold,
  );
}

function runClosed(
  fold: Fold,
  index: number,
  state: Ending,
  reason: string | null,
  timed: Timed,
): Fold {
  const run = itemAt(fold.state.runs, index);
  if (run === undefined) {
    return fold;
  }
  const openRuns = fold.memory.openRuns.filter((open) => open !== index);
  const runs = replaced(fold.state.runs, index, { ...run, ended: timed, state, reason });
  const next = withState(fold, { runs, openRun: openRuns.at(-1) ?? null });
  return endedIfOpen(
    withMemory(next, { openRuns }),
    'testPoint',
    labelOf(run.point, run.run),
    timed,
  );
}

function openRunsOf(fold: Fold): readonly (readonly [index: number, run: Run])[] {
  return fold.memory.openRuns.flatMap((index) => {
    const run = itemAt(fold.state.runs, index);
    return run === undefined ? [] : [[index, run] as const];
  });
}

/** How a run is named in an interval's label and a doubt's subject. */
function labelOf(point: string, run: number): string {
  return `${point} run ${run}`;
}
