import { useMemo, useState } from 'react';
import type { EpochMs } from '../../../record/brand.ts';
import type { TimelineModel } from './model.ts';
import { panned, revealing, windowWithin, zoomed, type TimeWindow } from './timeScale.ts';

export interface TimeWindowControl {
  readonly window: TimeWindow;
  readonly zoom: (factor: number, about: EpochMs) => void;
  readonly pan: (byMs: number) => void;
  readonly whole: () => void;
  readonly reveal: (at: EpochMs) => void;
  readonly show: (window: TimeWindow) => void;
}

/** The part of the flight in view; from blocks off to blocks on until somebody zooms. */
export function useTimeWindow(model: TimelineModel): TimeWindowControl {
  const [chosen, setChosen] = useState<TimeWindow | null>(null);
  const { extent, flightSpan, airborneSpan } = model;
  return useMemo(() => {
    const now = (window: TimeWindow | null): TimeWindow =>
      windowWithin(window ?? airborneSpan, extent);
    const change = (next: (window: TimeWindow) => TimeWindow): void =>
      setChosen((before) => next(now(before)));
    return {
      window: now(chosen),
      zoom: (factor, about) =>
        change((before) => zoomed(before, { factor, about, limits: extent })),
      pan: (byMs) => change((before) => panned(before, byMs, extent)),
      whole: () => setChosen(flightSpan),
      reveal: (at) => change((before) => revealing(before, at, extent)),
      show: (window) => change(() => windowWithin(window, extent)),
    };
  }, [chosen, extent, flightSpan, airborneSpan]);
}
