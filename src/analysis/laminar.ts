import { laminarAreaFraction, type FlowState } from '../aero/laminarArea.ts';
import type { EpochMs } from '../record/brand.ts';
import type { FlightState, WingCall } from '../record/flightState.ts';
import type { PanelState } from '../record/kinds.ts';
import type { Measure } from '../record/measure.ts';
import { WINGS, type FlightSheet, type Wing } from '../record/sheet.ts';
import { itemAt } from '../record/trail.ts';
import { measureSi } from './calibrate.ts';

/** Laminar share of the tapped area, over what was seen: unknown is not turbulent. */
export type LaminarNow =
  | {
      readonly kind: 'laminar';
      readonly byAreaFraction: number;
      /** Share of the tapped area that somebody has called. */
      readonly observedFraction: number;
    }
  | { readonly kind: 'notYet'; readonly because: 'noFlightSheet' | 'noTappedArea' | 'notAssessed' };

type States = Readonly<Record<string, PanelState>>;

/** By the newest call on each probe. */
export function laminarFraction(state: FlightState): LaminarNow {
  return laminarOf(state.sheet, statesNow(state.probes), statesNow(state.panels));
}

/** By the calls written for that moment or before it. */
export function laminarAt(state: FlightState, at: EpochMs): LaminarNow {
  const calls = WINGS.map((wing) => callBefore(state, wing, at)).filter((call) => call !== null);
  return laminarOf(
    state.sheet,
    Object.fromEntries(calls.flatMap((call) => Object.entries(call.probes))),
    Object.fromEntries(calls.flatMap((call) => Object.entries(call.panels))),
  );
}

/** The share for given states; a panel counts itself only where no probe stands for it. */
export function laminarOf(sheet: FlightSheet | null, probes: States, panels: States): LaminarNow {
  if (sheet === null) return { kind: 'notYet', because: 'noFlightSheet' };
  const tapped = tappedAreas(sheet, probes, panels);
  const totalM2 = tapped.reduce((total, { areaM2 }) => total + areaM2, 0);
  if (totalM2 === 0) return { kind: 'notYet', because: 'noTappedArea' };
  const seen = tapped.flatMap(({ areaM2, state }) =>
    state === undefined || state === 'notAssessed' ? [] : [{ areaM2, state }],
  );
  const seenM2 = seen.reduce((total, { areaM2 }) => total + areaM2, 0);
  const fraction = laminarAreaFraction(seen);
  if (fraction.kind === 'unavailable') return { kind: 'notYet', because: 'notAssessed' };
  return {
    kind: 'laminar',
    byAreaFraction: fraction.value,
    observedFraction: seenM2 / totalM2,
  };
}

function tappedAreas(
  sheet: FlightSheet,
  probes: States,
  panels: States,
): readonly { readonly areaM2: number; readonly state: FlowState | 'notAssessed' | undefined }[] {
  const serviceable = sheet.probes.filter((probe) => probe.serviceable);
  const withProbe = new Set(serviceable.map((probe) => probe.panel));
  return [
    ...serviceable.map(({ id, area }) => ({
      areaM2: areaM2Of(area),
      state: probes[id],
    })),
    ...sheet.panels
      .filter(({ id }) => !withProbe.has(id))
      .map(({ id, area }) => ({ areaM2: areaM2Of(area), state: panels[id] })),
  ];
}

function areaM2Of(area: Measure): number {
  return Math.max(0, measureSi(area, 'area') ?? 0);
}

function statesNow(held: Readonly<Record<string, { readonly state: PanelState }>>): States {
  return Object.fromEntries(Object.entries(held).map(([id, { state }]) => [id, state]));
}

/** The last call on a wing at or before `at`; calls stand in the order in which they happened. */
function callBefore(state: FlightState, wing: Wing, at: EpochMs): WingCall | null {
  let low = 0;
  let high = state.wingCalls.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    const call = itemAt(state.wingCalls, middle);
    if (call !== undefined && call.at <= at) low = middle + 1;
    else high = middle;
  }
  for (let index = low - 1; index >= 0; index -= 1) {
    const call = itemAt(state.wingCalls, index);
    if (call?.wing === wing) return call;
  }
  return null;
}
