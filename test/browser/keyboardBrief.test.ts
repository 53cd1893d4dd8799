import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { readSheetFile } from '../../src/file/sheetFile.ts';
import { startApp, type AppServer } from './appServer.ts';
import { press, reach, type } from './keyboard.ts';

const WHOLE_MS = 300_000;

let app: AppServer;
let browser: Browser;
beforeAll(async () => {
  app = await startApp();
  browser = await chromium.launch({ executablePath: findBrowser() ?? '', args: ['--no-sandbox'] });
});
afterAll(async () => {
  await browser.close();
  await app.close();
});

async function tick(page: Page, act: string): Promise<void> {
  await reach(page, act);
  await page.keyboard.press('Space');
}

describe('a four-engine metric aircraft, set up from blank by keyboard alone', () => {
  it(
    'is kept, reloaded, saved as a file, taken in by another tablet, and opened',
    async () => {
      const first = await browser.newContext({ acceptDownloads: true });
      const page = await first.newPage();
      await page.goto(app.origin);
      await press(page, 'start.setup');
      await page.locator('[data-act="days.new"]').waitFor();
      await press(page, 'days.new');
      await page.locator('[data-act="sheet.title"]').waitFor();
      await type(page, 'sheet.title', 'Bleed and two weights');
      await press(page, 'sheet.massUnit=kg');
      await press(page, 'sheet.heightUnit=m');
      await press(page, 'section=aircraft');
      await type(page, 'sheet.aircraft.mark', 'QZ-BLD');
      await type(page, 'sheet.aircraft.wingArea', '118');
      await press(page, 'sheet.aircraft.engineCount=4');
      await press(page, 'sheet.aircraft.suctionDrive=bleed');
      await tick(page, 'sheet.aircraft.bleed');
      await type(page, 'sheet.aircraft.bleed.percentTaken', '3');
      await press(page, 'engineTables.add');
      await type(page, 'sheet.engineTables.0.rows.0.thrust.value', '20000');
      await type(page, 'sheet.engineTables.0.rows.0.flow.value', '1500');
      await type(page, 'sheet.engineTables.0.rows.1.thrust.value', '60000');
      await type(page, 'sheet.engineTables.0.rows.1.flow.value', '3900');
      await page.reload();
      await page.locator('[data-act="sheet.aircraft.mark"]').waitFor();
      await press(page, 'section=panels');
      await type(page, 'panels.n', '6');
      await type(page, 'panels.area', '4');
      await press(page, 'panels.make');
      await press(page, 'section=probes');
      await press(page, 'probes.k=3');
      await press(page, 'probes.make');
      await press(page, 'section=instruments');
      await press(page, 'instruments.usual');
      await press(page, 'section=cards');
      for (let card = 0; card < 6; card += 1) {
        await press(page, 'cards.add');
        await press(page, 'item.back');
      }
      await reach(page, 'sheet.save');
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.keyboard.press('Enter'),
      ]);
      const path = await download.path();

      const second = await browser.newContext();
      const other = await second.newPage();
      await other.goto(app.origin);
      await press(other, 'start.setup');
      await other.locator('[data-act="days.takeSheet"]').waitFor();
      await reach(other, 'days.takeSheet');
      const [chooser] = await Promise.all([
        other.waitForEvent('filechooser'),
        other.keyboard.press('Space'),
      ]);
      await chooser.setFiles(path);
      await other.locator('[data-act="takeSheet.keep"]').waitFor();
      await press(other, 'takeSheet.keep');
      await other.locator('[data-act="sheet.save"]').waitFor();
      await reach(other, 'sheet.save');
      const [again] = await Promise.all([
        other.waitForEvent('download'),
        other.keyboard.press('Enter'),
      ]);
      const texts = await Promise.all(
        [download, again].map(async (one) => {
          const parts: string[] = [];
          for await (const part of await one.createReadStream()) parts.push(String(part));
          return parts.join('');
        }),
      );
      expect(texts[1]).toBe(texts[0]);
      const read = readSheetFile(texts[0] ?? '', (texts[0] ?? '').length);
      expect(read).toMatchObject({
        findings: [],
        sheet: {
          title: 'Bleed and two weights',
          massUnit: 'kg',
          aircraft: { engineCount: 4, suctionDrive: 'bleed', bleed: { percentTaken: 3 } },
        },
      });
      const sheet = read.kind === 'read' ? read.sheet : null;
      expect(sheet?.panels).toHaveLength(12);
      expect(sheet?.probes).toHaveLength(36);
      expect(sheet?.testCards).toHaveLength(6);
      await press(other, 'sheet.toOpen');
      await other.locator('[data-act="open.go"]').waitFor();
      await press(other, 'open.go');
      await other.locator('[data-act="nav.fly"]:not([disabled])').waitFor();
      await press(other, 'nav.fly');
      await other.locator('[data-act="tile-more"]').waitFor();
    },
    WHOLE_MS,
  );
});
