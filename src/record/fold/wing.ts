import type { EntryOf, KnownEntry, WingProbes } from '../entry.ts';
import type { PanelNow, ProbeNow, Timed, WingCall } from '../flightState.ts';
import type { PanelState } from '../kinds.ts';
import { type Wing, WINGS } from '../sheet.ts';
import { appended } from '../trail.ts';
import { STATE_WORDS } from '../entryPhrases.ts';
import { doubted, type Fold, withMemory, withState } from './fold.ts';

/** A person called the panel as a whole; it holds until probes of that wing are called anew. */
export function panelStateCalled(
  fold: Fold,
  entry: EntryOf<'panelStateCalled'>,
  timed: Timed,
): Fold {
  const { panel, state } = entry.body;
  const called = withPanels(fold, [panel], state, timed, entry);
  const wing = fold.memory.sheet.panelWing.get(panel);
  return wing === undefined ? called : noted(called, wing, entry, null, false, timed);
}

/** Laminar flow gained or lost: probes where some are named, otherwise the panels named. */
export function flowChanged(
  fold: Fold,
  entry: EntryOf<'laminarGained' | 'laminarLost'>,
  timed: Timed,
): Fold {
  const { wings = {}, panels = [], byCommand = false } = entry.body;
  const state = entry.kind === 'laminarGained' ? 'laminar' : 'turbulent';
  return WINGS.reduce(
    (before, wing) => {
      const called = wings[wing] ?? null;
      const own = panels.filter((panel) => before.memory.sheet.panelWing.get(panel) === wing);
      if (called === null && own.length === 0) {
        return before;
      }
      const states = called === null ? null : statesCalled(before, wing, called);
      const next =
        states === null
          ? withPanels(before, own, state, timed, entry)
          : withProbes(before, wing, states, timed, entry);
      return noted(next, wing, entry, called, byCommand, timed);
    },
    askedForPanels(fold, panels, timed),
  );
}

export function probesRead(fold: Fold, entry: EntryOf<'probesRead'>, timed: Timed): Fold {
  const { wings = {} } = entry.body;
  return WINGS.reduce((before, wing) => {
    const called = wings[wing];
    if (called === undefined) {
      return before;
    }
    const states = statesCalled(before, wing, called);
    const next = states === null ? before : withProbes(before, wing, states, timed, entry);
    return noted(next, wing, entry, called, false, timed);
  }, fold);
}

/**
 * State of each probe that the call speaks of: the turbulent ones named, then all others are laminar, or the other way
 * round, less the intermittent ones. A bare count says which only when it is none or all. `null` when nothing follows.
 */
function statesCalled(
  fold: Fold,
  wing: Wing,
  called: WingProbes,
): ReadonlyMap<string, PanelState> | null {
  const { probes } = fold.memory.sheet.wings[wing];
  const { turbulentProbes, laminarProbes, intermittentProbes = [], laminarCount, of } = called;
  const states = new Map<string, PanelState>();
  const others = othersCalled(called, probes.length);
  if (others !== null) {
    probes.forEach((probe) => states.set(probe, others));
  }
  laminarProbes?.forEach((probe) => states.set(probe, 'laminar'));
  turbulentProbes?.forEach((probe) => states.set(probe, 'turbulent'));
  intermittentProbes.forEach((probe) => states.set(probe, 'intermittent'));
  const says = states.size > 0 || laminarCount === 0 || (laminarCount === of && of > 0);
  return says ? states : null;
}

/** State of the probes that the call does not name; `null` when it says nothing about them. */
function othersCalled(called: WingProbes, probeCount: number): PanelState | null {
  const { turbulentProbes, laminarProbes, laminarCount, of } = called;
  if (turbulentProbes !== undefined && laminarProbes !== undefined) {
    return 'notAssessed';
  }
  if (turbulentProbes !== undefined) {
    return 'laminar';
  }
  if (laminarProbes !== undefined) {
    return 'turbulent';
  }
  if (called.intermittentProbes !== undefined || of !== probeCount) {
    return null;
  }
  if (laminarCount === 0) {
    return 'turbulent';
  }
  return laminarCount === of ? 'laminar' : null;
}

