import type { EntryId } from '../../../record/brand.ts';
import type { LaneId } from './lanes.ts';
import type { Mark, TimelineModel } from './model.ts';

export type Step =
  'earlier' | 'later' | 'earlierInLane' | 'laterInLane' | 'laneUp' | 'laneDown' | 'first' | 'last';

/** Where the keyboard goes next: along time, or to the nearest mark of the next lane that has any. */
export function stepFrom(model: TimelineModel, from: EntryId | null, step: Step): Mark | undefined {
  const { marks } = model;
  const index = marks.findIndex(({ entry }) => entry === from);
  const here = marks[index];
  if (step === 'first' || here === undefined) {
    return step === 'last' ? marks.at(-1) : marks[0];
  }
  switch (step) {
    case 'last':
      return marks.at(-1);
    case 'earlier':
      return marks[index - 1] ?? here;
    case 'later':
      return marks[index + 1] ?? here;
    case 'earlierInLane':
      return marks.slice(0, index).findLast(({ lane }) => lane === here.lane) ?? here;
    case 'laterInLane':
      return marks.slice(index + 1).find(({ lane }) => lane === here.lane) ?? here;
    case 'laneUp':
      return nearestInLanes(marks, here, lanesBeyond(model, here.lane, 'up'));
    case 'laneDown':
      return nearestInLanes(marks, here, lanesBeyond(model, here.lane, 'down'));
  }
}

function lanesBeyond(model: TimelineModel, lane: LaneId, way: 'up' | 'down'): readonly LaneId[] {
  const ids = model.lanes.map(({ id }) => id);
  const index = ids.indexOf(lane);
  return way === 'up' ? ids.slice(0, index).reverse() : ids.slice(index + 1);
}

function nearestInLanes(marks: readonly Mark[], here: Mark, lanes: readonly LaneId[]): Mark {
  for (const lane of lanes) {
    let best: Mark | undefined;
    for (const mark of marks) {
      const isNearer =
        best === undefined || Math.abs(mark.at - here.at) < Math.abs(best.at - here.at);
      if (mark.lane === lane && isNearer) {
        best = mark;
      }
    }
    if (best !== undefined) {
      return best;
    }
  }
  return here;
}
