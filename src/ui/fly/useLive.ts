import { useMemo } from 'react';
import { cardProgress } from '../../analysis/cards.ts';
import { expectedLive } from '../../analysis/coverage/expectedLive.ts';
import type { ExpectedDrag } from '../../analysis/coverage/expectedResults.ts';
import { laminarFraction, type LaminarNow } from '../../analysis/laminar.ts';
import { liveEstimate, liveHistory } from '../../analysis/liveEstimate.ts';
import type { CardProgress, LiveEstimate } from '../../analysis/results.ts';
import { epochMs, type EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';

const TREND_MS = 1_800_000;

/** What the figure shows; worked out when the record changes, not when the clock ticks. */
export interface LiveNow {
  readonly estimate: LiveEstimate;
  readonly history: readonly LiveEstimate[];
  readonly laminar: LaminarNow;
  /** What that area should take off the drag; null before a reading. */
  readonly expected: ExpectedDrag['expected'] | null;
  readonly card: CardProgress | null;
}

export function useLive(view: FlightView, nextPoint: string | null): LiveNow {
  return useMemo(() => {
    const estimate = liveEstimate(view);
    const newest = estimate.at ?? view.state.lastAt;
    return {
      estimate,
      history: newest === null ? [] : liveHistory(view, epochMs(newest - TREND_MS)),
      laminar: laminarFraction(view.state),
      expected: estimate.glance === null ? null : expectedLive(view, estimate.glance),
      card: cardInView(view, nextPoint),
    };
  }, [view, nextPoint]);
}

function cardInView(view: FlightView, nextPoint: string | null): CardProgress | null {
  const cards = cardProgress(view);
  return (
    cards.find((card) => card.state === 'open') ??
    cards.find((card) => card.point === nextPoint) ??
    null
  );
}

/** Older than two reading intervals: the figure is of the past. */
export function isStale(at: EpochMs, now: EpochMs, readingEveryS: number): boolean {
  return readingEveryS > 0 && now - at > 2 * readingEveryS * 1000;
}
