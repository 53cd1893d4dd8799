import type { EntryId } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightSheet, Probe } from '../../record/sheet.ts';
import type { ProbeRecord } from './evidence.ts';
import { distinct } from './lossLags.ts';
import { isTurbulent, probeRuns, type ProbeRun } from './probeRuns.ts';
import { isSameSetting, nominalSetting, settingsOf } from './settings.ts';

/** Why a flight says nothing about a probe. */
export type NotEligible =
  | 'otherAircraft'
  | 'noFlightSheet'
  | 'noSuchProbe'
  | 'unserviceable'
  /** No suction-on run in clear air at the setting that most cards ask for, with the probe called. */
  | 'noNominalClearRun'
  /** Nobody saw the cover go: turbulence must not be blamed on the skin. */
  | 'coverUnknown'
  /** The cover was still on the panel. */
  | 'coverOn';

/** What one flight says about one probe. */
export interface ProbeFlight {
  readonly verdict: 'turbulent' | 'notTurbulent' | NotEligible;
  readonly entries: readonly EntryId[];
}

/** Every trailing-edge probe of one flight by id. */
export function probeFlights(view: FlightView): ReadonlyMap<string, ProbeFlight> {
  const { sheet } = view.state;
  if (sheet === null) return new Map();
  const settings = settingsOf(view.state, sheet);
  const nominal = nominalSetting(sheet);
  const { probes } = probeRuns(view, sheet, settings);
  const coverAt = coversAtRuns(view);
  return new Map(
    probes.map(({ probe, runs, everServiceable }) => {
      const atNominal = runs.filter(
        ({ run }) => nominal !== null && isSameSetting(run.setting, nominal),
      );
      const none = everServiceable ? 'noNominalClearRun' : 'unserviceable';
      return [
        probe.id,
        atNominal.length === 0
          ? { verdict: none, entries: [] }
          : verdictOf(
              atNominal,
              atNominal.map((run) => coverAt(run, probe)),
            ),
      ];
    }),
  );
}

type Cover = 'clear' | 'coverUnknown' | 'coverOn';

/** The cover of a probe's panel as it was when a run began. */
function coversAtRuns(view: FlightView): (run: ProbeRun, probe: Probe) => Cover {
  const known = new Map<EntryId, Readonly<Record<string, string>>>();
  return ({ run: { run } }, { panel }) => {
    const { by } = run.started;
    const covers = known.get(by) ?? view.stateAt(by)?.covers ?? {};
    known.set(by, covers);
    const cover = covers[panel] ?? 'unknown';
    if (cover === 'clear') return 'clear';
    return cover === 'unknown' ? 'coverUnknown' : 'coverOn';
  };
}

function verdictOf(runs: readonly ProbeRun[], covers: readonly Cover[]): ProbeFlight {
  const counted = runs.filter((_, index) => covers[index] === 'clear');
  const entries = distinct(
    (counted.length === 0 ? runs : counted).flatMap(({ run: { run }, entries: calls }) => [
      run.started.by,
      ...calls,
    ]),
  );
  if (counted.length === 0) {
    return { verdict: covers.includes('coverOn') ? 'coverOn' : 'coverUnknown', entries };
  }
  return { verdict: isTurbulent(counted) ? 'turbulent' : 'notTurbulent', entries };
}

/** How often each probe was turbulent in the flights that count for it. */
export function probeRecords(views: readonly FlightView[]): ReadonlyMap<string, ProbeRecord> {
  const records = new Map<string, ProbeRecord>();
  for (const view of views) {
    for (const [probe, { verdict }] of probeFlights(view)) {
      const { turbulentFlights = 0, eligibleFlights = 0 } = records.get(probe) ?? {};
      const turbulent = verdict === 'turbulent' ? 1 : 0;
      const eligible = turbulent === 1 || verdict === 'notTurbulent' ? 1 : 0;
      records.set(probe, {
        probe,
        turbulentFlights: turbulentFlights + turbulent,
        eligibleFlights: eligibleFlights + eligible,
      });
    }
  }
  return records;
}

export function isSameAircraft(one: FlightSheet, other: FlightSheet): boolean {
  return one.aircraft.mark === other.aircraft.mark;
}
