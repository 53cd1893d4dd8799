import { median } from '../aero/statistics/descriptive.ts';
import { epochMs, type EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { FlightState, Interval } from '../record/flightState.ts';
import type { FlightSheet } from '../record/sheet.ts';
import { itemAt, itemsBackwards } from '../record/trail.ts';
import type { ReminderLimits } from './reminderLimits.ts';

export type ReminderKind = 'coverRelease' | 'samplerOpen' | 'intervalOpen' | 'readingDue';

export interface Reminder {
  /** Name under which an answer is logged (`reminderAnswered.reminder`). */
  readonly id: string;
  readonly kind: ReminderKind;
  /** Interval kind and label for an interval; empty else. */
  readonly subject: string;
  readonly label: string;
  /** Since when the thing has been open, up or wanted. */
  readonly since: EpochMs;
  /** When this showing began. */
  readonly shownSince: EpochMs;
  readonly answers: readonly ReminderAnswer[];
}

/** One touch each. `record` and `close` are answered by the entry itself. */
export type ReminderAnswer = 'record' | 'notThisFlight' | 'close' | 'stillOpen';

/** What should be reminded of from `dueAt` on, were nobody ever silent. */
export type Want = Omit<Reminder, 'shownSince'> & { readonly dueAt: EpochMs };

/** Usual lengths before this flight has closed one of its own (common practice, no source). */
const USUAL_S: Readonly<Record<string, number>> = {
  moisture: 300,
  turn: 150,
  turbulence: 180,
  testPoint: 600,
};
const INTERVALS_LOOKED_AT = 200;

export function reminderWants(
  view: FlightView,
  sheet: FlightSheet,
  limits: ReminderLimits,
  now: EpochMs,
): readonly Want[] {
  return [
    ...coverRelease(view, sheet, limits, now),
    ...openIntervals(view.state, limits, now),
    ...readingDue(view.state, sheet, limits, now),
  ];
}

function coverRelease(
  view: FlightView,
  sheet: FlightSheet,
  limits: ReminderLimits,
  now: EpochMs,
): readonly Want[] {
  const { milestones, covers } = view.state;
  const { gearUp } = milestones;
  if (gearUp === undefined) return [];
  // Long after the last showing the record since take-off need not be looked through any more.
  const overS = sheet.limits.coversAfterGearUpS + limits.coversRepeatS * (limits.coversAtMost + 3);
  if (secondsBetween(gearUp.at, now) > overS) return [];
  const stillFitted = Object.values(covers).includes('fitted');
  if (!stillFitted && coversReleasedSince(view, milestones.takeOffRoll?.at ?? gearUp.at)) return [];
  return [
    {
      id: 'coverRelease',
      kind: 'coverRelease',
      subject: '',
      label: '',
      since: gearUp.at,
      dueAt: later(gearUp.at, sheet.limits.coversAfterGearUpS),
      answers: ['record', 'notThisFlight'],
    },
  ];
}

function coversReleasedSince(view: FlightView, sinceMs: EpochMs): boolean {
  for (const { at, standing, effective } of itemsBackwards(view.timeline)) {
    if (at < sinceMs) return false;
    if (standing === 'stands' && effective.kind === 'coversReleased') return true;
  }
  return false;
}

function openIntervals(state: FlightState, limits: ReminderLimits, now: EpochMs): readonly Want[] {
  const wants: Want[] = [];
  let looked = 0;
  for (const interval of itemsBackwards(state.intervals)) {
    looked += 1;
    if (looked > INTERVALS_LOOKED_AT) break;
    if (interval.closed !== null || interval.opened.at > now) continue;
    const dueAt = intervalDueAt(state, limits, interval);
    if (dueAt === null) continue;
    const kind = interval.kind === 'sampler' ? 'samplerOpen' : 'intervalOpen';
    wants.push({
      id: `${kind}:${interval.opened.by}`,
      kind,
      subject: interval.kind,
      label: interval.label,
      since: interval.opened.at,
      dueAt,
      answers: ['close', 'stillOpen'],
    });
  }
  return wants;
}

/** Null for what is meant to stay open: recorder, photo panel and suction run the whole flight. */
function intervalDueAt(
  state: FlightState,
  limits: ReminderLimits,
  { kind, opened }: Interval,
): EpochMs | null {
  const { topOfDescent, gearDown } = state.milestones;
  if (kind === 'sampler') {
    const planned = later(opened.at, state.sheet?.limits.samplerPlannedS ?? Infinity);
    return earliest(planned, topOfDescent?.at);
  }
  if (kind === 'recorder' || kind === 'photoPanel' || kind === 'suction') return null;
  const usualS = usualLengthS(state, kind);
  const long = usualS === null ? null : later(opened.at, limits.usualLengths * usualS);
  return earliest(long, gearDown?.at);
}

function usualLengthS(state: FlightState, kind: Interval['kind']): number | null {
  const lengths: number[] = [];
  let looked = 0;
  for (const interval of itemsBackwards(state.intervals)) {
    looked += 1;
    if (looked > INTERVALS_LOOKED_AT) break;
    if (interval.kind === kind && interval.closed !== null) {
      lengths.push(secondsBetween(interval.opened.at, interval.closed.at));
    }
  }
  return lengths.length === 0 ? (USUAL_S[kind] ?? null) : median(lengths);
}

/** In cruise on an open point: the next reading is wanted so long after the last, or after the start. */
function readingDue(
  state: FlightState,
  sheet: FlightSheet,
  limits: ReminderLimits,
  now: EpochMs,
): readonly Want[] {
  const { openRun, runs, milestones } = state;
  if (openRun === null || milestones.topOfDescent !== undefined) return [];
  const run = itemAt(runs, openRun);
  if (run === undefined) return [];
  const last = lastFuelReadingAt(state);
  const since = last !== null && last > run.started.at ? last : run.started.at;
  const dueAt = later(since, sheet.limits.readingEveryS + limits.readingOverdueS);
  if (now < dueAt) return [];
  return [
    {
      id: `readingDue:${since}`,
      kind: 'readingDue',
      subject: '',
      label: run.point,
      since,
      dueAt,
      answers: [],
    },
  ];
}

function lastFuelReadingAt(state: FlightState): EpochMs | null {
  const gauges = state.sheet?.instruments.filter(({ quantity }) => quantity === 'fuelFlow') ?? [];
  for (const glance of itemsBackwards(state.glances)) {
    if (gauges.some(({ id }) => glance.readings[id] !== undefined)) return glance.at;
  }
  return null;
}

function later(at: EpochMs, seconds: number): EpochMs {
  return seconds === Infinity
    ? epochMs(Number.MAX_SAFE_INTEGER)
    : epochMs(Math.round(at + seconds * 1000));
}

function earliest(a: EpochMs | null, b: EpochMs | undefined): EpochMs | null {
  if (a === null || b === undefined) return a ?? b ?? null;
  return a < b ? a : b;
}

function secondsBetween(from: EpochMs, to: EpochMs): number {
  return (to - from) / 1000;
}
