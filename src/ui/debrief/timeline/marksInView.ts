import type { EntryId } from '../../../record/brand.ts';
import { firstMarkFrom } from './hitTest.ts';
import type { Mark, TimelineModel } from './model.ts';
import { timeAt, xOf, type TimeScale } from './timeScale.ts';

/** The marks of one lane in order of time; those with words once more by themselves. */
interface LaneMarks {
  readonly all: readonly Mark[];
  readonly withWords: readonly Mark[];
}

/**
 * What can be told apart in the window: of all marks of a lane that fall on one column of pixels the first, and the
 * first with words. The cost grows with the width, not with the flight.
 */
export function marksInView(model: TimelineModel, scale: TimeScale): readonly Mark[] {
  return [...indexOf(model).lanes.values()].flatMap(({ all, withWords }) => {
    const first = columnFirsts(all, scale);
    const known = new Set(first);
    const speaking = columnFirsts(withWords, scale).filter((mark) => !known.has(mark));
    return speaking.length === 0
      ? first
      : [...first, ...speaking].toSorted((one, other) => one.at - other.at);
  });
}

function columnFirsts(marks: readonly Mark[], scale: TimeScale): readonly Mark[] {
  const firsts: Mark[] = [];
  let index = firstMarkFrom(marks, scale.window.from);
  for (let mark = marks[index]; mark !== undefined; mark = marks[index]) {
    if (mark.at > scale.window.to) {
      break;
    }
    firsts.push(mark);
    const nextColumnAt = timeAt(scale, Math.round(xOf(scale, mark.at)) + 0.5);
    index = firstFrom(marks, nextColumnAt, index + 1);
  }
  return firsts;
}

/** As `firstMarkFrom`, from an index on that is likely near: strides that double, then halves between the last two. */
function firstFrom(marks: readonly Mark[], at: number, from: number): number {
  let stride = 1;
  let high = from;
  while ((marks[high]?.at ?? Infinity) < at) {
    high += stride;
    stride *= 2;
  }
  let low = Math.max(from, high - stride / 2);
  high = Math.min(high, marks.length);
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((marks[middle]?.at ?? Infinity) < at) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low;
}

/** The mark of an entry, however many there are. */
export function markOf(model: TimelineModel, entry: EntryId | null): Mark | undefined {
  return entry === null ? undefined : indexOf(model).byEntry.get(entry);
}

interface MarkIndex {
  readonly lanes: ReadonlyMap<string, LaneMarks>;
  readonly byEntry: ReadonlyMap<EntryId, Mark>;
}

/** A model never changes, so it is indexed once and not at each step of a zoom. */
const indexes = new WeakMap<TimelineModel, MarkIndex>();

function indexOf(model: TimelineModel): MarkIndex {
  const known = indexes.get(model);
  if (known !== undefined) {
    return known;
  }
  const lanes = new Map<string, { all: Mark[]; withWords: Mark[] }>();
  const byEntry = new Map<EntryId, Mark>();
  for (const mark of model.marks) {
    byEntry.set(mark.entry, mark);
    const lane = lanes.get(mark.lane) ?? { all: [], withWords: [] };
    lanes.set(mark.lane, lane);
    lane.all.push(mark);
    if (mark.words !== '') {
      lane.withWords.push(mark);
    }
  }
  const made = { lanes, byEntry };
  indexes.set(model, made);
  return made;
}
