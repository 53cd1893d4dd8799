import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { DIST } from '../../.tools/built.mjs';
import { QUESTIONS } from '../../src/ui/debrief/answers/questions.ts';
import { startApp, type AppServer } from './appServer.ts';
import { demoTimelineLater } from './laterDemo.ts';
import { Scribe } from './scribe.ts';
import { SIZES, Tablet } from './tablet.ts';

const NOW = Date.UTC(2032, 5, 9, 6, 0, 0);

let server: AppServer;
let tablet: Tablet;
let scribe: Scribe;
beforeAll(async () => {
  server = await startApp(DIST);
  tablet = await Tablet.launch(server.origin, {
    executablePath: findBrowser() ?? '',
    startAt: NOW,
    size: SIZES.kneeboard,
  });
  scribe = new Scribe(tablet, NOW + 1_000);
  await tablet.open();
  await scribe.tap('start.demo');
  await scribe.tap('tab-answers');
});
afterAll(async () => {
  await tablet.close();
  await server.close();
});

/** Words of a drawing that lie outside it, or in another word of it; a drawing follows the width of the page a frame late. */
function wordsAmiss(): readonly string[] {
  return [...document.querySelectorAll('figure svg')].flatMap((svg) => {
    const frame = svg.getBoundingClientRect();
    const follows = Number(svg.getAttribute('width')) === svg.parentElement?.clientWidth;
    if (!follows) return ['a drawing has another width than its page'];
    const texts = [...svg.querySelectorAll('text')].filter(({ textContent }) => textContent !== '');
    const boxes = texts.map((text) => ({
      words: text.textContent,
      box: text.getBoundingClientRect(),
    }));
    return boxes.flatMap(({ words, box }, index) => [
      ...(box.left < frame.left - 1 || box.right > frame.right + 1 ? [`${words} is cut off`] : []),
      ...boxes
        .slice(index + 1)
        .filter(({ box: other }) => overlap(box, other))
        .map((other) => `${words} runs into ${other.words}`),
    ]);
  });
  function overlap(a: DOMRect, b: DOMRect): boolean {
    return (
      Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
      Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4
    );
  }
}

describe('the ten answers on a kneeboard tablet', () => {
  it.each(QUESTIONS)(
    'question $id opens by touch, fits, and leads to its entries: $name',
    async ({ id, name }) => {
      const { page } = tablet;
      await scribe.tap(`answer-${id}`);
      const article = page.getByRole('article', { name, exact: true });
      await article.waitFor();
      expect(await page.locator('[data-act="headline"]').innerText()).toMatch(/\d/);
      for (const size of [SIZES.tablet, SIZES.desk, SIZES.kneeboard]) {
        await page.setViewportSize(size);
        await expect.poll(() => page.evaluate(wordsAmiss)).toEqual([]);
        const wide = await article.evaluate((box) => box.scrollWidth - box.clientWidth);
        expect(wide).toBeLessThanOrEqual(0);
      }
      await scribe.tap('step-1');
      const list = page.getByRole('list', { name: 'Entries' });
      const [first] = await list.getByRole('listitem').allInnerTexts();
      const time = /\d\d:\d\d:\d\d/.exec(first ?? '')?.[0];
      await scribe.tap('open-entry');
      const detail = page.getByRole('region', { name: 'Selected entry' });
      await detail.waitFor();
      expect(await detail.innerText()).toContain(time);
      await scribe.tap('tab-answers');
      await article.waitFor();
    },
  );

  it('lays a chosen file beside the flight of this device and takes nothing in', async () => {
    const { page } = tablet;
    await scribe.tap('tab-flights');
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      scribe.tap('flight-files'),
    ]);
    await chooser.setFiles({
      name: 'later.jsonl',
      mimeType: 'application/x-ndjson',
      buffer: Buffer.from(demoTimelineLater(), 'utf8'),
    });
    await page.getByText('2 flights of QL-SMT').waitFor();
    expect(await page.getByRole('row').filter({ hasText: 'later.jsonl' }).count()).toBe(1);
    for (const size of [SIZES.kneeboard, SIZES.desk]) {
      await page.setViewportSize(size);
      await expect.poll(() => page.evaluate(wordsAmiss)).toEqual([]);
    }
    await tablet.open();
    await tablet.shown({ starts: 'days.debrief=' });
    const flights = await tablet.targets();
    expect(flights.filter(({ act }) => act.startsWith('days.debrief='))).toHaveLength(1);
  });
});
