import { useEffect, useRef, type RefObject } from 'react';

/**
 * Keeps the screen awake while `wanted`: asked for at once, on each return to visible and on each touch, because a
 * browser drops the lock when the page is hidden and may refuse it for a while afterwards.
 *
 * @returns whether the lock is held right now
 */
export function useAwake(wanted: boolean): RefObject<boolean> {
  const held = useRef(false);
  useEffect(() => {
    if (!wanted || !('wakeLock' in navigator)) {
      return undefined;
    }
    let lock: WakeLockSentinel | null = null;
    let asking = false;
    let over = false;
    const ask = async (): Promise<void> => {
      if (asking || (lock !== null && !lock.released) || document.visibilityState !== 'visible') {
        return;
      }
      asking = true;
      try {
        lock = await navigator.wakeLock.request('screen');
        held.current = true;
        lock.addEventListener('release', () => {
          held.current = false;
        });
        if (over) {
          await lock.release();
        }
      } catch {
        held.current = false; // refused, as on low battery: asked again with the next touch
      } finally {
        asking = false;
      }
    };
    const again = (): void => void ask();
    again();
    document.addEventListener('visibilitychange', again);
    document.addEventListener('pointerdown', again);
    return () => {
      over = true;
      held.current = false;
      document.removeEventListener('visibilitychange', again);
      document.removeEventListener('pointerdown', again);
      void lock?.release();
    };
  }, [wanted]);
  return held;
}
