import type { EntryId } from '../../../record/brand.ts';
import { boxOf, laneAt, yOfValue, type ChartLayout } from './laneLayout.ts';
import type { Mark, TimelineModel } from './model.ts';
import { timeAt, xOf, type TimeScale } from './timeScale.ts';

export interface Place {
  readonly xPx: number;
  readonly yPx: number;
}

/** Where the mark stands in the chart, from its left and top edge. */
export function placeOf(
  mark: Mark,
  { model, layout, scale }: { model: TimelineModel; layout: ChartLayout; scale: TimeScale },
): Place | null {
  const box = boxOf(layout, mark.lane);
  if (box === undefined) {
    return null;
  }
  const yPx =
    mark.lane === 'fuel' && mark.level !== null
      ? yOfValue(box, mark.level, model.fuel)
      : box.topPx + box.heightPx / 2;
  return { xPx: layout.namesPx + xOf(scale, mark.at), yPx };
}

/** First index whose mark is not before `at`; the number of marks when there is none. */
export function firstMarkFrom(marks: readonly Mark[], at: number): number {
  let low = 0;
  let high = marks.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    const mark = marks[middle];
    if (mark !== undefined && mark.at < at) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low;
}

/**
 * The mark meant by a touch: the nearest one within `reachPx`, sideways distance counting half in the lane that was
 * touched; else the bar under the finger, by the entry that opened it.
 */
export function markAt(
  touch: Place,
  reachPx: number,
  chart: { model: TimelineModel; layout: ChartLayout; scale: TimeScale },
): EntryId | null {
  const { model, layout, scale } = chart;
  const xPx = touch.xPx - layout.namesPx;
  const touched = laneAt(layout, touch.yPx);
  let best: EntryId | null = null;
  let bestPx = reachPx;
  const until = timeAt(scale, xPx + reachPx);
  for (
    let index = firstMarkFrom(model.marks, timeAt(scale, xPx - reachPx));
    index < model.marks.length;
    index += 1
  ) {
    const mark = model.marks[index];
    if (mark === undefined || mark.at > until) {
      break;
    }
    const place = placeOf(mark, chart);
    if (place !== null) {
      const awayPx = Math.hypot(
        place.xPx - touch.xPx,
        touched?.lane.id === mark.lane ? (place.yPx - touch.yPx) / 2 : 2 * (place.yPx - touch.yPx),
      );
      if (awayPx < bestPx) {
        best = mark.entry;
        bestPx = awayPx;
      }
    }
  }
  return best ?? barAt(touch, chart);
}

function barAt(
  touch: Place,
  { model, layout, scale }: { model: TimelineModel; layout: ChartLayout; scale: TimeScale },
): EntryId | null {
  const at = timeAt(scale, touch.xPx - layout.namesPx);
  const lane = laneAt(layout, touch.yPx)?.lane.id;
  const bar = model.spans.findLast(
    (span) => span.lane === lane && span.from <= at && (span.to === null || span.to >= at),
  );
  return bar?.opensWith ?? null;
}
