import { epochMs } from '../record/brand.ts';
import type { Stamp } from '../record/entry.ts';
import type { Clock } from './journal.ts';

/** An event cannot have waited longer for its handler; WebKit has shown 0, negative and stale event times. */
const OLDEST_CONTACT_MS = 2_000;

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
  const aged = (monoMs: number, ageMs: number): Stamp => ({
    wall: epochMs(Math.round(ticks.wallMs() - ageMs)),
    mono: Math.round((monoMs - ageMs) * 10) / 10,
    boot,
  });
  return {
    now: () => epochMs(Math.round(ticks.wallMs())),
    stampOf: (event) => {
      const monoMs = ticks.monoMs();
      const ageMs = monoMs - event.timeStamp;
      return aged(monoMs, ageMs >= 0 && ageMs <= OLDEST_CONTACT_MS ? ageMs : 0);
    },
    stampNow: () => aged(ticks.monoMs(), 0),
  };
}

/** 128 random bits as 32 lower-case hexadecimal digits: flights, recorders and page loads are named by these. */
export function randomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
