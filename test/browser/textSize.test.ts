import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { scriptA } from '../flights/flightA.ts';
import { entriesUntil, flightOfScript } from '../flights/scriptToEntries.ts';
import { marksShown, touchMark } from './chart.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { SIZES, Tablet } from './tablet.ts';

/** Flight A in the fifth of its test points. */
const NOW = Date.UTC(2032, 5, 2, 23, 39, 12);
const SO_FAR = entriesUntil(flightOfScript(scriptA), 81);

let site: PreparedSite;
beforeAll(async () => {
  site = await preparedSite();
});
afterAll(async () => {
  await site.close();
});

async function withTextAt(
  percent: number,
  size: (typeof SIZES)[keyof typeof SIZES],
  then: (tablet: Tablet, scribe: Scribe) => Promise<void>,
): Promise<void> {
  const tablet = await Tablet.launch(site.origin, {
    size,
    executablePath: findBrowser() ?? '',
    startAt: NOW,
  });
  try {
    await leaveFlightOpen(tablet.page, site.origin, SO_FAR);
    await tablet.page.evaluate(
      (to) => localStorage.setItem('kneeline-size', to),
      `${percent / 100}`,
    );
    await tablet.open();
    await then(tablet, new Scribe(tablet, NOW + 60_000));
  } finally {
    await tablet.close();
  }
}

/** Width of the words on a key as they are drawn, in px of the window. */
async function drawnPx(tablet: Tablet, act: string): Promise<number> {
  return tablet.page.locator(`[data-act="${act}"]`).evaluate((element) => {
    const words = document.createRange();
    words.selectNodeContents(element);
    return words.getBoundingClientRect().width;
  });
}

async function selectedEntry(tablet: Tablet): Promise<string | null> {
  return tablet.page.evaluate(
    () =>
      document.querySelector<HTMLElement>('[data-act="mark"][aria-selected="true"]')?.dataset[
        'entry'
      ] ?? null,
  );
}

const toBrief = async (scribe: Scribe): Promise<void> => {
  for (const act of ['tile-more', 'tile-desk', 'desk-brief']) await scribe.tap(act);
};

describe.each([SIZES.kneeboard, SIZES.tablet])('larger text at $width x $height', (size) => {
  it('enlarges the ground by half again at 150 %, and nothing is cut off sideways', async () => {
    const measured: number[] = [];
    for (const percent of [100, 150]) {
      await withTextAt(percent, size, async (tablet, scribe) => {
        await toBrief(scribe);
        await scribe.tap('brief.tab=screen');
        measured.push(await drawnPx(tablet, 'nav.fly'));
        expect(
          await tablet.page.evaluate(() => {
            const { scrollWidth, clientWidth } = document.documentElement;
            return scrollWidth - clientWidth;
          }),
        ).toBeLessThanOrEqual(0);
      });
    }
    const [usual = Number.NaN, large = Number.NaN] = measured;
    // Letters are set on whole device pixels.
    expect(large / usual).toBeGreaterThan(1.45);
    expect(large / usual).toBeLessThan(1.55);
  });

  it('leaves the outline of the bank card at the size of the card', async () => {
    const widths: number[] = [];
    for (const percent of [100, 150]) {
      await withTextAt(percent, size, async (tablet, scribe) => {
        await toBrief(scribe);
        await scribe.tap('brief.tab=screen');
        const outline = tablet.page.locator('svg[aria-label^="Outline of a card"]');
        widths.push(await outline.evaluate((svg) => svg.getBoundingClientRect().width));
      });
    }
    expect(widths[1]).toBeCloseTo(widths[0] ?? Number.NaN, 0);
  });

  it('leaves a mark of the chart where the finger sees it', async () => {
    await withTextAt(150, size, async (tablet, scribe) => {
      for (const act of ['tile-more', 'tile-desk', 'desk-debrief']) await scribe.tap(act);
      await tablet.shown('timeline');
      // Marks stand at their places once the chart knows its width.
      await expect
        .poll(async () => new Set((await marksShown(tablet)).map(({ x }) => x)).size)
        .toBeGreaterThan(5);
      const mark = await touchMark(tablet, (marks) =>
        marks.find(({ kind, y }) => kind === 'moistureEntered' && y < size.height - 40),
      );
      // On the narrow page the table is below; the list of marks is there for keyboard and reader at any width.
      await expect.poll(() => selectedEntry(tablet)).toBe(mark.entry);
    });
  });
});

it('a touch that leaves Fly touches nothing on the screen that comes', async () => {
  // At this size the way to Debrief stands on Brief where the way to Brief stood on Fly.
  await withTextAt(150, SIZES.kneeboard, async (tablet, scribe) => {
    await toBrief(scribe);
    await tablet.shown('brief.tab=flight');
    expect(await scribe.isThere('tab-timeline')).toBe(false);
  });
});
