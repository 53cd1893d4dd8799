import { median } from '../aero/statistics/descriptive.ts';
import { epochMs, type EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { FlightState, Interval } from '../record/flightState.ts';
import { itemAt, itemsBackwards } from '../record/trail.ts';
import { answersTo, quietUntil, type Answer } from './reminderAnswers.ts';

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

interface Pattern {
  readonly repeatS: number;
  readonly atMost: number;
}

/** All choices; a line that nobody answers goes away by itself and comes back after `repeatS`. */
const PATTERNS: Readonly<Record<ReminderKind, Pattern>> = {
  coverRelease: { repeatS: 300, atMost: 3 },
  samplerOpen: { repeatS: 600, atMost: 3 },
  intervalOpen: { repeatS: 900, atMost: 2 },
  readingDue: { repeatS: Infinity, atMost: 1 },
};
const SHOWN_FOR_S = 120;
const READING_OVERDUE_S = 120;
const USUAL_LENGTHS = 3;
/** No new reminder within this time of a touch. */
const AFTER_TOUCH_S = 10;
const QUIET_AFTER_GEAR_UP_S = 60;
/** Usual lengths before this flight has closed one of its own (common practice, no source). */
const USUAL_S: Readonly<Record<string, number>> = {
  moisture: 300,
  turn: 150,
  turbulence: 180,
  testPoint: 600,
};
const INTERVALS_LOOKED_AT = 200;
const PRIORITY: readonly ReminderKind[] = [
  'coverRelease',
  'samplerOpen',
  'intervalOpen',
  'readingDue',
];

/**
 * What the reminder strip may say now, most urgent first; the strip shows the first one only. Nothing in
 * quiet phases, right after a touch, or while the crew has asked for quiet.
 */
export function remindersDue(view: FlightView, now: EpochMs): readonly Reminder[] {
  const { state } = view;
  if (state.closed !== null || state.sheet === null || isQuiet(view, now)) return [];
  const wanted = [
    ...coverRelease(view, now),
    ...openIntervals(state, now),
    ...readingDue(state, now),
  ]
    .flatMap((want) => shownNow(want, answersTo(view, want.id, want.since), now))
    .filter(({ shownSince }) => !startsUnderTouch(state, shownSince, now));
  return wanted.sort((a, b) => PRIORITY.indexOf(a.kind) - PRIORITY.indexOf(b.kind));
}

/** From brakes release to a minute after gear up, and from approach to landing. */
export function isQuietPhase(state: FlightState, now: EpochMs): boolean {
  const { takeOffRoll, liftOff, gearUp, gearDown, touchdown } = state.milestones;
  const began = takeOffRoll ?? liftOff;
  if (began !== undefined && gearUp === undefined && touchdown === undefined) return true;
  if (gearUp !== undefined && secondsBetween(gearUp.at, now) < QUIET_AFTER_GEAR_UP_S) return true;
  const approaching = gearDown !== undefined && (gearUp === undefined || gearDown.at > gearUp.at);
  return approaching && touchdown === undefined;
}

type Want = Omit<Reminder, 'shownSince'> & { readonly dueAt: EpochMs };

function isQuiet(view: FlightView, now: EpochMs): boolean {
  return isQuietPhase(view.state, now) || now < quietUntil(view);
}

/** A line that is up already stays while the scribe works; a new one waits until the hand is away. */
function startsUnderTouch({ lastAt }: FlightState, shownSince: EpochMs, now: EpochMs): boolean {
  if (lastAt === null || lastAt > shownSince) return false;
  return secondsBetween(lastAt, now) < AFTER_TOUCH_S;
}

function coverRelease(view: FlightView, now: EpochMs): readonly Want[] {
  const { milestones, covers, sheet } = view.state;
  const { gearUp } = milestones;
  if (gearUp === undefined || sheet === null) return [];
  const { repeatS, atMost } = PATTERNS.coverRelease;
  // Later nothing is shown, so the record since take-off need not be looked through either.
  const over = sheet.limits.coversAfterGearUpS + repeatS * atMost;
  if (secondsBetween(gearUp.at, now) > over) return [];
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

function openIntervals(state: FlightState, now: EpochMs): readonly Want[] {
  const wants: Want[] = [];
  let looked = 0;
  for (const interval of itemsBackwards(state.intervals)) {
    looked += 1;
    if (looked > INTERVALS_LOOKED_AT) break;
    if (interval.closed !== null || interval.opened.at > now) continue;
    const dueAt = intervalDueAt(state, interval);
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
function intervalDueAt(state: FlightState, { kind, opened }: Interval): EpochMs | null {
  const { topOfDescent, gearDown } = state.milestones;
  if (kind === 'sampler') {
    const planned = later(opened.at, state.sheet?.limits.samplerPlannedS ?? Infinity);
    return earliest(planned, topOfDescent?.at);
  }
  if (kind === 'recorder' || kind === 'photoPanel' || kind === 'suction') return null;
  const usualS = usualLengthS(state, kind);
  const long = usualS === null ? null : later(opened.at, USUAL_LENGTHS * usualS);
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
function readingDue(state: FlightState, now: EpochMs): readonly Want[] {
  const { sheet, openRun, runs, milestones } = state;
  if (sheet === null || openRun === null || milestones.topOfDescent !== undefined) return [];
  const run = itemAt(runs, openRun);
  if (run === undefined) return [];
  const last = lastFuelReadingAt(state);
  const since = last !== null && last > run.started.at ? last : run.started.at;
  const dueAt = later(since, sheet.limits.readingEveryS + READING_OVERDUE_S);
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

/** Showing number n begins n repeats after the line fell due, or one repeat after it was answered. */
function shownNow(
  { dueAt, ...want }: Want,
  answers: readonly Answer[],
  now: EpochMs,
): readonly Reminder[] {
  const { repeatS, atMost } = PATTERNS[want.kind];
  if (answers.some(({ answer }) => answer === 'notThisFlight')) return [];
  const lastAnswer = answers.at(-1);
  const from = lastAnswer === undefined ? dueAt : later(lastAnswer.at, repeatS);
  if (now < from || answers.length >= atMost) return [];
  const showing = repeatS === Infinity ? 0 : Math.floor(secondsBetween(from, now) / repeatS);
  if (showing + answers.length >= atMost) return [];
  const shownSince = repeatS === Infinity ? from : later(from, showing * repeatS);
  const stays = repeatS === Infinity;
  if (!stays && secondsBetween(shownSince, now) >= SHOWN_FOR_S) return [];
  return [{ ...want, shownSince }];
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
