import type { EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { KnownKind } from '../record/kinds.ts';
import { items } from '../record/trail.ts';
import { AT_RISK, SHOWN_FOR_S } from './reminderLog.ts';

/** How the reminders of a flight were taken: more of them, or more ignored, than a crew bears, and the limits are too tight. */
export interface ReminderTally {
  readonly shown: number;
  /** Answered, or done, while the line was up or a minute after. */
  readonly heeded: number;
  readonly ignored: number;
  /** From lift-off to touchdown, or over the record where these are missing; null for a record without length. */
  readonly perHour: number | null;
  /** Above six an hour, or more than half ignored. */
  readonly isTooMany: boolean;
}

const MOST_PER_HOUR = 6;
const MOST_IGNORED_FRACTION = 0.5;
const LATE_S = 60;
const HOUR_MS = 3_600_000;

/** What doing the thing itself writes, by the beginning of the reminder's name. */
const DONE_BY: readonly (readonly [begins: string, kinds: readonly KnownKind[]])[] = [
  ['coverRelease', ['coversReleased']],
  ['samplerOpen', ['samplerClosed']],
  ['readingDue', ['fuelRead']],
  [
    'intervalOpen',
    [
      'moistureExited',
      'turnEnded',
      'turbulenceExited',
      'testPointEnded',
      'testPointInterrupted',
      'testPointTerminated',
      'ownEventMarked',
    ],
  ],
];

export function reminderTally(view: FlightView): ReminderTally {
  let shown = 0;
  let heeded = 0;
  /** Lines that are up, oldest first. */
  let up: readonly { readonly reminder: string; readonly at: EpochMs }[] = [];
  for (const { at, standing, effective } of items(view.timeline)) {
    if (standing !== 'stands' || effective.kind === 'unrecognised') continue;
    up = up.filter((line) => (at - line.at) / 1000 <= SHOWN_FOR_S + LATE_S);
    if (effective.kind === 'reminderShown') {
      const { reminder } = effective.body;
      if (reminder.startsWith(AT_RISK)) continue;
      shown += 1;
      up = [...up.filter((line) => line.reminder !== reminder), { reminder, at }];
      continue;
    }
    const { kind } = effective;
    const answers = kind === 'reminderAnswered' ? effective.body.reminder : null;
    const met = up.filter(({ reminder }) => answers === reminder || isDoneBy(reminder, kind));
    heeded += met.length;
    up = up.filter((line) => !met.includes(line));
  }
  const hours = hoursOf(view);
  const perHour = hours === null ? null : shown / hours;
  const ignored = shown - heeded;
  return {
    shown,
    heeded,
    ignored,
    perHour,
    isTooMany:
      (perHour !== null && perHour > MOST_PER_HOUR) ||
      (shown > 0 && ignored / shown > MOST_IGNORED_FRACTION),
  };
}

function isDoneBy(reminder: string, kind: KnownKind): boolean {
  return DONE_BY.some(([begins, kinds]) => reminder.startsWith(begins) && kinds.includes(kind));
}

function hoursOf({ state, timeline }: FlightView): number | null {
  const first = state.milestones.liftOff?.at ?? [...items(timeline)][0]?.at;
  const last = state.milestones.touchdown?.at ?? state.lastAt;
  return first === undefined || last === null || last <= first ? null : (last - first) / HOUR_MS;
}
