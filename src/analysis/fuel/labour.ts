import type { EntryId } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { Timed } from '../../record/flightState.ts';
import type { Answer } from '../answer.ts';
import { jobsOf, type Job } from './labourLog.ts';
import type {
  FlightLabour,
  LabourAnswer,
  LabourGate,
  LabourPerHour,
  NotFlown,
  PanelHours,
} from './labourResults.ts';

const MS_PER_HOUR = 3_600_000;

/** Hours of work written in this record, by panel and task, against the hours flown. */
export function labour(view: FlightView): FlightLabour {
  const { milestones } = view.state;
  const work = labourOf(jobsOf([view]));
  return {
    work,
    perAirborneHour: perHour(work, milestones.liftOff, milestones.touchdown, 'liftOffToTouchdown'),
    perBlockHour: perHour(work, milestones.blocksOff, milestones.blocksOn, 'blocksOffToOn'),
  };
}

export function labourOf(jobs: readonly Job[]): LabourAnswer {
  const entries = [...new Set(jobs.flatMap((job) => job.entries))];
  if (jobs.length === 0) return { kind: 'noAnswer', because: 'nothingWritten', entries };
  const stated = jobs.filter(({ labourH }) => labourH !== null);
  if (stated.length === 0) return { kind: 'noAnswer', because: 'noHoursGiven', entries };
  return {
    kind: 'answer',
    value: {
      labourH: hoursOf(stated),
      asRaisedH: hoursOf(stated.filter(({ from }) => from === 'squawk')),
      byPanel: panelHours(stated),
      byTask: jobs,
    },
    how: { entries, method: 'workDoneElseAsRaised', broken: gatesOf(jobs) },
  };
}

function gatesOf(jobs: readonly Job[]): readonly LabourGate[] {
  const broken: LabourGate[] = [];
  if (jobs.some(({ labourH }) => labourH === null)) broken.push('hoursMissing');
  const raised = new Set(
    jobs
      .filter(({ from, labourH }) => from === 'squawk' && labourH !== null)
      .flatMap(({ panels }) => panels),
  );
  const nameless = jobs.filter(({ squawk, labourH }) => squawk === null && labourH !== null);
  if (nameless.some(({ panels }) => panels.some((panel) => raised.has(panel)))) {
    broken.push('maybeTwice');
  }
  return broken;
}

function panelHours(jobs: readonly Job[]): readonly PanelHours[] {
  const byPanels = new Map<string, PanelHours>();
  for (const { panels, labourH, entries } of jobs) {
    const key = panels.toSorted().join('\n');
    const before = byPanels.get(key);
    byPanels.set(key, {
      panels: before?.panels ?? panels,
      labourH: (before?.labourH ?? 0) + (labourH ?? 0),
      entries: [...(before?.entries ?? []), ...entries],
    });
  }
  return [...byPanels.values()].sort((a, b) => b.labourH - a.labourH);
}

export function perHour<const Method extends string>(
  work: LabourAnswer,
  from: Timed | undefined,
  to: Timed | undefined,
  method: Method,
): Answer<LabourPerHour, NotFlown, Method, LabourGate> {
  const times = [from, to].flatMap((timed): readonly EntryId[] =>
    timed === undefined ? [] : [timed.by],
  );
  const none = (because: NotFlown): Answer<LabourPerHour, NotFlown, Method, LabourGate> => ({
    kind: 'noAnswer',
    because,
    entries: times,
  });
  if (work.kind === 'noAnswer') return none(work.because);
  if (from === undefined) return none('startNotWritten');
  if (to === undefined || to.at <= from.at) return none('endNotWritten');
  const flownH = (to.at - from.at) / MS_PER_HOUR;
  return {
    kind: 'answer',
    value: { flownH, labourPerFlownHour: work.value.labourH / flownH },
    how: { entries: [...work.how.entries, ...times], method, broken: work.how.broken },
  };
}

function hoursOf(jobs: readonly Job[]): number {
  return jobs.reduce((total, { labourH }) => total + (labourH ?? 0), 0);
}
