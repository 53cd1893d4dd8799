import { useEffect, type RefObject } from 'react';
import type { Clock, Journal } from '../journal/journal.ts';
import type { EpochMs } from '../record/brand.ts';
import type { Body } from '../record/entry.ts';
import type { AppPorts } from './ports.ts';

/**
 * Lets the record explain its own gaps: the screen hidden and shown again, and the wall clock moved, become entries
 * beside the scribe's, as long as this window writes.
 */
export function useDeviceNotes(
  journal: Journal | null,
  clock: Clock,
  watchSteps: AppPorts['watchSteps'],
  awake: RefObject<boolean>,
): void {
  useEffect(() => {
    if (journal === null) {
      return undefined;
    }
    const note = (body: Body<'deviceNoted'>): void => {
      if (journal.recorder() !== null && journal.status().writer.kind === 'writing') {
        // A refusal means that another window has taken over; it keeps its own notes.
        journal
          .append({ kind: 'deviceNoted', body, stamp: clock.stampNow() })
          .catch(() => undefined);
      }
    };
    const steps = watchSteps({
      isVisible: () => document.visibilityState === 'visible',
      isAwake: () => awake.current,
      onStep: note,
    });
    let leftAt: EpochMs | null = null;
    const onVisibility = (): void => {
      if (document.visibilityState === 'visible') {
        const awayS = leftAt === null ? -1 : Math.round((clock.now() - leftAt) / 1000);
        note({ what: 'shown', ...(awayS >= 0 && { awayS }) });
      } else {
        leftAt = clock.now();
        note({ what: 'hidden' });
      }
      steps.check();
    };
    document.addEventListener('visibilitychange', onVisibility);
    return () => {
      document.removeEventListener('visibilitychange', onVisibility);
      steps.stop();
    };
  }, [journal, clock, watchSteps, awake]);
}
