import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { readTimeline } from '../../src/file/readTimeline.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { SIZES, Tablet } from './tablet.ts';
import { fromFlyToDebrief, savedFile } from './timelineFiles.ts';

const NOW = Date.UTC(2032, 5, 2, 12, 0, 0);
/** From one stroke to the next: well inside the half minute after which an idle pad goes home. */
const STROKE_MS = 4_000;

type Share = readonly [x: number, y: number];

let site: PreparedSite;
let tablet: Tablet;
let scribe: Scribe;
beforeEach(async () => {
  site = await preparedSite();
  tablet = await Tablet.launch(site.origin, {
    executablePath: findBrowser() ?? '',
    startAt: NOW,
    size: SIZES.kneeboard,
  });
  await leaveFlightOpen(tablet.page, site.origin, inCruise(NOW));
  scribe = new Scribe(tablet, NOW);
  await tablet.open();
  await scribe.tap('tile-more');
  await scribe.tap('tile-sketch');
  await tablet.shown('ink-words');
});
afterEach(async () => {
  await tablet.close();
  await site.close();
});

/** Draws a line between two places on the card, as shares of its side; more contacts come down with the first. */
async function line(
  from: Share,
  to: Share,
  at: number,
  beside: readonly { readonly at: Share; readonly radius?: number }[] = [],
): Promise<void> {
  const box = await tablet.page.locator('[data-ink]').boundingBox();
  if (box === null) throw new Error('the card must be on the screen');
  const point = ([x, y]: Share) => ({ x: box.x + x * box.width, y: box.y + y * box.height });
  const others = beside.map(({ at: place, radius }) => ({
    ...point(place),
    ...(radius !== undefined && { radius }),
  }));
  await tablet.touch([point(from), ...others], { at, heldMs: 400, up: [point(to), ...others] });
}

const strokesDrawn = () => tablet.page.locator('[data-ink] path').count();

describe('a note drawn by hand', () => {
  it('is timed by its first stroke, kept half-drawn, saved by its key and shown on Debrief', async () => {
    await line([0.2, 0.2], [0.8, 0.8], NOW + 2 * STROKE_MS);
    await scribe.tapAt('pad-close', NOW + 3 * STROKE_MS);
    await scribe.tap('tile-more');
    await scribe.tap('tile-sketch');
    await tablet.shown('ink-save');
    expect(await strokesDrawn()).toBe(1);
    await line([0.8, 0.2], [0.2, 0.8], scribe.nowMs + 1000);
    await line([0.5, 0.1], [0.5, 0.9], scribe.nowMs + 2000);
    scribe.waitUntil(scribe.nowMs + 3000);
    await scribe.tap('ink-back');
    await scribe.tap('ink-save');
    await tablet.page.getByText('Sketch, 2 strokes').first().waitFor();

    await fromFlyToDebrief(scribe);
    const { text } = await savedFile(scribe);
    const read = readTimeline(text, text.length);
    if (read.kind === 'refused') throw new Error(read.refusal.reason);
    const sketch = read.entries.find(({ kind }) => kind === 'sketchDrawn');
    expect(Math.abs((sketch?.wall ?? 0) - (NOW + 2 * STROKE_MS))).toBeLessThanOrEqual(20);
    expect(sketch).toMatchObject({
      author: 'S1',
      body: { strokes: [expect.arrayContaining([200]), expect.arrayContaining([800])] },
    });
    await scribe.tap('tab-timeline');
    await tablet.page.setViewportSize(SIZES.desk);
    await scribe.tap('sort-time');
    await scribe.tap({ act: 'row', entry: sketch?.id ?? '' });
    const drawn = tablet.page.getByRole('img', { name: 'Sketch, 2 strokes' });
    await drawn.waitFor();
    expect(await drawn.locator('path').count()).toBe(2);
  });

  it('is not drawn by a palm, nor by what rests beside the finger', async () => {
    await line([0.2, 0.2], [0.8, 0.8], NOW + 2 * STROKE_MS, [{ at: [0.9, 0.1] }]);
    expect(await strokesDrawn()).toBe(1);
    await line([0.3, 0.5], [0.7, 0.5], NOW + 3 * STROKE_MS, [
      { at: [0.5, 0.7] },
      { at: [0.6, 0.9] },
    ]);
    expect(await strokesDrawn()).toBe(1);
    // A palm of 34 mm: the least scale is 6.42 px a mm on this screen.
    const box = await tablet.page.locator('[data-ink]').boundingBox();
    const middle = { x: (box?.x ?? 0) + 200, y: (box?.y ?? 0) + 200, radius: 17 * 6.42 };
    await tablet.touch([middle], { at: NOW + 4 * STROKE_MS, heldMs: 400 });
    expect(await strokesDrawn()).toBe(1);
  });

  it('ends where the finger leaves the card', async () => {
    await line([0.5, 0.5], [1.4, 0.5], NOW + 2 * STROKE_MS);
    await scribe.tapAt('ink-save', NOW + 3 * STROKE_MS);
    await tablet.page.getByText('Sketch, 1 stroke').first().waitFor();
  });

  it('gives way to words', async () => {
    await scribe.tap('ink-words');
    await tablet.shown({ words: 'Insects about' });
  });
});
