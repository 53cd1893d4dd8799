import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { PanelState } from '../../record/kinds.ts';
import type { FlightSheet, Probe, Wing } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';
import { INTERMITTENT_SHARE } from '../../aero/laminarArea.ts';
import { clearRuns, type ClearRun } from './clearRuns.ts';
import type { Settings } from './settings.ts';
import { sheetsOf } from './surface.ts';

/** One clear-air run as one probe saw it. */
export interface ProbeRun {
  readonly run: ClearRun;
  /** Time mean over the run: laminar 1, intermittent one half, turbulent 0. */
  readonly laminarFraction: number;
  readonly entries: readonly EntryId[];
}

/** The trailing-edge probes that the flight sheet names, each with the clear runs in which it was serviceable and called. */
export interface ProbeRuns {
  readonly probe: Probe;
  readonly runs: readonly ProbeRun[];
  readonly everServiceable: boolean;
}

export function probeRuns(
  view: FlightView,
  sheet: FlightSheet,
  settings: Settings,
): { readonly clearRunCount: number; readonly probes: readonly ProbeRuns[] } {
  const sheets = sheetsOf(view);
  const runs = clearRuns(view.state, settings).map((run) => ({
    run,
    sheet: sheets.findLast(({ at }) => at <= run.from)?.sheet ?? sheet,
  }));
  const heard: Readonly<Record<Wing, readonly Heard[]>> = {
    L: heardOn(view, 'L'),
    R: heardOn(view, 'R'),
  };
  const probes = sheet.probes
    .filter(({ form }) => form === 'trailingEdgeTotal')
    .map((probe) => {
      const serviceable = runs.filter(
        ({ sheet: then }) => then.probes.find(({ id }) => id === probe.id)?.serviceable === true,
      );
      return {
        probe,
        everServiceable: probe.serviceable || serviceable.length > 0,
        runs: serviceable.flatMap(({ run }) => heldIn(heard[probe.wing], probe.id, run) ?? []),
      };
    });
  return { clearRunCount: runs.length, probes };
}

/** States of all probes of a wing from one call on. */
interface Heard {
  readonly at: EpochMs;
  readonly by: EntryId;
  readonly probes: Readonly<Record<string, PanelState>>;
}

function heardOn({ state }: FlightView, wing: Wing): readonly Heard[] {
  return [...items(state.wingCalls)].filter((call) => call.wing === wing);
}

/** @returns null where nobody had called the probe by the end of the run */
function heldIn(heard: readonly Heard[], probe: string, run: ClearRun): ProbeRun | null {
  const first = Math.max(
    0,
    heard.findLastIndex(({ at }) => at <= run.from),
  );
  let seenMs = 0;
  let laminarMs = 0;
  const entries: EntryId[] = [];
  for (let place = first; place < heard.length; place += 1) {
    const call = heard[place];
    if (call === undefined || call.at >= run.to) break;
    const share = SHARE[call.probes[probe] ?? 'notAssessed'];
    const until = Math.min(heard[place + 1]?.at ?? run.to, run.to);
    const heldMs = until - Math.max(call.at, run.from);
    if (share === null || heldMs <= 0) continue;
    seenMs += heldMs;
    laminarMs += share * heldMs;
    entries.push(call.by);
  }
  return seenMs === 0 ? null : { run, laminarFraction: laminarMs / seenMs, entries };
}

const SHARE: Readonly<Record<PanelState, number | null>> = {
  laminar: 1,
  intermittent: INTERMITTENT_SHARE,
  turbulent: 0,
  notAssessed: null,
};

/** Laminar for less than half of the time counts as turbulent; half is neither (a convention). */
export function isTurbulent(runs: readonly ProbeRun[]): boolean {
  const mean = runs.reduce((total, run) => total + run.laminarFraction, 0) / runs.length;
  return mean < 0.5;
}
