import { epochMs, type EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { FlightState } from '../record/flightState.ts';
import type { FlightSheet } from '../record/sheet.ts';
import { reminderLimits, type ReminderLimits } from './reminderLimits.ts';
import {
  lastShownAt,
  logOf,
  quietUntil,
  shownCount,
  SHOWN_FOR_S,
  type ReminderLog,
} from './reminderLog.ts';
import { reminderWants, type Reminder, type ReminderKind, type Want } from './reminderWants.ts';

/** More would be heard no longer: a choice, cockpit requirement R37. What is still wanted waits. */
const MOST_AN_HOUR = 6;
const HOUR_MS = 3_600_000;

interface Pattern {
  readonly repeatS: number;
  readonly atMost: number;
}

function patternOf(kind: ReminderKind, limits: ReminderLimits): Pattern {
  switch (kind) {
    case 'coverRelease':
      return { repeatS: limits.coversRepeatS, atMost: limits.coversAtMost };
    case 'samplerOpen':
      return { repeatS: limits.samplerRepeatS, atMost: limits.samplerAtMost };
    case 'intervalOpen':
      return { repeatS: limits.intervalRepeatS, atMost: limits.intervalAtMost };
    case 'readingDue':
      // Stays until a reading is made; the next one due replaces it.
      return { repeatS: Infinity, atMost: 1 };
  }
}

const PRIORITY: readonly ReminderKind[] = [
  'coverRelease',
  'samplerOpen',
  'intervalOpen',
  'readingDue',
];

/** What the strip says now; `isNew` where it begins to say it and the record does not know yet. */
export interface ReminderNow {
  readonly reminder: Reminder;
  readonly isNew: boolean;
}

/**
 * The one line of the reminder strip, or none: most urgent first. Nothing in quiet phases or while the crew has asked
 * for quiet; a new line waits until no hand is on the screen, until the last one is so long ago, and until fewer than six
 * began within the hour. What was shown, and how often, is read from the record, so that a restart repeats nothing.
 *
 * @param touchedAt the last touch on the screen, whether it wrote something or not
 */
export function reminderNow(
  view: FlightView,
  now: EpochMs,
  touchedAt: EpochMs | null,
): ReminderNow | null {
  const { state } = view;
  const { sheet } = state;
  if (state.closed !== null || sheet === null || isQuiet(view, sheet, now)) return null;
  const limits = reminderLimits(sheet);
  const wanted = reminderWants(view, sheet, limits, now)
    .flatMap((want) => standingOf(want, logOf(view, want.id, want.since), limits, now))
    .sort((a, b) => PRIORITY.indexOf(a.reminder.kind) - PRIORITY.indexOf(b.reminder.kind));
  const mayBegin = (): boolean =>
    secondsSince(touchedAt, now) >= limits.afterTouchS &&
    secondsSince(lastShownAt(view, epochMs(now - limits.apartS * 1000)), now) >= limits.apartS &&
    shownCount(view, epochMs(now - HOUR_MS)) < MOST_AN_HOUR;
  return wanted.find(({ isNew }) => !isNew || mayBegin()) ?? null;
}

/** From brakes release to a minute after gear up, and from approach to landing. */
export function isQuietPhase(state: FlightState, now: EpochMs): boolean {
  const { sheet } = state;
  const { takeOffRoll, liftOff, gearUp, gearDown, touchdown } = state.milestones;
  const began = takeOffRoll ?? liftOff;
  if (began !== undefined && gearUp === undefined && touchdown === undefined) return true;
  const quietS = sheet === null ? 0 : reminderLimits(sheet).quietAfterGearUpS;
  if (gearUp !== undefined && secondsBetween(gearUp.at, now) < quietS) return true;
  const approaching = gearDown !== undefined && (gearUp === undefined || gearDown.at > gearUp.at);
  return approaching && touchdown === undefined;
}

function isQuiet(view: FlightView, sheet: FlightSheet, now: EpochMs): boolean {
  return isQuietPhase(view.state, now) || now < quietUntil(view, sheet, now);
}

/** The line as it stands: up already, to begin now, or neither. */
function standingOf(
  { dueAt, ...want }: Want,
  { shownAt, answers }: ReminderLog,
  limits: ReminderLimits,
  now: EpochMs,
): readonly ReminderNow[] {
  const { repeatS, atMost } = patternOf(want.kind, limits);
  const last = shownAt.at(-1);
  const answer = answers.at(-1);
  if (now < dueAt || answers.some((each) => each.answer === 'notThisFlight')) return [];
  const isAnswered = answer !== undefined && (last === undefined || answer.at >= last);
  const staysS = repeatS === Infinity ? Infinity : SHOWN_FOR_S;
  if (last !== undefined && !isAnswered && secondsBetween(last, now) < staysS) {
    return [{ reminder: { ...want, shownSince: last }, isNew: false }];
  }
  const before = Math.max(last ?? -Infinity, answer?.at ?? -Infinity);
  if (shownAt.length >= atMost || (now - before) / 1000 < repeatS) return [];
  return [{ reminder: { ...want, shownSince: now }, isNew: true }];
}

function secondsSince(at: EpochMs | null, now: EpochMs): number {
  return at === null ? Infinity : secondsBetween(at, now);
}

function secondsBetween(from: EpochMs, to: EpochMs): number {
  return (to - from) / 1000;
}
