import type { EpochMs } from '../../record/brand.ts';
import type { FlightState, Run } from '../../record/flightState.ts';
import { items } from '../../record/trail.ts';
import { isSuctionOnRun, settingOfRun, type Settings } from './settings.ts';
import { meetsMoisture } from './watch.ts';

/** A suction-on run that met no moisture. */
export interface ClearRun {
  readonly run: Run;
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly setting: string;
}

/** Finished or broken off, in the order in which they were flown; an open run is not over yet. */
export function clearRuns(state: FlightState, settings: Settings): readonly ClearRun[] {
  const moisture = [...items(state.intervals)].filter(({ kind }) => kind === 'moisture');
  return [...items(state.runs)].flatMap((run) => {
    if (run.ended === null || !isSuctionOnRun(settings, run)) return [];
    const [from, to] = [run.started.at, run.ended.at];
    if (meetsMoisture(moisture, from, to)) return [];
    return [{ run, from, to, setting: settingOfRun(settings, run) }];
  });
}
