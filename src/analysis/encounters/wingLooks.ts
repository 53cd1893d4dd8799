import type { EntryId } from '../../record/brand.ts';
import type { FlightState, Timed, WingCall } from '../../record/flightState.ts';
import type { PanelState } from '../../record/kinds.ts';
import type { FlightSheet, Wing } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';

/** Probes are counted with probes and panels with panels: a count of one says nothing about the other. */
export type CountedAs = 'probes' | 'panels';

export interface LaminarCount {
  readonly as: CountedAs;
  readonly laminar: number;
  readonly intermittent: number;
  /** Serviceable ones that somebody has called. */
  readonly of: number;
}

/** What one call on a wing says, and what it changed against the call before. */
export interface WingLook extends Timed {
  readonly wing: Wing;
  readonly byCommand: boolean;
  /** Found in a reading of probes, not called as it happened: it may have happened earlier. */
  readonly inReading: boolean;
  /** Null where the call did not speak of them. */
  readonly probes: LaminarCount | null;
  readonly panels: LaminarCount | null;
  readonly lostProbes: readonly string[];
  readonly lostPanels: readonly string[];
  readonly isLoss: boolean;
  readonly isGain: boolean;
  /** Of every probe and panel after the call. */
  readonly states: Readonly<Record<CountedAs, Readonly<Record<string, PanelState>>>>;
}

/** Every call on this wing, in the order in which they happened. */
export function wingLooks(
  { wingCalls }: FlightState,
  sheet: FlightSheet,
  wing: Wing,
): readonly WingLook[] {
  const unserviceable = new Set(
    sheet.probes.filter((probe) => !probe.serviceable).map((probe) => probe.id),
  );
  const looks: WingLook[] = [];
  let before: Counted = NOTHING;
  for (const call of items(wingCalls)) {
    if (call.wing !== wing) continue;
    const now = counted(call, unserviceable);
    looks.push(lookOf(call, before, now));
    before = { ...now, probes: now.probes ?? before.probes, panels: now.panels ?? before.panels };
  }
  return looks;
}

/** The newest count of this kind up to and with the look at `index`. */
export function countBy(
  looks: readonly WingLook[],
  index: number,
  as: CountedAs,
): { readonly count: LaminarCount; readonly by: EntryId } | null {
  for (let at = index; at >= 0; at -= 1) {
    const look = looks[at];
    const count = look?.[as];
    if (look !== undefined && count) return { count, by: look.by };
  }
  return null;
}

/** The newest count by then, of probes where there is one, else of panels. */
export function countSpoken(looks: readonly WingLook[], index: number): ReturnType<typeof countBy> {
  return countBy(looks, index, 'probes') ?? countBy(looks, index, 'panels');
}

/** Whether two counts can be held against each other at all. */
export function isComparable(a: LaminarCount, b: LaminarCount): boolean {
  return a.as === b.as && a.of === b.of;
}

interface Counted {
  readonly probes: LaminarCount | null;
  readonly panels: LaminarCount | null;
  readonly probeStates: States;
  readonly panelStates: States;
}

const NOTHING: Counted = { probes: null, panels: null, probeStates: {}, panelStates: {} };

type States = Readonly<Record<string, PanelState>>;

function counted(call: WingCall, unserviceable: ReadonlySet<string>): Counted {
  const probeStates = Object.fromEntries(
    Object.entries(call.probes).filter(([probe]) => !unserviceable.has(probe)),
  );
  const own = { probeStates, panelStates: call.panels };
  if (call.called === null) {
    return { ...own, probes: null, panels: countOf('panels', call.panels) };
  }
  if (saysWhich(call.called, probeStates)) {
    return {
      ...own,
      probes: countOf('probes', probeStates),
      panels: countOf('panels', call.panels),
    };
  }
  const { laminarCount, of } = call.called;
  const probes: LaminarCount | null =
    laminarCount === undefined
      ? null
      : { as: 'probes', laminar: laminarCount, intermittent: 0, of };
  return { ...own, probes, panels: null };
}

/** Whether the states of the probes follow from the call; a bare count tells them only when it is none or all. */
function saysWhich(called: NonNullable<WingCall['called']>, states: States): boolean {
  const { turbulentProbes, laminarProbes, intermittentProbes, laminarCount, of } = called;
  const known = Object.keys(states).length;
  if (known === 0) return false;
  if ((turbulentProbes ?? laminarProbes ?? intermittentProbes) !== undefined) return true;
  const values = Object.values(states);
  return (
    of >= known &&
    ((laminarCount === 0 && values.every((state) => state === 'turbulent')) ||
      (laminarCount === of && values.every((state) => state === 'laminar')))
  );
}

function countOf(as: CountedAs, states: States): LaminarCount | null {
  const assessed = Object.values(states).filter((state) => state !== 'notAssessed');
  if (assessed.length === 0) return null;
  return {
    as,
    laminar: assessed.filter((state) => state === 'laminar').length,
    intermittent: assessed.filter((state) => state === 'intermittent').length,
    of: assessed.length,
  };
}

function lookOf(call: WingCall, before: Counted, now: Counted): WingLook {
  const probes = moved(before.probeStates, now.probeStates);
  const panels = moved(before.panelStates, now.panelStates);
  const count = movedCount(before, now);
  const nothingBefore = before.probes === null && before.panels === null;
  const { at, doubtS, by, wing, byCommand, entryKind } = call;
  return {
    at,
    doubtS,
    by,
    wing,
    byCommand,
    inReading: entryKind === 'probesRead',
    probes: now.probes,
    panels: now.panels,
    lostProbes: probes.lost,
    lostPanels: panels.lost,
    // Of a wing that nobody had called yet, only the words say which way it went.
    isLoss:
      [...probes.lost, ...panels.lost].length > 0 ||
      count < 0 ||
      (nothingBefore && entryKind === 'laminarLost'),
    isGain:
      [...probes.gained, ...panels.gained].length > 0 ||
      count > 0 ||
      (nothingBefore && entryKind === 'laminarGained'),
    states: { probes: now.probeStates, panels: now.panelStates },
  };
}

const RANK: Readonly<Record<PanelState, number | null>> = {
  laminar: 2,
  intermittent: 1,
  turbulent: 0,
  notAssessed: null,
};

function moved(
  before: States,
  now: States,
): { readonly lost: readonly string[]; readonly gained: readonly string[] } {
  const lost: string[] = [];
  const gained: string[] = [];
  for (const [name, state] of Object.entries(now)) {
    const old = RANK[before[name] ?? 'notAssessed'];
    const rank = RANK[state];
    if (old === null || rank === null) continue;
    if (rank < old) lost.push(name);
    if (rank > old) gained.push(name);
  }
  return { lost, gained };
}

/** By the bare counts, where the call gave nothing else. */
function movedCount(before: Counted, now: Counted): number {
  const [old, count] = [before.probes, now.probes];
  if (old === null || count === null || !isComparable(old, count)) return 0;
  return count.laminar - old.laminar;
}
