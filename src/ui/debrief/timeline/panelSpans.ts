import type { EpochMs } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { WingCall } from '../../../record/flightState.ts';
import type { PanelState } from '../../../record/kinds.ts';
import type { Wing } from '../../../record/sheet.ts';
import { items } from '../../../record/trail.ts';
import type { Span } from './model.ts';
import type { ShownTime } from './spans.ts';

/** What each panel was called, from call to call. Before the first call nothing is claimed: not assessed. */
export function panelSpans(view: FlightView, shown: ShownTime, until: EpochMs): readonly Span[] {
  const sheet = view.state.sheet;
  if (sheet === null) {
    return [];
  }
  const callsByWing = new Map<Wing, WingCall[]>();
  for (const call of items(view.state.wingCalls)) {
    const calls = callsByWing.get(call.wing) ?? [];
    calls.push(call);
    callsByWing.set(call.wing, calls);
  }
  const firstSuction = firstSuctionByWing(view, shown);
  return sheet.panels.flatMap((panel) =>
    spansOfPanel({
      panel: panel.id,
      calls: callsByWing.get(panel.wing) ?? [],
      assessedFrom: firstSuction.get(panel.wing) ?? null,
      shown,
      until,
    }),
  );
}

function firstSuctionByWing(view: FlightView, shown: ShownTime): ReadonlyMap<Wing, EpochMs> {
  const first = new Map<Wing, EpochMs>();
  for (const change of items(view.state.suctionChanges)) {
    for (const wing of change.wings) {
      if (!first.has(wing)) {
        first.set(wing, shown(change));
      }
    }
  }
  return first;
}

function spansOfPanel(of: {
  readonly panel: string;
  readonly calls: readonly WingCall[];
  readonly assessedFrom: EpochMs | null;
  readonly shown: ShownTime;
  readonly until: EpochMs;
}): readonly Span[] {
  const spans: Span[] = [];
  let state: PanelState | null = null;
  const begin = (from: EpochMs, next: PanelState, by: Span['opensWith']): void => {
    const before = spans.at(-1);
    if (before !== undefined && state !== null) {
      spans[spans.length - 1] = { ...before, to: from, closesWith: by };
    }
    state = next;
    spans.push({
      lane: `panel:${of.panel}`,
      from,
      to: of.until,
      look: next,
      words: '',
      opensWith: by,
      closesWith: null,
    });
  };
  for (const call of of.calls) {
    const called = call.panels[of.panel] ?? 'notAssessed';
    const at = of.shown(call);
    if (state === null && called === 'notAssessed') {
      continue;
    }
    if (state === null && of.assessedFrom !== null && of.assessedFrom < at) {
      begin(of.assessedFrom, 'notAssessed', null);
    }
    if (called !== state) {
      begin(at, called, call.by);
    }
  }
  return spans.filter((span) => span.to === null || span.to > span.from);
}
