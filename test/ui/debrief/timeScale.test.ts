import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochMs } from '../../../src/record/brand.ts';
import {
  NARROWEST_MS,
  panned,
  revealing,
  TICK_STEPS_MIN,
  ticks,
  timeAt,
  windowWithin,
  xOf,
  zoomed,
  type TimeWindow,
} from '../../../src/ui/debrief/timeline/timeScale.ts';

const AT_22_00 = Date.UTC(2032, 5, 2, 22, 0, 0);
const MINUTE_MS = 60_000;
const minutes = (from: number, to: number): TimeWindow => ({
  from: epochMs(AT_22_00 + from * MINUTE_MS),
  to: epochMs(AT_22_00 + to * MINUTE_MS),
});
const DAY = minutes(-720, 720);

describe('the time axis', () => {
  it('puts the ends of the window at the ends of the width', () => {
    const scale = { window: minutes(0, 60), widthPx: 600 };
    expect(xOf(scale, scale.window.from)).toBe(0);
    expect(xOf(scale, scale.window.to)).toBe(600);
    expect(timeAt(scale, 300)).toBe(AT_22_00 + 30 * MINUTE_MS);
  });

  it('steps by 1, 2, 5, 10, 30 or 60 minutes and by nothing else', () => {
    const stepOf = (lengthMin: number, widthPx: number): number =>
      ticks({ window: minutes(0, lengthMin), widthPx }, 60).stepMs / MINUTE_MS;
    // 600 px hold ten labels of 60 px: ten minutes step by one, eleven by two, and so on.
    expect(stepOf(10, 600)).toBe(1);
    expect(stepOf(11, 600)).toBe(2);
    expect(stepOf(21, 600)).toBe(5);
    expect(stepOf(51, 600)).toBe(10);
    expect(stepOf(101, 600)).toBe(30);
    expect(stepOf(301, 600)).toBe(60);
    expect(stepOf(1440, 600)).toBe(60);
    expect(TICK_STEPS_MIN).toEqual([1, 2, 5, 10, 30, 60]);
  });

  it('stands its ticks on whole steps of the UTC day and names midnight', () => {
    const found = ticks({ window: minutes(97, 143), widthPx: 500 }, 60).ticks;
    expect(found.map(({ at }) => (at - AT_22_00) / MINUTE_MS)).toEqual([100, 110, 120, 130, 140]);
    expect(found.filter(({ midnight }) => midnight).map(({ at }) => at)).toEqual([
      Date.UTC(2032, 5, 3),
    ]);
  });

  it('thins labels out where even hourly ticks would touch', () => {
    const found = ticks({ window: DAY, widthPx: 480 }, 60).ticks;
    const labelled = found.filter((tick) => tick.labelled);
    expect(found).toHaveLength(25);
    // 20 px an hour: a label of 60 px fits every third hour.
    expect(labelled).toHaveLength(8);
  });
});

describe('the window', () => {
  const anyWindow = fc
    .tuple(fc.integer({ min: -700, max: 690 }), fc.integer({ min: 2, max: 600 }))
    .map(([from, length]) => minutes(from, from + length));

  it('keeps under the finger what was there while zooming', () => {
    fc.assert(
      fc.property(
        anyWindow,
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (window, share, factor) => {
          const inside = windowWithin(window, DAY);
          const about = epochMs(Math.round(inside.from + share * (inside.to - inside.from)));
          const after = zoomed(inside, { factor, about, limits: DAY });
          const before = (about - inside.from) / (inside.to - inside.from);
          expect((about - after.from) / (after.to - after.from)).toBeCloseTo(before, 3);
        },
      ),
    );
  });

  it('never leaves its limits and never gets narrower than a minute', () => {
    fc.assert(
      fc.property(
        anyWindow,
        fc.double({ min: 0.001, max: 50, noNaN: true }),
        fc.integer({ min: -900, max: 900 }),
        (window, factor, shiftMin) => {
          const about = window.from;
          const after = panned(
            zoomed(window, { factor, about, limits: DAY }),
            shiftMin * MINUTE_MS,
            DAY,
          );
          expect(after.from).toBeGreaterThanOrEqual(DAY.from);
          expect(after.to).toBeLessThanOrEqual(DAY.to);
          expect(after.to - after.from).toBeGreaterThanOrEqual(NARROWEST_MS);
        },
      ),
    );
  });

  it('moves no further than it must to reveal an instant', () => {
    const window = minutes(0, 80);
    expect(revealing(window, epochMs(AT_22_00 + 40 * MINUTE_MS), DAY)).toBe(window);
    // A margin of an eighth, ten minutes, stays on the far side.
    expect(revealing(window, epochMs(AT_22_00 + 90 * MINUTE_MS), DAY)).toEqual(minutes(20, 100));
    expect(revealing(window, epochMs(AT_22_00 - 20 * MINUTE_MS), DAY)).toEqual(minutes(-30, 50));
  });
});
