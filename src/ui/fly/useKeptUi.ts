import { useEffect, useReducer, type Dispatch } from 'react';
import type { Clock, Journal } from '../../journal/journal.ts';
import { flyMoved, HOME, type FlyMove, type FlyUi } from './flyState.ts';
import { keepUi, keptUi } from './keptUi.ts';

/** The places of Fly, as they stood when the app last ran on this flight; a replay begins at home and keeps nothing. */
export function useKeptUi(journal: Journal, clock: Clock): readonly [FlyUi, Dispatch<FlyMove>] {
  const [ui, move] = useReducer(flyMoved, null, () =>
    journal.recorder() === null ? HOME : keptUi(localStorage, journal.flight, clock.now()),
  );
  useEffect(() => {
    if (journal.recorder() !== null) {
      keepUi(localStorage, journal.flight, ui, clock.now());
    }
  }, [journal, clock, ui]);
  return [ui, move];
}
