import type { KnownEntry, WingProbes } from '../../record/entry.ts';
import type { FlightState } from '../../record/flightState.ts';
import type { PanelState } from '../../record/kinds.ts';
import type { FlightSheet, Wing } from '../../record/sheet.ts';
import { probesOf } from './act.ts';

/** The states of a wing's probes while they are being named. */
export type ProbeStates = Readonly<Record<string, PanelState>>;

/** Where naming starts: what the entry says already, else what stands now. */
export function startStates(
  sheet: FlightSheet | null,
  state: FlightState,
  entry: KnownEntry | null,
  wing: Wing,
): ProbeStates {
  const said = wingsOf(entry)?.[wing];
  return Object.fromEntries(
    probesOf(sheet, wing).map((id) => [
      id,
      said === undefined ? (state.probes[id]?.state ?? 'notAssessed') : saidState(said, id),
    ]),
  );
}

export function wingsOf(
  entry: KnownEntry | null,
): Readonly<Partial<Record<Wing, WingProbes>>> | undefined {
  return entry?.kind === 'laminarGained' ||
    entry?.kind === 'laminarLost' ||
    entry?.kind === 'probesRead'
    ? entry.body.wings
    : undefined;
}

function saidState(said: WingProbes, id: string): PanelState {
  if (said.intermittentProbes?.includes(id) === true) {
    return 'intermittent';
  }
  if (said.turbulentProbes !== undefined && said.laminarProbes !== undefined) {
    return said.turbulentProbes.includes(id)
      ? 'turbulent'
      : said.laminarProbes.includes(id)
        ? 'laminar'
        : 'notAssessed';
  }
  if (said.turbulentProbes !== undefined) {
    return said.turbulentProbes.includes(id) ? 'turbulent' : 'laminar';
  }
  if (said.laminarProbes !== undefined) {
    return said.laminarProbes.includes(id) ? 'laminar' : 'turbulent';
  }
  return 'notAssessed';
}

/**
 * A wing's call in the words of the record: the fewer of laminar and turbulent ones by name, an intermittent one in
 * neither count. Where some probe was not assessed both are named, so that it stays so.
 */
export function callOf(states: ProbeStates): WingProbes {
  const ids = Object.keys(states).toSorted();
  const named = (state: PanelState): readonly string[] => ids.filter((id) => states[id] === state);
  const laminar = named('laminar');
  const intermittent = named('intermittent');
  const turbulent = named('turbulent');
  const all = named('notAssessed').length === 0;
  return {
    of: ids.length,
    laminarCount: laminar.length,
    ...((!all || laminar.length < turbulent.length) && { laminarProbes: laminar }),
    ...((!all || laminar.length >= turbulent.length) && { turbulentProbes: turbulent }),
    ...(intermittent.length > 0 && { intermittentProbes: intermittent }),
  };
}
