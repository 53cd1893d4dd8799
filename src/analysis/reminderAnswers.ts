import { epochMs, type EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import { itemsBackwards } from '../record/trail.ts';

export interface Answer {
  readonly answer: string;
  readonly at: EpochMs;
}

/** `reminderAnswered` with this name silences every reminder for a quarter of an hour. */
export const QUIET_REMINDER = 'all';
const QUIET_FOR_S = 900;

/** Answers given to one reminder since it first mattered, oldest first. */
export function answersTo(view: FlightView, id: string, sinceMs: EpochMs): readonly Answer[] {
  const answers: Answer[] = [];
  // Backwards and only as far as the reminder reaches: a long record must not make it dearer.
  for (const standing of itemsBackwards(view.timeline)) {
    if (standing.at < sinceMs) break;
    const { effective } = standing;
    if (standing.standing !== 'stands' || effective.kind !== 'reminderAnswered') continue;
    if (effective.body.reminder === id) {
      answers.unshift({ answer: effective.body.answer, at: standing.at });
    }
  }
  return answers;
}

export function quietUntil(view: FlightView): EpochMs {
  const last = view.state.lastAt;
  if (last === null) return epochMs(0);
  const answer = answersTo(view, QUIET_REMINDER, epochMs(last - QUIET_FOR_S * 1000)).at(-1);
  return answer === undefined ? epochMs(0) : epochMs(answer.at + QUIET_FOR_S * 1000);
}
