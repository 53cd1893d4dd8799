import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import type { Measure } from '../../record/measure.ts';
import type { FlightSheet, Panel, Wing } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';
import { measureSi } from '../calibrate.ts';
import { laminarOf } from '../laminar.ts';
import { secondsOf, type Stretch } from './stretches.ts';

/** A wing's area by state from one call on it to the next; unknown area is neither. */
interface Held {
  readonly from: EpochMs;
  readonly by: EntryId;
  readonly laminarM2: number;
  readonly observedM2: number;
}

/** What was called over the flight, and the area that the probes and panels in question stand for. */
export interface HeldArea {
  readonly areaM2: number;
  readonly held: readonly Held[];
}

/** Area times time, the measure in which shares by area and time are taken. */
export interface AreaTime {
  readonly laminarM2S: number;
  readonly observedM2S: number;
  readonly wholeM2S: number;
  readonly by: readonly EntryId[];
}

export interface HeldWing extends HeldArea {
  readonly wing: Wing;
}

export function heldWing(state: FlightState, sheet: FlightSheet, wing: Wing): HeldWing {
  const probes = sheet.probes.filter((probe) => probe.wing === wing);
  const panels = sheet.panels.filter((panel) => panel.wing === wing);
  return { wing, ...heldArea(state, { ...sheet, probes, panels }, wing) };
}

export function heldPanel(state: FlightState, sheet: FlightSheet, panel: Panel): HeldArea {
  const probes = sheet.probes.filter((probe) => probe.panel === panel.id);
  return heldArea(state, { ...sheet, probes, panels: [panel] }, panel.wing);
}

/** @param part the flight sheet with nothing on it but the probes and panels in question */
function heldArea(state: FlightState, part: FlightSheet, wing: Wing): HeldArea {
  const areaM2 = tappedAreaM2(part);
  const held: Held[] = [];
  for (const call of items(state.wingCalls)) {
    if (call.wing !== wing) continue;
    const share = laminarOf(part, call.probes, call.panels);
    const observedM2 = share.kind === 'laminar' ? share.observedFraction * areaM2 : 0;
    const laminarM2 = share.kind === 'laminar' ? share.byAreaFraction * observedM2 : 0;
    held.push({ from: call.at, by: call.by, laminarM2, observedM2 });
  }
  return { areaM2, held: held.sort((a, b) => a.from - b.from) };
}

/** Each state held until the next call on the wing, over these times. */
export function areaTimeOver({ areaM2, held }: HeldArea, stretches: readonly Stretch[]): AreaTime {
  let laminarM2S = 0;
  let observedM2S = 0;
  const by = new Set<EntryId>();
  for (const { from, to } of stretches) {
    for (const [place, now] of held.entries()) {
      const until = held[place + 1]?.from ?? to;
      const start = now.from > from ? now.from : from;
      const end = until < to ? until : to;
      if (end <= start) continue;
      laminarM2S += (now.laminarM2 * (end - start)) / 1000;
      observedM2S += (now.observedM2 * (end - start)) / 1000;
      by.add(now.by);
    }
  }
  return { laminarM2S, observedM2S, wholeM2S: areaM2 * secondsOf(stretches), by: [...by] };
}

/** Serviceable probes for their areas, panels without one for their own. */
function tappedAreaM2({ probes, panels }: FlightSheet): number {
  const serviceable = probes.filter((probe) => probe.serviceable);
  const tapped = new Set(serviceable.map(({ panel }) => panel));
  const bare = panels.filter(({ id }) => !tapped.has(id));
  return [...serviceable, ...bare].reduce((total, { area }) => total + areaM2Of(area), 0);
}

export function areaM2Of(area: Measure): number {
  return Math.max(0, measureSi(area, 'area') ?? 0);
}
