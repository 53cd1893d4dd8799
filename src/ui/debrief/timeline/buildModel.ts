import { causesOf } from '../../../analysis/encounters/losses.ts';
import type { LiveEstimate, PointResult } from '../../../analysis/results.ts';
import { epochMs, type EntryId, type EpochMs } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { entryWords } from '../../../record/lang.ts';
import { doubtOf, isBackDated, isQueried, isStruck } from '../standing.ts';
import type { TimeBase } from '../timeBase.ts';
import { fuelCurve, reductionCurve } from './curves.ts';
import { firstMarkFrom } from './hitTest.ts';
import { laneOf, lanesOf, type LaneId } from './lanes.ts';
import type { FuelCurve, Mark, TimelineModel } from './model.ts';
import { panelSpans } from './panelSpans.ts';
import { intervalSpans, phaseSpans, shownTimeOf, suctionSpans, type ShownTime } from './spans.ts';
import type { TimeWindow } from './timeScale.ts';

const HALF_DAY_MS = 43_200_000;
const MARGIN_SHARE = 0.02;

/** Everything that the axis shows, worked out once for each change of the record; drawing only places it. */
export function buildModel(of: {
  readonly view: FlightView;
  readonly base: TimeBase;
  readonly estimates: readonly LiveEstimate[];
  readonly results: readonly PointResult[];
}): TimelineModel {
  const { view, base } = of;
  const { sheet } = view.state;
  const fuel = fuelCurve(view, base, of.estimates, of.results);
  const reduction = reductionCurve(view, base, of.estimates);
  const levels = levelsOf(fuel);
  const causes = causesOf(view);
  const marks = view.standing
    .filter((standing) => !isStruck(standing))
    .map((standing): Mark => {
      const lane = laneOf(standing.effective, sheet);
      const cause = causes.get(standing.entry.id)?.at(-1)?.cause ?? null;
      const level = levels.get(standing.entry.id);
      return {
        entry: standing.entry.id,
        seq: standing.entry.seq,
        kind: standing.entry.kind,
        lane,
        at: base.shown(standing.at, standing.entry.rec),
        words: [wordsBeside(standing, lane, view), ...(cause === null ? [] : [`Cause: ${cause}`])]
          .filter((words) => words !== '')
          .join('. '),
        cause,
        hollow:
          standing.standing === 'unconfirmed' || isQueried(standing) || level?.hollow === true,
        late: standing.late,
        whiskerS: isBackDated(standing) ? doubtOf(standing, sheet) : null,
        level: level?.value ?? null,
      };
    })
    .sort((a, b) => a.at - b.at);
  const extent = extentOf(marks);
  const shown = shownTimeOf(view, base);
  const flightSpan = flightSpanOf(marks, anchorOf(view, shown), extent);
  const until = lastOfFlight(view, flightSpan);
  return {
    lanes: lanesOf(sheet),
    marks,
    spans: [
      ...phaseSpans(view, shown, until),
      ...intervalSpans(view, shown),
      ...suctionSpans(view, shown),
      ...panelSpans(view, shown, until),
    ].sort((a, b) => a.from - b.from),
    fuel,
    reduction,
    extent,
    flightSpan,
    airborneSpan: airborneSpanOf(view, shown, flightSpan),
  };
}

function levelsOf(
  fuel: FuelCurve,
): ReadonlyMap<EntryId, { readonly value: number; readonly hollow: boolean }> {
  return new Map(fuel.points.map(({ entry, value, hollow }) => [entry, { value, hollow }]));
}

/** Only what no bar, square or fill says: words of people, and what became of each cover. */
function wordsBeside(standing: StandingEntry, lane: LaneId, view: FlightView): string {
  const { effective } = standing;
  switch (effective.kind) {
    case 'pilotCommented':
    case 'engineerCalled':
    case 'noted':
      return effective.body.words;
    case 'markMade':
      return effective.body.note ?? 'Mark';
    case 'coversReleased':
    case 'stopCalled':
    case 'jokerReached':
    case 'bingoReached':
    case 'ownEventMarked':
    case 'squawkRaised':
    case 'turbulenceEntered':
      return entryWords(effective, view.state.sheet);
    default:
      return lane === 'notes' || effective.kind === 'unrecognised'
        ? ''
        : (effective.body.note ?? '');
  }
}

function extentOf(marks: readonly Mark[]): TimeWindow {
  const first = marks[0]?.at ?? epochMs(0);
  const last = marks.at(-1)?.at ?? epochMs(first + 60_000);
  return withMargin(first, last);
}

/** The marks about the flight itself, up to the first silence of half a day on either side. */
function flightSpanOf(
  marks: readonly Mark[],
  anchor: EpochMs | null,
  extent: TimeWindow,
): TimeWindow {
  let first = anchor === null ? 0 : Math.min(firstMarkFrom(marks, anchor), marks.length - 1);
  let last = first;
  const isNear = (a: Mark | undefined, b: Mark | undefined): boolean =>
    a !== undefined && b !== undefined && b.at - a.at <= HALF_DAY_MS;
  while (isNear(marks[first - 1], marks[first])) {
    first -= 1;
  }
  while (isNear(marks[last], marks[last + 1])) {
    last += 1;
  }
  const [from, to] = [marks[first]?.at, marks[last]?.at];
  return from === undefined || to === undefined ? extent : withMargin(from, to);
}

/** An instant that surely lies in the flight. */
function anchorOf(view: FlightView, shown: ShownTime): EpochMs | null {
  const { blocksOff, takeOffRoll, liftOff } = view.state.milestones;
  const moment = liftOff ?? takeOffRoll ?? blocksOff;
  return moment === undefined ? view.state.openedAt : shown(moment);
}

function withMargin(first: EpochMs, last: EpochMs): TimeWindow {
  const marginMs = Math.max(30_000, Math.round(MARGIN_SHARE * (last - first)));
  return { from: epochMs(first - marginMs), to: epochMs(last + marginMs) };
}

function airborneSpanOf(view: FlightView, shown: ShownTime, flightSpan: TimeWindow): TimeWindow {
  const { blocksOff, takeOffRoll, liftOff, touchdown, blocksOn } = view.state.milestones;
  const first = blocksOff ?? takeOffRoll ?? liftOff;
  const last = blocksOn ?? touchdown;
  if (first === undefined) {
    return flightSpan;
  }
  const to = last === undefined ? flightSpan.to : shown(last);
  return to > shown(first) ? withMargin(shown(first), to) : flightSpan;
}

/** A state holds until the aircraft stood still again; in the air, until the last entry. */
function lastOfFlight(view: FlightView, flightSpan: TimeWindow): EpochMs {
  const { blocksOn, touchdown } = view.state.milestones;
  const end = touchdown ?? blocksOn;
  return end === undefined ? flightSpan.to : end.at;
}
