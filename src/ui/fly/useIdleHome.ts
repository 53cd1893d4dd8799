import { useEffect, useRef } from 'react';
import { useSecond } from '../kit/time.ts';
import type { Fly } from './flyContext.ts';

/** An open pad, panel or choice that nobody touches for so long goes home; what is half-typed is kept. */
const IDLE_MS = 30_000;

export function useIdleHome(fly: Fly): void {
  const { clock, ui, move } = fly;
  const now = useSecond(clock);
  const touchedAt = useRef(now);
  useEffect(() => {
    const touched = (): void => {
      touchedAt.current = clock.now();
    };
    window.addEventListener('pointerdown', touched, true);
    window.addEventListener('keydown', touched, true);
    return () => {
      window.removeEventListener('pointerdown', touched, true);
      window.removeEventListener('keydown', touched, true);
    };
  }, [clock]);
  const away = ui.pad !== null || ui.panel !== null || ui.chosen !== null || ui.wingPanel !== null;
  useEffect(() => {
    if (away && now - touchedAt.current >= IDLE_MS) {
      move({ do: 'home' });
    }
  }, [away, now, move]);
}
