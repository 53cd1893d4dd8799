import type { FlightView } from '../../record/flight.ts';
import type { Answer } from '../answer.ts';
import { distinct } from './lossLags.ts';
import { probeRuns, type ProbeRun } from './probeRuns.ts';
import { settingsOf } from './settings.ts';
import { findingsByPanel, hungCovers, type Finding } from './surface.ts';

/** What one trailing-edge probe did in the clear-air runs of a flight. */
export interface ProbeHistory {
  readonly probe: string;
  readonly panel: string;
  readonly inClearRuns: Answer<
    {
      readonly clearRuns: number;
      /** Runs in which it was not laminar all the time; intermittent counts. */
      readonly notLaminarRuns: number;
      readonly bySetting: readonly SettingShare[];
    },
    'unserviceable' | 'noClearRun' | 'notAssessed',
    'heldStates'
  >;
  readonly coverHung: boolean;
  /** Null where nobody spoke of the panel: not yet inspected. */
  readonly inspection: Finding | null;
}

export interface SettingShare {
  readonly setting: string;
  readonly runs: number;
  /** Mean over those runs. */
  readonly laminarFraction: number;
}

/** Every trailing-edge probe of the flight sheet, in its order. */
export function probeHistory(view: FlightView): readonly ProbeHistory[] {
  const { sheet } = view.state;
  if (sheet === null) return [];
  const hung = hungCovers(view);
  const findings = findingsByPanel(view);
  const settings = settingsOf(view.state, sheet);
  const { clearRunCount, probes } = probeRuns(view, sheet, settings);
  return probes.map(({ probe, runs, everServiceable }) => {
    const because =
      clearRunCount === 0 ? 'noClearRun' : everServiceable ? 'notAssessed' : 'unserviceable';
    return {
      probe: probe.id,
      panel: probe.panel,
      inClearRuns:
        runs.length === 0
          ? { kind: 'noAnswer', because, entries: [] }
          : {
              kind: 'answer',
              value: {
                clearRuns: runs.length,
                notLaminarRuns: runs.filter((run) => run.laminarFraction < 1).length,
                bySetting: bySetting(runs),
              },
              how: {
                entries: distinct(
                  runs.flatMap(({ run: { run }, entries }) => [
                    run.started.by,
                    run.ended?.by,
                    ...entries,
                  ]),
                ),
                method: 'heldStates',
                broken: [],
              },
            },
      coverHung: hung.has(probe.panel),
      inspection: findings.get(probe.panel) ?? null,
    };
  });
}

function bySetting(runs: readonly ProbeRun[]): readonly SettingShare[] {
  const groups = new Map<string, number[]>();
  for (const { run, laminarFraction } of runs) {
    const group = groups.get(run.setting);
    if (group === undefined) groups.set(run.setting, [laminarFraction]);
    else group.push(laminarFraction);
  }
  return [...groups].map(([setting, shares]) => ({
    setting,
    runs: shares.length,
    laminarFraction: shares.reduce((total, share) => total + share, 0) / shares.length,
  }));
}
