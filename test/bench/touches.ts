import type { CDPSession, Page } from 'playwright-core';
import { inCruise } from '../browser/inCruise.ts';
import { leaveFlightOpen } from '../browser/prepared.ts';
import { withTablet } from './benchPage.ts';
import { quantile, type Ratio } from './ratios.ts';

const TOUCHES = 60;
const SLOWED = 4;
const HELD_MS = 80;
/** Beyond the time within which the same tile takes a second contact for a bounce. */
const BETWEEN_MS = 560;

interface Seen {
  /** From contact to the frame that shows it. Contacts shown within 16 ms are not reported by the browser. */
  readonly pressed: readonly number[];
  /** From release to the frame that shows the entry as saved. */
  readonly saved: readonly number[];
}

/** What a finger sees of a touch on Fly, on a processor slowed four times. */
export function touchRatios(executablePath: string): Promise<readonly Ratio[]> {
  return withTablet(executablePath, async (tablet, { origin }) => {
    await leaveFlightOpen(tablet.page, origin, inCruise(Date.now()));
    await tablet.open();
    await tablet.shown('tile-mark');
    const protocol = await tablet.context.newCDPSession(tablet.page);
    await protocol.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
    await watch(tablet.page);
    const at = await middleOf(tablet.page, 'tile-mark');
    for (let touch = 0; touch < TOUCHES; touch += 1) await touchFor(tablet.page, protocol, at);
    const { pressed, saved } = await tablet.page.evaluate((): Seen =>
      Reflect.get(globalThis, 'touchesSeen'),
    );
    return [
      {
        promise: `pressed look, p95 of ${pressed.length}, processor slowed ${SLOWED}x`,
        oursMs: quantile(pressed, 0.95),
        yardstick: 'the limit',
        yardstickMs: 88,
        atMost: 1,
      },
      {
        promise: `saved mark, p95 of ${saved.length}, processor slowed ${SLOWED}x`,
        oursMs: quantile(saved, 0.95),
        yardstick: 'the limit',
        yardstickMs: 250,
        atMost: 1,
      },
    ];
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

async function watch(page: Page): Promise<void> {
  await page.evaluate(() => {
    const pressed: number[] = [];
    const saved: number[] = [];
    let releasedAt: number | null = null;
    // The option is the browser's, not yet TypeScript's.
    const eventTiming = { type: 'event', durationThreshold: 16 };
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        if (entry.name === 'pointerdown') pressed.push(entry.duration);
      }
    }).observe(eventTiming);
    window.addEventListener('pointerup', ({ timeStamp }) => (releasedAt = timeStamp), true);
    const look = () => {
      requestAnimationFrame(() => {
        if (releasedAt !== null) saved.push(performance.now() - releasedAt);
        releasedAt = null;
      });
    };
    new MutationObserver(look).observe(document.body, {
      subtree: true,
      attributes: true,
      attributeFilter: ['data-saved'],
    });
    Object.assign(globalThis, { touchesSeen: { pressed, saved } });
  });
}
