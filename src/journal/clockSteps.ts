import type { Schedule, Ticks } from './stamp.ts';

/** Two clocks apart by more than this between two looks: one of them was moved or stood still. */
const STEP_MS = 500;

/** Goes as it is into the body of a `deviceNoted`. */
export interface ClockStep {
  readonly what: 'clockStepped' | 'sleptOrStepped';
  /** Wall time gained over monotonic time, negative when the wall clock went back. */
  readonly stepMs: number;
}

export interface ClockWatch {
  /** Looks now: on every change of visibility, so that no look spans a hidden time unknowingly. */
  readonly check: () => void;
  readonly stop: () => void;
}

/**
 * Compares the wall clock with the monotonic clock. A wall clock that went back was set. One that went forward was set
 * if the page was visible and the screen held awake at both looks; otherwise the tablet may as well have slept.
 */
export function watchClockSteps({
  ticks,
  schedule,
  everyMs = 1_000,
  isVisible,
  isAwake,
  onStep,
}: {
  readonly ticks: Ticks;
  readonly schedule: Schedule;
  readonly everyMs?: number;
  readonly isVisible: () => boolean;
  readonly isAwake: () => boolean;
  readonly onStep: (step: ClockStep) => void;
}): ClockWatch {
  const look = () => ({
    aheadMs: ticks.wallMs() - ticks.monoMs(),
    steady: isVisible() && isAwake(),
  });
  let last = look();
  let cancel = schedule(everyMs, tick);

  function check() {
    const next = look();
    const stepMs = Math.round(next.aheadMs - last.aheadMs);
    const steady = last.steady && next.steady;
    last = next;
    if (Math.abs(stepMs) > STEP_MS) {
      onStep({ what: stepMs < 0 || steady ? 'clockStepped' : 'sleptOrStepped', stepMs });
    }
  }

  function tick() {
    check();
    cancel = schedule(everyMs, tick);
  }

  return { check, stop: () => cancel() };
}
