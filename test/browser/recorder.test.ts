import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { DIST } from '../../.tools/built.mjs';
import { startApp, type AppServer } from './appServer.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';

const NOW = Date.UTC(2032, 5, 3, 6, 0, 0);
const TRACE = join(import.meta.dirname, '../flights/scripts/flight-a-recorder.csv.gz');

let server: AppServer;
let tablet: Tablet;
let scribe: Scribe;
beforeEach(async () => {
  server = await startApp(DIST);
  tablet = await Tablet.launch(server.origin, {
    executablePath: findBrowser() ?? '',
    startAt: NOW,
  });
  scribe = new Scribe(tablet, NOW + 1_000);
  await tablet.open();
  await scribe.tap('start.demo');
  await tablet.shown('timeline');
  await scribe.tap('tab-recorder');
});
afterEach(async () => {
  await tablet.close();
  await server.close();
});

async function choose(
  file: string | { readonly name: string; readonly mimeType: string; readonly buffer: Buffer },
): Promise<void> {
  const asking = tablet.page.waitForEvent('filechooser');
  await scribe.tap('recorder-open');
  await (await asking).setFiles(file);
}

const words = (act: string): Promise<string> =>
  tablet.page.locator(`[data-act="${act}"]`).innerText();

describe('the recorder’s trace of the demo flight, opened by touch', () => {
  it('is mapped, ties its clock, agrees with every run, lies under the timeline, and is named in the record', async () => {
    await choose(TRACE);
    await scribe.tap('recorder-read');
    await expect
      .poll(() => words('recorder-clock'))
      .toMatch(/^Recorder clock .* against the time base\./);
    const [, offsetS = '', doubtS = ''] =
      /clock ([−+\d.]+) ± ([\d.]+) s/.exec(await words('recorder-clock')) ?? [];
    expect(Math.abs(Number(offsetS.replace('−', '-')))).toBeLessThan(Number(doubtS));
    const panel = tablet.page.locator('[role="tabpanel"]');
    await expect.poll(() => panel.innerText()).toContain('All 10 runs agree within both doubts.');
    const page = await panel.innerText();
    expect(page).toContain('13\u00a0201 rows');
    expect(page).toContain('Nothing in it was left out.');
    await scribe.tap('tab-timeline');
    const strip = tablet.page.locator('canvas[data-act="recorder-strip"]');
    await strip.waitFor();
    const [chartBox, stripBox] = await Promise.all([
      tablet.page.locator('canvas[data-act="timeline"]').boundingBox(),
      strip.boundingBox(),
    ]);
    expect(stripBox?.x).toBe(chartBox?.x);
    expect(stripBox?.width).toBe(chartBox?.width);
    expect(stripBox?.y ?? 0).toBeGreaterThanOrEqual(
      (chartBox?.y ?? 0) + (chartBox?.height ?? 0) - 1,
    );
  });

  it('offers the columns that were chosen the last time', async () => {
    await choose(TRACE);
    await scribe.tap('recorder-read');
    await tablet.shown('recorder-map');
    await choose(TRACE);
    await tablet.shown('recorder-read');
    expect(await tablet.page.locator('[role="tabpanel"]').innerText()).toContain(
      'As chosen the last time',
    );
  });

  it('says what is wrong with a file that is no trace', async () => {
    const letter = Buffer.from('Dear crew,\nno numbers today.\n');
    await choose({ name: 'letter.csv', mimeType: 'text/csv', buffer: letter });
    await expect
      .poll(() => tablet.page.locator('[role="tabpanel"]').innerText())
      .toContain('No table in it');
  });
});
