import type { FlightView } from '../../record/flight.ts';
import type { FlightState, Interval, IntervalKind } from '../../record/flightState.ts';
import type { Body } from '../../record/entry.ts';
import type { KnownKind } from '../../record/kinds.ts';
import type { FlightSheet, Wing } from '../../record/sheet.ts';
import { items, itemsBackwards } from '../../record/trail.ts';
import type { EpochMs } from '../../record/brand.ts';
import type { NotSure } from '../kit/touchRules.ts';

/** What a touch writes: kind and body, the stamp apart. */
export type Written = {
  readonly [Kind in KnownKind]: { readonly kind: Kind; readonly body: Body<Kind> };
}[KnownKind];

/** What an act may look at when it is touched. */
export interface Scene {
  readonly view: FlightView;
  readonly state: FlightState;
  readonly sheet: FlightSheet | null;
  /** The card that comes next, by order of the cards and what was flown. */
  readonly nextPoint: string | null;
  /** The wing that this tablet's role looks after; null for the scribe, who looks after both. */
  readonly wing: Wing | null;
  readonly at: EpochMs;
}

/** Carried by every event: that its touch may not have been meant. */
export interface Mark {
  readonly unconfirmed?: NotSure;
}

/** One event of the vocabulary: what its key says, and what a touch writes. */
export interface Act {
  readonly id: string;
  /** At most 7 letters, so that it stands in one line on the smallest tile. */
  readonly label: string;
  readonly verb: string;
  readonly write: (scene: Scene, mark: Mark) => Written;
}

export function openInterval(state: FlightState, kind: IntervalKind): Interval | null {
  for (const interval of itemsBackwards(state.intervals)) {
    if (interval.kind === kind && interval.closed === null) {
      return interval;
    }
  }
  return null;
}

function countOf(state: FlightState, kind: IntervalKind): number {
  return [...items(state.intervals)].filter((interval) => interval.kind === kind).length;
}

/** M1, M2, ...: what the next encounter will be called. */
export function nextEncounter(state: FlightState): string {
  return `M${countOf(state, 'moisture') + 1}`;
}

/** S-01, S-02, ...: what the next sample will be called unless the scribe says otherwise. */
export function nextSample(state: FlightState): string {
  const used = new Set([...items(state.samples)].map((sample) => sample.sample));
  let number = state.samples.length + 1;
  while (used.has(sampleName(number))) {
    number += 1;
  }
  return sampleName(number);
}

export function sampleName(number: number): string {
  return `S-${String(number).padStart(2, '0')}`;
}

export function openSample(state: FlightState): string | null {
  for (const sample of itemsBackwards(state.samples)) {
    if (sample.closed === null) {
      return sample.sample;
    }
  }
  return null;
}

/** Point and run that is open, else the newest one, else the next card. */
export function pointAtHand(scene: Scene): { readonly point: string; readonly run: number } {
  const { runs, openRun } = scene.state;
  let newest: { readonly point: string; readonly run: number } | null = null;
  let index = runs.length;
  for (const run of itemsBackwards(runs)) {
    index -= 1;
    newest ??= run;
    if (index === openRun) {
      return { point: run.point, run: run.run };
    }
  }
  return newest === null
    ? nextRun(scene, scene.nextPoint ?? 'TP')
    : { point: newest.point, run: newest.run };
}

/** The run number that a new start of this point proposes. */
export function nextRun(
  scene: Scene,
  point: string,
): { readonly point: string; readonly run: number } {
  const flown = [...items(scene.state.runs)].filter((run) => run.point === point);
  return { point, run: Math.max(0, ...flown.map((run) => run.run)) + 1 };
}

/** The clock that the others are compared with. */
export function masterClock(sheet: FlightSheet | null): string {
  const clocks = sheet?.clocks ?? [];
  return (clocks.find((clock) => clock.id === 'master') ?? clocks[0])?.id ?? 'master';
}

export function otherWing(wing: Wing): Wing {
  return wing === 'L' ? 'R' : 'L';
}

export function probesOf(sheet: FlightSheet | null, wing: Wing): readonly string[] {
  return (sheet?.probes ?? [])
    .filter((probe) => probe.wing === wing && probe.form === 'trailingEdgeTotal')
    .map((probe) => probe.id);
}
