import { useEffect, useState } from 'react';
import { recorderSteps, type RecordedPoint } from '../../../analysis/recorder/recorderResults.ts';
import type { PointResult } from '../../../analysis/results.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { OpenedRecorder } from './useRecorder.ts';

/** Results and what they were worked out from: others may be under way. */
interface Found {
  readonly scribes: readonly PointResult[];
  readonly offset: OpenedRecorder['offset'];
  readonly points: readonly RecordedPoint[];
}

const NONE: readonly RecordedPoint[] = [];

/** Each run from the scribe and from the recorder; worked out a run at a time, so that a touch never waits for all. */
export function useRecordedPoints(
  view: FlightView,
  scribes: readonly PointResult[],
  { read, offset }: Pick<OpenedRecorder, 'read' | 'offset'>,
): readonly RecordedPoint[] {
  const [found, setFound] = useState<Found | null>(null);
  const { even } = read;
  useEffect(() => {
    if (even === null || offset?.kind !== 'offset') return;
    const steps = recorderSteps(view, scribes, even, offset);
    let next: ReturnType<typeof setTimeout>;
    const go = (): void => {
      const { done, value } = steps.next();
      if (done === true) setFound({ scribes, offset, points: value });
      else next = setTimeout(go, 0);
    };
    next = setTimeout(go, 0);
    return () => clearTimeout(next);
  }, [view, scribes, even, offset]);
  return found?.scribes === scribes && found.offset === offset ? found.points : NONE;
}
