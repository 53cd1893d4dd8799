import type { FlightSheet } from '../record/sheet.ts';

/** When the reminder strip speaks and when it is silent: the flight sheet's own limits, or the usual ones (all choices). */
export type ReminderLimits = Required<NonNullable<FlightSheet['limits']['reminders']>>;

const USUAL: ReminderLimits = {
  readingOverdueS: 120,
  usualLengths: 3,
  coversRepeatS: 300,
  coversAtMost: 3,
  samplerRepeatS: 600,
  samplerAtMost: 3,
  intervalRepeatS: 900,
  intervalAtMost: 2,
  afterTouchS: 10,
  apartS: 60,
  quietAfterGearUpS: 60,
  quietForS: 900,
};

export function reminderLimits(sheet: FlightSheet): ReminderLimits {
  return { ...USUAL, ...sheet.limits.reminders };
}
