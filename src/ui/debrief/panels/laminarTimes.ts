import type { FlightView } from '../../../record/flight.ts';
import { items } from '../../../record/trail.ts';
import { panelSpans } from '../timeline/panelSpans.ts';
import type { Span } from '../timeline/model.ts';

/** "64 % of 104 min": the part of the time assessed with suction on that a panel was called laminar. */
export function laminarTimes(view: FlightView): ReadonlyMap<string, string> {
  return new Map(
    [...laminarShares(view)].map(([panel, { fraction, assessedMs }]) => [
      panel,
      `${Math.round(100 * fraction)} % of ${Math.round(assessedMs / 60_000)} min`,
    ]),
  );
}

/** Share of the time assessed with suction on; intermittent counts half. A panel that was never assessed is absent. */
export function laminarShares(
  view: FlightView,
): ReadonlyMap<string, { readonly fraction: number; readonly assessedMs: number }> {
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
  const shares = new Map<string, { readonly fraction: number; readonly assessedMs: number }>();
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
      shares.set(panel, { fraction: laminarMs / assessedMs, assessedMs });
    }
  }
  return shares;
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
