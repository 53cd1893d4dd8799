import type { EntryId } from '../../record/brand.ts';
import type { Wing } from '../../record/sheet.ts';
import { wingLoss, type WingLoss } from './lossLags.ts';
import { wingRecovery, type WingRecovery } from './recoveryLags.ts';
import type { WingInMoisture } from './wingInMoisture.ts';

/** One moisture encounter as one wing saw it. */
export interface WingEncounter {
  readonly wing: Wing;
  readonly loss: WingLoss;
  readonly recovery: WingRecovery;
  /** Losses that a valve made inside this moisture: they are no losses by cloud. */
  readonly lostByCommand: readonly EntryId[];
}

export function wingEncounter(of: WingInMoisture): WingEncounter {
  const { interval, looks, wing } = of;
  const loss = wingLoss(of);
  return {
    wing,
    loss,
    recovery: wingRecovery(of, loss),
    lostByCommand: looks
      .filter(({ isLoss, byCommand }) => isLoss && byCommand)
      .filter(({ at }) => at >= interval.opened.at)
      .filter(({ at }) => interval.closed === null || at <= interval.closed.at)
      .map(({ by }) => by),
  };
}
