import { epochMs, type EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { FlightSheet } from '../record/sheet.ts';
import { itemsBackwards } from '../record/trail.ts';
import { reminderLimits } from './reminderLimits.ts';

/** `reminderAnswered` with this name silences every reminder for a quarter of an hour. */
export const QUIET_REMINDER = 'all';
/** How names of cautions begin in the log: recorded data at risk is no reminder, and nothing silences it. */
export const AT_RISK = 'dataAtRisk';
/** A line that nobody answers goes away by itself after so long. */
export const SHOWN_FOR_S = 120;

/** What the record says about one reminder since it first mattered, oldest first. */
export interface ReminderLog {
  readonly shownAt: readonly EpochMs[];
  readonly answers: readonly { readonly answer: string; readonly at: EpochMs }[];
}

export function logOf(view: FlightView, id: string, sinceMs: EpochMs): ReminderLog {
  const shownAt: EpochMs[] = [];
  const answers: { readonly answer: string; readonly at: EpochMs }[] = [];
  // Backwards and only as far as the reminder reaches: a long record must not make it dearer.
  for (const { at, standing, effective } of itemsBackwards(view.timeline)) {
    if (at < sinceMs) break;
    if (standing !== 'stands') continue;
    if (effective.kind === 'reminderShown' && effective.body.reminder === id) {
      shownAt.unshift(at);
    } else if (effective.kind === 'reminderAnswered' && effective.body.reminder === id) {
      answers.unshift({ answer: effective.body.answer, at });
    }
  }
  return { shownAt, answers };
}

/** When any reminder last began to show, as far back as two of them must lie apart; null when none did. */
export function lastShownAt(view: FlightView, sinceMs: EpochMs): EpochMs | null {
  for (const { at, standing, effective } of itemsBackwards(view.timeline)) {
    if (at < sinceMs) return null;
    if (standing !== 'stands' || effective.kind !== 'reminderShown') continue;
    if (!effective.body.reminder.startsWith(AT_RISK)) return at;
  }
  return null;
}

/** How many reminders began to show since an instant. */
export function shownCount(view: FlightView, sinceMs: EpochMs): number {
  let count = 0;
  for (const { at, standing, effective } of itemsBackwards(view.timeline)) {
    if (at < sinceMs) break;
    if (standing !== 'stands' || effective.kind !== 'reminderShown') continue;
    if (!effective.body.reminder.startsWith(AT_RISK)) count += 1;
  }
  return count;
}

/** Until when the crew asked for quiet; long past when it did not. */
export function quietUntil(view: FlightView, sheet: FlightSheet, now: EpochMs): EpochMs {
  const { quietForS } = reminderLimits(sheet);
  const { answers } = logOf(view, QUIET_REMINDER, epochMs(now - quietForS * 1000));
  const asked = answers.at(-1);
  return asked === undefined ? epochMs(0) : epochMs(asked.at + quietForS * 1000);
}
