import { asyncBufferFromFile, parquetReadObjects } from 'hyparquet';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { scriptA } from '../flights/flightA.ts';
import { flightOfScript } from '../flights/scriptToEntries.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';
import { fromFlyToDebrief } from './timelineFiles.ts';

/** Ten minutes after the last thing that the script has for the evening of the flight. */
const NOW = Date.parse('2032-06-03T02:30:00Z');
const TOUCHES_AT_MOST = 12;
/** Points of 1/72 in: ISO 216 A4 is 210 x 297 mm, ANSI Letter 8.5 x 11 in. */
const PAPERS = {
  a4: { width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 },
  letter: { width: 8.5 * 72, height: 11 * 72 },
};

/** Flight A before its signature, and without what the script leaves open on purpose. */
const entries = flightOfScript(scriptA).entries.filter(
  ({ kind, wall }) => wall < NOW && kind !== 'turbulenceEntered' && kind !== 'logSigned',
);

let site: PreparedSite;
let tablet: Tablet;
let scribe: Scribe;
beforeEach(async () => {
  site = await preparedSite();
  tablet = await Tablet.launch(site.origin, { executablePath: findBrowser() ?? '', startAt: NOW });
  await leaveFlightOpen(tablet.page, site.origin, entries);
  scribe = new Scribe(tablet, NOW + 60_000);
  await tablet.open();
});
afterEach(async () => {
  await tablet.close();
  await site.close();
});

/** Counts contacts from here on, and keeps the system's print dialogue from standing in the way. */
async function watchTouches(): Promise<void> {
  await tablet.page.evaluate(() => {
    const seen = { touches: 0, prints: 0 };
    Reflect.set(globalThis, 'seen', seen);
    globalThis.addEventListener('pointerdown', () => (seen.touches += 1), true);
    globalThis.print = () => {
      seen.prints += 1;
    };
  });
}

const seen = (): Promise<{ readonly touches: number; readonly prints: number }> =>
  tablet.page.evaluate(() => Reflect.get(globalThis, 'seen'));

/** Size of every page of a PDF, as its page objects say it (ISO 32000-1, 7.7.3.3). */
async function pagesPrinted(): Promise<
  readonly { readonly width: number; readonly height: number }[]
> {
  const bytes = await tablet.page.pdf({ preferCSSPageSize: true });
  const text = bytes.toString('latin1');
  return [...text.matchAll(/\/Type\s*\/Page\b(?!s)[\s\S]*?\/MediaBox\s*\[([^\]]*)\]/g)].map(
    ([, box = '']) => {
      const [, , width = 0, height = 0] = box.trim().split(/\s+/).map(Number);
      return { width, height };
    },
  );
}

describe('the way from the last entry to paper', () => {
  it(`takes at most ${TOUCHES_AT_MOST} touches to a signed one-page summary`, async () => {
    await watchTouches();
    await fromFlyToDebrief(scribe);
    await scribe.tap('tab-sign');
    await scribe.tap('signer-scribe');
    await scribe.tap('signer-pilot');
    await scribe.tap('sign');
    await tablet.shown('code-signed');
    const code = await tablet.page.locator('[data-act="code-signed"]').innerText();
    await scribe.tap('go-print');
    await tablet.shown('printed-summary');
    await scribe.tap('print');
    await expect.poll(seen).toMatchObject({ prints: 1 });
    expect((await seen()).touches).toBeLessThanOrEqual(TOUCHES_AT_MOST);
    const sheet = await tablet.page.locator('[data-act="printed-summary"]').innerText();
    expect(sheet).toContain(code.trim());
    expect(sheet).toContain('Signed 2032-06-03');
    expect(sheet).toContain('28.7');

    for (const [paper, size] of Object.entries(PAPERS)) {
      await scribe.tap(`paper-${paper}`);
      const pages = await pagesPrinted();
      expect(pages).toHaveLength(1);
      expect(Math.abs((pages[0]?.width ?? 0) - size.width)).toBeLessThan(1);
      expect(Math.abs((pages[0]?.height ?? 0) - size.height)).toBeLessThan(1);
    }

    for (const id of ['log', 'squawks', 'samples', 'wings', 'account']) {
      await scribe.tap(`sheet-${id}`);
      await tablet.shown(`printed-${id}`);
    }
    // What was amended stands struck beside what holds now; a sentence leads back to its entry.
    const struck = tablet.page.locator('[data-act="printed-log"] del', { hasText: '910' });
    expect(await struck.count()).toBeGreaterThan(0);
    const every = await pagesPrinted();
    expect(every.length).toBeGreaterThan(6);
    expect(new Set(every.map(({ width }) => Math.round(width)))).toEqual(new Set([612]));

    const sentence = tablet.page
      .locator('[data-act="printed-account"] p', { hasText: 'Joker fuel was reached' })
      .locator('button');
    const entry = await sentence.getAttribute('data-entry');
    await sentence.click();
    await tablet.shown('timeline');
    const row = tablet.page.locator(`[data-act="row"][data-entry="${entry}"]`);
    await expect.poll(() => row.getAttribute('aria-pressed')).toBe('true');
  });
});

describe('the files for other programs', () => {
  it('are made under the content policy of the app and saved by touch', async () => {
    await fromFlyToDebrief(scribe);
    await scribe.tap('tab-files');
    await scribe.tap('group-programs');
    const coming = tablet.page.waitForEvent('download');
    await scribe.tap('save-points.parquet');
    const download = await coming;
    expect(download.suggestedFilename()).toMatch(/-points\.parquet$/);
    const file = await asyncBufferFromFile(await download.path());
    const rows = await parquetReadObjects({ file });
    const best = rows.map((row) => Number(row['fuel_reduction_pct'] ?? 0));
    expect(Math.max(...best).toFixed(1)).toBe('28.7');
  });
});
