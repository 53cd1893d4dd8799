import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { DIST } from '../../.tools/built.mjs';
import { scriptA } from '../flights/flightA.ts';
import { flightOfScript, idOfLine } from '../flights/scriptToEntries.ts';
import { startApp, type AppServer } from './appServer.ts';
import { marksShown, touchMark } from './chart.ts';
import { Scribe } from './scribe.ts';
import { SIZES, Tablet } from './tablet.ts';

const NOW = Date.UTC(2032, 5, 3, 6, 0, 0);

/** First fuel reading of the fifth test point, 23:36:00 UTC: 840 and 790 lb/h. */
const READING_OF_TP05 = idOfLine(flightOfScript(scriptA).idOf, 80);

let server: AppServer;
let tablet: Tablet;
let scribe: Scribe;
beforeEach(async () => {
  server = await startApp(DIST);
  tablet = await Tablet.launch(server.origin, {
    executablePath: findBrowser() ?? '',
    startAt: NOW,
    size: SIZES.desk,
  });
  scribe = new Scribe(tablet, NOW + 1_000);
  await tablet.open();
  await scribe.tap('start.demo');
  await tablet.shown('timeline');
});
afterEach(async () => {
  await tablet.close();
  await server.close();
});

const shownCount = async () => (await marksShown(tablet)).length;

async function chartBox() {
  const box = await tablet.page.locator('canvas[data-act="timeline"]').boundingBox();
  if (box === null) throw new Error('the chart must be drawn');
  return box;
}

/** Two fingers that part from the middle of the chart. */
async function pinchOpen(): Promise<void> {
  const { x, y, width, height } = await chartBox();
  const finger = (share: number) => ({ x: x + share * width, y: y + height / 2 });
  await tablet.touch([finger(0.45), finger(0.55)], { up: [finger(0.25), finger(0.75)] });
}

async function dragBy(share: number): Promise<void> {
  const { x, y, width, height } = await chartBox();
  const finger = (at: number) => ({ x: x + at * width, y: y + height / 2 });
  await tablet.touch([finger(0.5)], { up: [finger(0.5 + share)] });
}

const pointFigure = (point: string) =>
  tablet.page.locator(`[data-act="result-${point}-1"]`).innerText();

describe('the timeline of Debrief under a finger', () => {
  it('is zoomed by two fingers and by a key, moved by one, and shown whole again', async () => {
    const whole = await shownCount();
    await pinchOpen();
    await expect.poll(shownCount).toBeLessThan(whole);
    const pinched = (await marksShown(tablet)).map(({ entry }) => entry);
    await dragBy(0.2);
    await expect
      .poll(async () => (await marksShown(tablet)).map(({ entry }) => entry))
      .not.toEqual(pinched);
    const moved = await shownCount();
    await scribe.tap('zoom-in');
    await expect.poll(shownCount).toBeLessThan(moved);
    await scribe.tap('zoom-all');
    await expect.poll(shownCount).toBeGreaterThanOrEqual(whole);
  });

  it('shows one kind alone in chart and table, and says its time as chosen', async () => {
    const whole = await shownCount();
    const choose = (act: string, value: string) =>
      tablet.page.locator(`[data-act="${act}"]`).selectOption(value);
    await scribe.tap('filters');
    await choose('filter-kind', 'moistureEntered');
    const kinds = async () => new Set((await marksShown(tablet)).map(({ kind }) => kind));
    await expect.poll(kinds).toEqual(new Set(['moistureEntered']));
    expect(await shownCount()).toBeLessThan(whole);
    await choose('axis-time', 'fromTakeOff');
    await choose('filter-kind', 'liftedOff');
    const row = tablet.page.locator('[data-act="row"]');
    await expect.poll(() => row.allInnerTexts()).toEqual(['+0:00']);
    await scribe.tap('row');
    await expect.poll(() => row.getAttribute('aria-pressed')).toBe('true');
  });

  it('selects the row of the mark that is touched, and an amendment there moves the result', async () => {
    await pinchOpen();
    const before = await pointFigure('TP05');
    const mark = await touchMark(tablet, (marks) =>
      marks.find(({ entry }) => entry === READING_OF_TP05),
    );
    const row = tablet.page.locator(`[data-act="row"][data-entry="${mark.entry}"]`);
    await expect.poll(() => row.getAttribute('aria-pressed')).toBe('true');

    await scribe.tap('detail-amend');
    await scribe.put('field-readings.FF1.value', '900');
    await scribe.tap('code-misKeyed');
    await scribe.put('reason', 'read again from the photograph');
    await scribe.tap('save');
    await tablet.page.getByRole('status').filter({ hasText: 'Amended' }).first().waitFor();
    await expect.poll(() => pointFigure('TP05')).not.toBe(before);
    expect(reductionPct(await pointFigure('TP05'))).toBeLessThan(reductionPct(before));
  });
});

/** "28.7 ± 0.6": more fuel burnt is less reduction. */
function reductionPct(words: string): number {
  return Number(/^[\u2212\d.]+/.exec(words.trim())?.[0].replace('\u2212', '-'));
}
