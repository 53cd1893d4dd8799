import type { PanelState } from '../../../record/kinds.ts';

/** A share as one of three fills: two thirds and more is laminar, a third and less turbulent (a choice). */
export function shareState(fraction: number | undefined): PanelState {
  if (fraction === undefined) return 'notAssessed';
  if (fraction >= 2 / 3) return 'laminar';
  return fraction <= 1 / 3 ? 'turbulent' : 'intermittent';
}
