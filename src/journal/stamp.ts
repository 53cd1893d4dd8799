import { epochMs } from '../record/brand.ts';
import type { Stamp } from '../record/entry.ts';
import type { Clock } from './journal.ts';

/** An event cannot have waited longer for its handler; WebKit has shown 0, negative and stale event times. */
const OLDEST_CONTACT_MS = 2_000;

/** Two clocks read no further apart than this were read at one instant. */
const READ_APART_MS = 1;
const READ_TRIES = 4;

/** The two clocks of the machine. The wall may jump either way; the monotonic one may stop in sleep. */
export interface Ticks {
  readonly wallMs: () => number;
  readonly monoMs: () => number;
}

export const browserTicks: Ticks = {
  wallMs: () => Date.now(),
  monoMs: () => performance.now(),
};

/** Runs `run` after `afterMs` milliseconds. Returns the way to call it off. */
export type Schedule = (afterMs: number, run: () => void) => () => void;

export const browserSchedule: Schedule = (afterMs, run) => {
  const timer = setTimeout(run, afterMs);
  return () => clearTimeout(timer);
};

/** The clock of this page load. Make one: each has its own boot id. */
export function browserClock(ticks: Ticks = browserTicks, boot: string = randomId()): Clock {
  // Wall time is never built from the time origin: the monotonic clock stands still while a tablet sleeps.
  const aged = ({ wallMs, monoMs }: Reading, ageMs: number): Stamp => ({
    wall: epochMs(Math.round(wallMs - ageMs)),
    mono: Math.round((monoMs - ageMs) * 10) / 10,
    boot,
  });
  return {
    now: () => epochMs(Math.round(ticks.wallMs())),
    stampOf: (event) => {
      const reading = readTogether(ticks);
      const ageMs = reading.monoMs - event.timeStamp;
      return aged(reading, ageMs >= 0 && ageMs <= OLDEST_CONTACT_MS ? ageMs : 0);
    },
    stampNow: () => aged(readTogether(ticks), 0),
  };
}

interface Reading {
  readonly wallMs: number;
  readonly monoMs: number;
}

/** Both clocks at one instant: read again where the machine was held up between the two. */
function readTogether({ wallMs, monoMs }: Ticks): Reading {
  let best: Reading = { wallMs: 0, monoMs: 0 };
  let apartMs = Number.POSITIVE_INFINITY;
  for (let tries = 0; tries < READ_TRIES && apartMs > READ_APART_MS; tries += 1) {
    const before = monoMs();
    const wall = wallMs();
    const after = monoMs();
    if (after - before < apartMs) {
      best = { wallMs: wall, monoMs: after };
      apartMs = after - before;
    }
  }
  return best;
}

/** 128 random bits as 32 lower-case hexadecimal digits: flights, recorders and page loads are named by these. */
export function randomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
