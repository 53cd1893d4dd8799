import { useMemo } from 'react';
import { liveHistory } from '../../analysis/liveEstimate.ts';
import type { PointResult } from '../../analysis/results.ts';
import { pointResults } from '../../analysis/testPoints.ts';
import { epochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import { isStruck } from './standing.ts';
import { rowsOf, type Row } from './table/rows.ts';
import { timeBaseOf, type TimeBase } from './timeBase.ts';
import { buildModel } from './timeline/buildModel.ts';
import type { TimelineModel } from './timeline/model.ts';

export interface Debriefed {
  readonly base: TimeBase;
  readonly points: readonly PointResult[];
  readonly model: TimelineModel;
  readonly rows: readonly Row[];
  readonly struckCount: number;
}

/** Everything that Debrief shows of a record, worked out anew when an entry was added and at no other time. */
export function useDebrief(view: FlightView): Debriefed {
  return useMemo(() => {
    const base = timeBaseOf(view.state);
    const points = pointResults(view);
    const estimates = liveHistory(view, epochMs(0));
    return {
      base,
      points,
      model: buildModel({ view, base, estimates, results: points }),
      rows: rowsOf(view, base),
      struckCount: view.standing.filter(isStruck).length,
    };
  }, [view]);
}
