import { laterBy } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import { contextOf, readingAt } from '../reading/context.ts';
import { runMean } from '../reading/runMean.ts';
import { expectedOver } from './expectedDrag.ts';
import type { ExpectedDrag } from './expectedResults.ts';

/**
 * What the area called laminar by that reading should take off the drag, in the air of that reading alone: the same as
 * for a run, without looking at any other reading of the flight.
 *
 * @param glance index of the reading, as in `LiveEstimate.glance`
 */
export function expectedLive(view: FlightView, glance: number): ExpectedDrag['expected'] {
  const context = contextOf(view);
  const outcome = context === null ? null : readingAt(context, glance, 'atTheTime');
  if (context === null || outcome === null || outcome.kind === 'missing') {
    return { kind: 'noAnswer', because: 'noUsableReading', entries: [] };
  }
  const { at } = outcome.glance;
  return expectedOver(context, {
    mean: runMean(context.terms, [outcome.reading], null),
    stretch: { from: at, to: laterBy(at, 1) },
    entries: outcome.entries,
  });
}
