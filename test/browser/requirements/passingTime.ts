import type { Scribe } from '../scribe.ts';

/** Lets page time pass with no hand on the tablet, and what depends on it be drawn. Fly must run with `ownTicks`. */
export async function passTime(scribe: Scribe, byMs: number): Promise<void> {
  const nowMs = await scribe.tablet.page.evaluate(async (by) => {
    Reflect.get(globalThis, 'passTime')(by);
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
    return Date.now();
  }, byMs);
  scribe.waitUntil(nowMs + 1_000);
}
