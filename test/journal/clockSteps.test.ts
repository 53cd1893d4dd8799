import { describe, expect, it } from 'vitest';
import { watchClockSteps, type ClockStep } from '../../src/journal/clockSteps.ts';
import { testTime } from './testTime.ts';

function watched() {
  const time = testTime();
  const page = { isVisible: true, isAwake: true };
  const steps: ClockStep[] = [];
  const watch = watchClockSteps({
    ticks: { wallMs: time.clock.now, monoMs: () => time.clock.stampNow().mono },
    schedule: time.schedule,
    isVisible: () => page.isVisible,
    isAwake: () => page.isAwake,
    onStep: (step) => steps.push(step),
  });
  const stepWall = (stepMs: number) => time.setWall(time.clock.now() + stepMs);
  return { time, page, steps, watch, stepWall };
}

describe('clock steps', () => {
  it.each([-3_600_000, -501, 501, 3_600_000])(
    'notes a step of %i ms while the page is visible and awake',
    (stepMs) => {
      const { time, steps, stepWall } = watched();
      time.advance(10_000);
      stepWall(stepMs);
      time.advance(10_000);
      expect(steps).toEqual([{ what: 'clockStepped', stepMs }]);
    },
  );

  it.each([-500, -20, 0, 20, 500])('takes %i ms for no step', (stepMs) => {
    const { time, steps, stepWall } = watched();
    stepWall(stepMs);
    time.advance(10_000);
    expect(steps).toEqual([]);
  });

  it('does not add up a clock that is drawn to the right time slowly', () => {
    const { time, steps, stepWall } = watched();
    for (let second = 0; second < 3_600; second += 1) {
      stepWall(1);
      time.advance(1_000);
    }
    expect(steps).toEqual([]);
  });

  it.each([
    ['hidden', { isVisible: false, isAwake: true }],
    ['not held awake', { isVisible: true, isAwake: false }],
  ])('cannot tell a step forward from sleep after the page was %s', (_, state) => {
    const { page, steps, watch, stepWall } = watched();
    Object.assign(page, state);
    watch.check();
    stepWall(600_000);
    Object.assign(page, { isVisible: true, isAwake: true });
    watch.check();
    expect(steps).toEqual([{ what: 'sleptOrStepped', stepMs: 600_000 }]);
  });

  it('knows a step back even then: sleep never takes time away', () => {
    const { page, steps, watch, stepWall } = watched();
    page.isVisible = false;
    stepWall(-600_000);
    watch.check();
    expect(steps).toEqual([{ what: 'clockStepped', stepMs: -600_000 }]);
  });

  it('looks no more once it is stopped', () => {
    const { time, steps, watch, stepWall } = watched();
    watch.stop();
    stepWall(5_000);
    time.advance(10_000);
    expect(steps).toEqual([]);
    expect(time.nextDueMs()).toBeNull();
  });
});
