import type { FlightView } from '../record/flight.ts';
import { items } from '../record/trail.ts';
import { contextOf } from './reading/context.ts';
import { digitSlips } from './suspicion/digitSlips.ts';
import { readingsByRun } from './suspicion/flowReadings.ts';
import type { Suspicion } from './suspicion/suspected.ts';
import { swappedEngines } from './suspicion/swappedEngines.ts';

/** Readings of fuel flow that a wrong engine or a wrong digit would explain, in order of time. */
export function suspicions(view: FlightView): readonly Suspicion[] {
  const context = contextOf(view);
  if (context === null) return [];
  const glances = [...items(view.state.glances)];
  return readingsByRun(context, glances)
    .flatMap((run) => {
      const swapped = swappedEngines(run);
      // A pair that was exchanged explains what each of the two would be suspected of.
      const explained = new Set(swapped.map(({ glance }) => glance));
      return [...swapped, ...digitSlips(run).filter(({ glance }) => !explained.has(glance))];
    })
    .sort((a, b) => a.glance - b.glance);
}
