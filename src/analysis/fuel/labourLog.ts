import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import { items } from '../../record/trail.ts';

/** Work with its hours: what was done, or where nothing is done yet what the squawk asked for. */
export interface Job {
  /** The squawk it is about; null for work that names none. */
  readonly squawk: string | null;
  readonly panels: readonly string[];
  /** The squawk's words, or the action of work that names no squawk. */
  readonly task: string;
  /** Null where nobody gave any. */
  readonly labourH: number | null;
  /** Hours of work done, or as the squawk was raised. */
  readonly from: 'maintenance' | 'squawk';
  readonly at: EpochMs;
  readonly entries: readonly EntryId[];
}

interface Squawk {
  readonly squawk: string;
  readonly panels: readonly string[];
  readonly words: string;
  readonly labourH: number | null;
  readonly at: EpochMs;
  readonly entries: readonly EntryId[];
}

/**
 * Every job that these records speak of, once. Hours of maintenance on a squawk take the place of the hours that the
 * squawk was raised with, or the same work would be counted twice; a squawk raised anew takes the place of itself.
 * Numbers of squawks may begin anew with each flight: a job is about the squawk of its own record, else of the newest
 * one before it.
 *
 * @param views in order of time
 */
export function jobsOf(views: readonly FlightView[]): readonly Job[] {
  const raised: Map<string, Squawk>[] = [];
  const done = new Map<Squawk, Job>();
  const alone = new Map<string, Job>();
  const jobs: Job[] = [];
  for (const view of views) {
    raised.push(squawksOf(view));
    for (const job of workOf(view)) {
      const { squawk } = job;
      const about =
        squawk === null ? undefined : raised.findLast((record) => record.has(squawk))?.get(squawk);
      if (about !== undefined) done.set(about, together(done.get(about), job));
      else if (squawk !== null) alone.set(squawk, together(alone.get(squawk), job));
      else jobs.push(job);
    }
  }
  jobs.push(...alone.values());
  for (const squawk of raised.flatMap((record) => [...record.values()])) {
    jobs.push(jobOf(squawk, done.get(squawk)));
  }
  return jobs.toSorted((a, b) => a.at - b.at || (a.task < b.task ? -1 : 1));
}

function squawksOf(view: FlightView): Map<string, Squawk> {
  const squawks = new Map<string, Squawk>();
  for (const { effective, standing, at } of items(view.timeline)) {
    if (standing !== 'stands' || effective.kind !== 'squawkRaised') continue;
    const { squawk, panels, words, labourH } = effective.body;
    const before = squawks.get(squawk);
    squawks.set(squawk, {
      squawk,
      panels,
      words,
      labourH: hoursOf(labourH) ?? before?.labourH ?? null,
      at: before?.at ?? at,
      entries: [...(before?.entries ?? []), effective.id],
    });
  }
  return squawks;
}

function workOf(view: FlightView): readonly Job[] {
  const jobs: Job[] = [];
  for (const { effective, standing, at } of items(view.timeline)) {
    if (standing !== 'stands' || effective.kind !== 'maintenanceDone') continue;
    const { squawk = null, panels, action, labourH } = effective.body;
    jobs.push({
      squawk,
      panels,
      task: action,
      labourH: hoursOf(labourH),
      from: 'maintenance',
      at,
      entries: [effective.id],
    });
  }
  return jobs;
}

function jobOf(raised: Squawk, done: Job | undefined): Job {
  const { squawk, panels, words, labourH, at, entries } = raised;
  const isDone = done !== undefined && done.labourH !== null;
  return {
    squawk,
    panels,
    task: words,
    labourH: isDone ? done.labourH : labourH,
    from: isDone ? 'maintenance' : 'squawk',
    at: isDone ? done.at : at,
    entries: [...entries, ...(done?.entries ?? [])],
  };
}

function together(before: Job | undefined, job: Job): Job {
  if (before === undefined) return job;
  const labourH =
    before.labourH === null || job.labourH === null
      ? (before.labourH ?? job.labourH)
      : before.labourH + job.labourH;
  return {
    ...before,
    panels: [...new Set([...before.panels, ...job.panels])],
    labourH,
    entries: [...before.entries, ...job.entries],
  };
}

/** Less than no time is a slip of the pen. */
function hoursOf(labourH: number | undefined): number | null {
  return labourH === undefined || labourH < 0 ? null : labourH;
}
