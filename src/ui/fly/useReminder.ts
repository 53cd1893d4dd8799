import { useEffect, useRef, useState } from 'react';
import { AT_RISK } from '../../analysis/reminderLog.ts';
import { reminderNow } from '../../analysis/reminders.ts';
import type { Reminder } from '../../analysis/reminderWants.ts';
import type { Clock } from '../../journal/journal.ts';
import type { EpochMs } from '../../record/brand.ts';
import { running, useSecond } from '../kit/time.ts';
import { useFly, type Fly } from './flyContext.ts';
import { remindWords } from './remindWords.ts';
import type { Risk } from './useRisk.ts';

/**
 * The line of the strip; its beginning goes into the record. A window that only reads shows what was begun elsewhere.
 *
 * @param isFree whether the strip is there for a reminder now
 */
export function useReminder(isFree: boolean): Reminder | null {
  const fly = useFly();
  const { clock, view, status } = fly;
  const now = useSecond(clock);
  const touchedAt = useLastTouch(clock);
  const found = isFree ? reminderNow(view, now, touchedAt) : null;
  const writes = status.writer.kind === 'writing';
  const beginsId = found !== null && found.isNew && writes ? found.reminder.id : null;
  const latest = useRef({ fly, found, now });
  useEffect(() => {
    latest.current = { fly, found, now };
  });
  useEffect(() => {
    const { fly: at, found: begun, now: when } = latest.current;
    if (beginsId === null || begun === null) return;
    const { what, detail } = remindWords(begun.reminder, running(when - begun.reminder.since));
    logShown(at, beginsId, `${what} ${detail}`);
  }, [beginsId]);
  return found !== null && (!found.isNew || writes) ? found.reminder : null;
}

/** Puts the beginning of a caution into the record, and sounds it where sound was asked for. */
export function useCautionLog(risk: Risk | null): void {
  const fly = useFly();
  const latest = useRef({ fly, risk });
  useEffect(() => {
    latest.current = { fly, risk };
  });
  const kind = risk?.kind ?? null;
  useEffect(() => {
    const { fly: at, risk: begun } = latest.current;
    if (kind === null || begun === null) return;
    at.caution();
    logShown(at, `${AT_RISK}:${kind}`, begun.words);
  }, [kind]);
}

/** Nobody touched anything: it is written without the sound and the pulse of a touch. */
function logShown({ journal, clock }: Fly, reminder: string, said: string): void {
  journal
    .append({ kind: 'reminderShown', body: { reminder, said }, stamp: clock.stampNow() })
    // A refusal means that another window has taken over; it shows and keeps its own.
    .catch(() => undefined);
}

function useLastTouch(clock: Clock): EpochMs | null {
  const [touchedAt, setTouchedAt] = useState<EpochMs | null>(null);
  useEffect(() => {
    const touched = (): void => setTouchedAt(clock.now());
    window.addEventListener('pointerdown', touched, true);
    window.addEventListener('keydown', touched, true);
    return () => {
      window.removeEventListener('pointerdown', touched, true);
      window.removeEventListener('keydown', touched, true);
    };
  }, [clock]);
  return touchedAt;
}