/** Sets the probes and works every panel of the wing out of them anew. */
function withProbes(
  fold: Fold,
  wing: Wing,
  states: ReadonlyMap<string, PanelState>,
  timed: Timed,
  entry: KnownEntry,
): Fold {
  const parts = fold.memory.sheet.wings[wing];
  const probes: Record<string, ProbeNow> = { ...fold.state.probes };
  // One object for each state, not for each probe: a call speaks of dozens of probes and of three states.
  const now = new Map<PanelState, ProbeNow>();
  let asked = fold;
  for (const [probe, state] of states) {
    if (parts.probeNames.has(probe)) {
      const same = now.get(state) ?? { ...timed, state };
      now.set(state, same);
      probes[probe] = same;
    } else {
      asked = doubted(asked, timed, 'unknownProbe', probe);
    }
  }
  const panels: Record<string, PanelNow> = { ...fold.state.panels };
  for (const panel of parts.panels) {
    const state = stateOfPanel(parts.probesOf[panel] ?? [], probes);
    if (state !== null) {
      panels[panel] = { ...timed, state, from: 'probes' };
      if (parts.probesOf[panel]?.some((probe) => states.has(probe)) === true) {
        asked = secondLook(asked, panel, state, timed, entry);
      }
    }
  }
  return withState(asked, { probes, panels });
}

/** All alike gives that state, anything mixed is intermittent; probes nobody assessed do not count. */
function stateOfPanel(
  names: readonly string[],
  probes: Readonly<Record<string, ProbeNow>>,
): PanelState | null {
  let common: PanelState | null = null;
  for (const name of names) {
    const state = probes[name]?.state;
    if (state !== undefined && state !== 'notAssessed' && state !== common) {
      if (common !== null) {
        return 'intermittent';
      }
      common = state;
    }
  }
  return common;
}

function withPanels(
  fold: Fold,
  called: readonly string[],
  state: PanelState,
  timed: Timed,
  entry: KnownEntry,
): Fold {
  const panels = { ...fold.state.panels };
  let asked = fold;
  for (const panel of called) {
    panels[panel] = { ...timed, state, from: 'panel' };
    asked = secondLook(asked, panel, state, timed, entry);
  }
  return askedForPanels(withState(asked, { panels }), called, timed);
}

/** Two calls further apart than this may both be right: the flow may have changed. Common practice, no source. */
const SAME_LOOK_MS = 30_000;

/**
 * Keeps each recorder's newest call on a panel beside the others'. The panel shows the newest of all; where two
 * recorders differ about what is one look in time, both stand and the record asks.
 */
function secondLook(
  fold: Fold,
  panel: string,
  state: PanelState,
  timed: Timed,
  entry: KnownEntry,
): Fold {
  const calls = fold.memory.panelCalls[panel] ?? {};
  const own = { state, at: timed.at, author: entry.author };
  const kept = withMemory(fold, {
    panelCalls: { ...fold.memory.panelCalls, [panel]: { ...calls, [entry.rec]: own } },
  });
  return Object.entries(calls)
    .filter(
      ([rec, call]) =>
        rec !== entry.rec && call.state !== state && timed.at - call.at <= SAME_LOOK_MS,
    )
    .reduce(
      (before, [, call]) =>
        doubted(
          before,
          timed,
          'recordersDisagree',
          `${panel} ${STATE_WORDS[call.state]} by ${call.author}, ${STATE_WORDS[state]} by ${entry.author}`,
        ),
      kept,
    );
}

export function askedForPanels(fold: Fold, panels: readonly string[], timed: Timed): Fold {
  return panels
    .filter((panel) => !fold.memory.sheet.panelWing.has(panel))
    .reduce((before, panel) => doubted(before, timed, 'unknownPanel', panel), fold);
}

function noted(
  fold: Fold,
  wing: Wing,
  entry: KnownEntry,
  called: WingProbes | null,
  byCommand: boolean,
  timed: Timed,
): Fold {
  const parts = fold.memory.sheet.wings[wing];
  const call: WingCall = {
    ...timed,
    wing,
    entryKind: entry.kind,
    byCommand,
    called,
    probes: statesNow(parts.probes, fold.state.probes),
    panels: statesNow(parts.panels, fold.state.panels),
  };
  return withState(fold, { wingCalls: appended(fold.state.wingCalls, call) });
}

function statesNow(
  names: readonly string[],
  now: Readonly<Record<string, { readonly state: PanelState }>>,
): Readonly<Record<string, PanelState>> {
  const states: Record<string, PanelState> = {};
  for (const name of names) {
    states[name] = now[name]?.state ?? 'notAssessed';
  }
  return states;
}
