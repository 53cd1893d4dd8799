import type { FlightView } from '../../../record/flight.ts';
import { items } from '../../../record/trail.ts';
import { panelSpans } from '../timeline/panelSpans.ts';
import type { Span } from '../timeline/model.ts';

/** "64 % of 1 h 40": the part of the time assessed with suction on that a panel was called laminar. Intermittent counts half. */
export function laminarTimes(view: FlightView): ReadonlyMap<string, string> {
  const until = view.state.lastAt;
  if (until === null) {
    return new Map();
  }
  const on = suctionOnSpans(view);
  const spansByPanel = new Map<string, Span[]>();
  for (const span of panelSpans(view, (timed) => timed.at, until)) {
    const panel = span.lane.slice('panel:'.length);
    spansByPanel.set(panel, [...(spansByPanel.get(panel) ?? []), span]);
  }
  const words = new Map<string, string>();
  for (const [panel, spans] of spansByPanel) {
    let assessedMs = 0;
    let laminarMs = 0;
    for (const span of spans) {
      const share = { laminar: 1, intermittent: 0.5, turbulent: 0 }[
        span.look === 'laminar' || span.look === 'intermittent' ? span.look : 'turbulent'
      ];
      if (span.look !== 'notAssessed') {
        const overlapMs = on.reduce(
          (total, [from, to]) => total + overlap(span, from, to, until),
          0,
        );
        assessedMs += overlapMs;
        laminarMs += share * overlapMs;
      }
    }
    if (assessedMs > 0) {
      words.set(
        panel,
        `${Math.round((100 * laminarMs) / assessedMs)} % of ${Math.round(assessedMs / 60_000)} min`,
      );
    }
  }
  return words;
}

function suctionOnSpans(view: FlightView): readonly (readonly [number, number])[] {
  const spans: [number, number][] = [];
  let since: number | null = null;
  const wings = { L: false, R: false };
  for (const change of items(view.state.suctionChanges)) {
    for (const wing of change.wings) {
      wings[wing] = change.what !== 'off';
    }
    const isOn = wings.L || wings.R;
    if (isOn && since === null) {
      since = change.at;
    } else if (!isOn && since !== null) {
      spans.push([since, change.at]);
      since = null;
    }
  }
  return since === null ? spans : [...spans, [since, view.state.lastAt ?? since]];
}

function overlap(span: Span, from: number, to: number, until: number): number {
  return Math.max(0, Math.min(span.to ?? until, to) - Math.max(span.from, from));
}
