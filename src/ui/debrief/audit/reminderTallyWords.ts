import type { ReminderTally } from '../../../analysis/reminderTally.ts';

/** How the reminders were taken, and what to do about it before the next flight. */
export function reminderTallyWords({ shown, ignored, perHour, isTooMany }: ReminderTally): string {
  if (shown === 0) {
    return 'No reminder was shown.';
  }
  const rate = perHour === null ? '' : `, ${perHour.toFixed(1)} an hour`;
  const share = `${ignored} of them ignored (${Math.round((ignored / shown) * 100)}\u00a0%)`;
  const advice = isTooMany
    ? ' More than six an hour or half of them ignored: widen the limits on the flight sheet.'
    : '';
  return `${shown} shown${rate}, ${share}.${advice}`;
}
