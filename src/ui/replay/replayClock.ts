import type { Clock } from '../../journal/journal.ts';
import { epochMs, type EpochMs } from '../../record/brand.ts';

/** A clock that runs through a flight's own time at a chosen speed, on the beat of the real one. */
export interface ReplayClock extends Clock {
  /** 0 stands still. */
  readonly speed: () => number;
  readonly setSpeed: (speed: number) => void;
  readonly moveTo: (at: EpochMs) => void;
}

export function replayClock(real: Clock, start: EpochMs): ReplayClock {
  let from = start;
  let since = real.now();
  let speed = 0;
  const now = (): EpochMs => epochMs(Math.round(from + (real.now() - since) * speed));
  const rest = (at: EpochMs): void => {
    from = at;
    since = real.now();
  };
  return {
    now,
    stampOf: (event) => ({ ...real.stampOf(event), wall: now() }),
    stampNow: () => ({ ...real.stampNow(), wall: now() }),
    speed: () => speed,
    setSpeed: (next) => {
      rest(now());
      speed = next;
    },
    moveTo: rest,
  };
}
