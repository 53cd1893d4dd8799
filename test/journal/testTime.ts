import { epochMs } from '../../src/record/brand.ts';
import type { Clock } from '../../src/journal/journal.ts';
import type { Schedule } from '../../src/journal/stamp.ts';

export interface TestTime {
  readonly clock: Clock;
  readonly schedule: Schedule;
  /** Lets time pass, and runs what falls due on the way, in order. */
  readonly advance: (ms: number) => void;
  /** Sets the wall clock; the monotonic clock does not notice. */
  readonly setWall: (wallMs: number) => void;
  /** Milliseconds until the next thing that is due; null when nothing is. */
  readonly nextDueMs: () => number | null;
}

const START_MS = Date.UTC(2031, 4, 6, 12, 0, 0);

/** A clock and its timers, moved by hand. */
export function testTime(
  startMs: number = START_MS,
  boot = 'b00700000000000000000000000000aa',
): TestTime {
  let wallMs = startMs;
  let monoMs = 1_000;
  let timers: { readonly dueMs: number; readonly run: () => void }[] = [];
  const stampNow = () => ({ wall: epochMs(wallMs), mono: monoMs, boot });

  return {
    clock: { now: () => epochMs(wallMs), stampNow, stampOf: stampNow },
    schedule: (afterMs, run) => {
      const timer = { dueMs: monoMs + afterMs, run };
      timers = [...timers, timer].sort((a, b) => a.dueMs - b.dueMs);
      return () => {
        timers = timers.filter((it) => it !== timer);
      };
    },
    advance: (ms) => {
      const endMs = monoMs + ms;
      for (let next = timers[0]; next !== undefined && next.dueMs <= endMs; next = timers[0]) {
        timers = timers.slice(1);
        wallMs += next.dueMs - monoMs;
        monoMs = next.dueMs;
        next.run();
      }
      wallMs += endMs - monoMs;
      monoMs = endMs;
    },
    setWall: (nextMs) => {
      wallMs = nextMs;
    },
    nextDueMs: () => (timers[0] === undefined ? null : timers[0].dueMs - monoMs),
  };
}
