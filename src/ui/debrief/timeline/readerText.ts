import type { FlightView } from '../../../record/flight.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { entryWords } from '../../../record/lang.ts';
import type { AxisTime } from '../axisTime.ts';
import { doubtOf, isBackDated, isQueried } from '../standing.ts';
import { spokenLength } from '../timeWords.ts';
import { laneName } from './lanes.ts';
import type { Mark, Span, TimelineModel } from './model.ts';

/** Spans by the entry that opens or closes them, so that an entry can say how long its interval lasted. */
export function spansByEntry(model: TimelineModel): ReadonlyMap<string, readonly Span[]> {
  const found = new Map<string, Span[]>();
  for (const span of model.spans) {
    for (const entry of [span.opensWith, span.closesWith]) {
      if (entry !== null && !span.lane.startsWith('panel:')) {
        const spans = found.get(entry) ?? [];
        spans.push(span);
        found.set(entry, spans);
      }
    }
  }
  return found;
}

/** "13 42 07 Zulu, Moisture, Cloud left M1, closed, 4 minutes 12 seconds, back-dated plus or minus 30 seconds". */
export function readerText(
  mark: Mark,
  standing: StandingEntry,
  view: FlightView,
  spans: readonly Span[],
  axis: AxisTime,
): string {
  const { sheet } = view.state;
  const parts = [
    axis.spoken(mark.at),
    laneName(mark.lane),
    entryWords(standing.effective, sheet),
    ...spans.map((span) => spanWords(span)),
  ];
  if (mark.cause !== null) {
    parts.push(`cause decided: ${mark.cause}`);
  }
  if (standing.standing === 'unconfirmed') {
    parts.push('unconfirmed');
  }
  if (isQueried(standing)) {
    parts.push('queried');
  }
  if (standing.amendedBy.length > 0) {
    parts.push('amended');
  }
  const doubtS = doubtOf(standing, sheet);
  if (doubtS !== null && (standing.late || isBackDated(standing))) {
    const how = standing.late ? 'late' : 'back-dated';
    parts.push(`${how} plus or minus ${spokenLength(doubtS * 1000)}`);
  }
  return parts.join(', ');
}

function spanWords(span: Span): string {
  return span.to === null ? 'open, never closed' : `closed, ${spokenLength(span.to - span.from)}`;
}

/** The one sentence that stands for the picture. */
export function chartSummary(model: TimelineModel, view: FlightView, windowWords: string): string {
  const open = model.spans.filter((span) => span.to === null).length;
  const title = view.state.title === '' ? 'Flight' : view.state.title;
  const openWords =
    open === 0
      ? 'every interval closed'
      : open === 1
        ? '1 interval open'
        : `${open} intervals open`;
  return `${title}: timeline ${windowWords}, ${model.lanes.length} lanes, ${model.marks.length} entries, ${openWords}.`;
}
