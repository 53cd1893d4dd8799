import type { CDPSession, Page } from 'playwright-core';
import { leaveFlightOpen } from '../browser/prepared.ts';
import { withTablet } from './benchPage.ts';
import { longCruise } from './longCruise.ts';
import { quantile, type Counted, type Ratio } from './ratios.ts';
import { watchTouches, type TouchesSeen } from './touchesInPage.ts';

const ROUNDS = 20;
const SLOWED = 4;
const HELD_MS = 80;
/** Between a release and the next contact: two tiles are not taken for one, and a round is longer than an interval must be. */
const BETWEEN_MS = 560;
/** A mark, an interval that opens and closes in turn, one more, and what was last taken back. */
const ACTS = ['tile-mark', 'tile-cloud', 'tile-sample', 'undo'] as const;
const LENGTHS = [500, 20_000] as const;
const LIMITS_MS = { pressed: 88, saved: 250 } as const;

/** What a finger sees of its touches on Fly, on a processor slowed four times, in a usual flight and in a very long one. */
export async function touchRatios(executablePath: string): Promise<readonly (Ratio | Counted)[]> {
  const lines: (Ratio | Counted)[] = [];
  for (const length of LENGTHS) {
    const { pressed, saved, shift, movedKeys } = await touchesAt(executablePath, length);
    const where = `processor slowed ${SLOWED}x, ${length} entries`;
    const limited = (what: string, times: readonly number[], yardstickMs: number): Ratio[] =>
      [0.5, 0.95].map((share) => ({
        promise: `${what}, p${share * 100} of ${times.length}, ${where}`,
        oursMs: quantile(times, share),
        yardstick: 'the limit',
        yardstickMs,
        atMost: 1,
      }));
    lines.push(
      ...limited('pressed look', pressed, LIMITS_MS.pressed),
      ...limited('saved mark', saved, LIMITS_MS.saved),
      { promise: `layout shift on Fly, ${where}`, found: shift, words: '', atMost: 0 },
      {
        promise: `keys that moved on Fly, ${where}`,
        found: movedKeys.length,
        words: [...new Set(movedKeys)].join(' '),
        atMost: 0,
      },
    );
  }
  return lines;
}

function touchesAt(executablePath: string, length: number): Promise<TouchesSeen> {
  const entries = longCruise(length);
  const startAt = (entries.at(-1)?.wall ?? 0) + 1_000;
  return withTablet(
    executablePath,
    async (tablet, { origin }) => {
      const { page } = tablet;
      await leaveFlightOpen(page, origin, entries);
      await tablet.open();
      await tablet.shown('tile-mark');
      const protocol = await tablet.context.newCDPSession(page);
      await tablet.saved();
      await loaded(page);
      await page.evaluate(watchTouches);
      await protocol.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
      const places = await Promise.all(ACTS.map((act) => middleOf(page, act)));
      for (let round = 0; round < ROUNDS; round += 1) {
        for (const at of places) await touchFor(page, protocol, at);
      }
      const saved = await tablet.saved();
      const touches = ROUNDS * ACTS.length;
      if (saved < length + touches) {
        throw new Error(`${touches} touches must be saved, got ${saved - length}`);
      }
      return page.evaluate((): TouchesSeen => Reflect.get(globalThis, 'touchesSeen')());
    },
    { startAt },
  );
}

/** With its fonts: what moves while they come is no shift of a screen that somebody touches. */
async function loaded(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await document.fonts.ready;
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  });
}

async function middleOf(page: Page, act: string): Promise<{ x: number; y: number }> {
  const box = await page.locator(`[data-act="${act}"]`).boundingBox();
  if (box === null) throw new Error(`${act} must be on the screen`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** A contact in real time: what is measured here is time. */
async function touchFor(
  page: Page,
  protocol: CDPSession,
  at: { readonly x: number; readonly y: number },
): Promise<void> {
  await protocol.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [at] });
  await page.waitForTimeout(HELD_MS);
  await protocol.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await page.waitForTimeout(BETWEEN_MS);
}
