import type { JournalStatus } from './journal.ts';
import type { Schedule } from './stamp.ts';

type NotSaved = Extract<JournalStatus['trouble'], { readonly kind: 'notSaved' }>;

/** No answer in time. The work may still come to its end. */
class NoAnswer extends Error {
  override readonly name = 'NoAnswer';
}

/** The end of the chain on disk is not the one that this window wrote. */
export class HeadMoved extends Error {
  override readonly name = 'HeadMoved';
}

const LOST_CONNECTION = ['InvalidStateError', 'AbortError', 'UnknownError', 'VersionError'];

/** Why a write failed, as far as the browser says: an `AbortError` may hide a full disk. */
export function notSavedBecause(error: unknown): NotSaved['because'] {
  if (error instanceof NoAnswer) {
    return 'slow';
  }
  const name = error instanceof Error ? error.name : '';
  if (name === 'QuotaExceededError') {
    return 'full';
  }
  return LOST_CONNECTION.includes(name) ? 'lostConnection' : 'unknown';
}

/** The work's own end, or `NoAnswer` when it does not come in time. */
export function inTime<T>(work: Promise<T>, giveUpMs: number, schedule: Schedule): Promise<T> {
  return new Promise((resolve, reject) => {
    const callOff = schedule(giveUpMs, () => reject(new NoAnswer('the disk did not answer')));
    work.finally(callOff).then(resolve, reject);
  });
}
