import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { linesOnDisk } from './drillJudge.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';
import { fromFlyToDebrief, savedFile, verifiedByReadme } from './timelineFiles.ts';

const NOW = Date.UTC(2032, 5, 2, 12, 0, 0);
const TOUCHES = 10;

let site: PreparedSite;
let tablet: Tablet;
beforeEach(async () => {
  site = await preparedSite();
  tablet = await Tablet.launch(site.origin, { executablePath: findBrowser() ?? '', startAt: NOW });
  await leaveFlightOpen(tablet.page, site.origin, inCruise(NOW));
});
afterEach(async () => {
  await tablet.close();
  await site.close();
});

const marksOnDisk = async (page: Page) =>
  (await linesOnDisk(page)).filter((line) => line.includes('"kind":"markMade"')).length;

describe('two windows on one flight', () => {
  it('have one pen: the other one says that it only reads, and takes it when it is free', async () => {
    await tablet.open();
    await tablet.shown('tile-mark');
    const other = await tablet.newWindow();
    await other.open();
    await other.shown('tile-mark');
    const first = new Scribe(tablet, NOW + 60_000);
    const second = new Scribe(other, NOW + 60_000);
    const banner = other.page.getByText('READ ONLY, ANOTHER WINDOW RECORDS').first();
    await banner.waitFor();
    for (let touch = 0; touch < TOUCHES; touch += 1) {
      await Promise.all([first.tap('tile-mark'), second.tap('tile-mark')]);
      first.waitUntil(first.nowMs + 2_000);
      second.waitUntil(second.nowMs + 2_000);
    }
    await other.page.getByText('Read only: another window is recording.').waitFor();
    await tablet.page.locator('[data-saved][data-pending="0"]').waitFor();
    expect(await marksOnDisk(tablet.page)).toBe(TOUCHES);

    await tablet.page.close();
    await banner.waitFor({ state: 'detached' });
    second.waitUntil(second.nowMs + 5_000);
    await second.tap('tile-mark');
    await other.page.locator('[data-saved][data-pending="0"]').waitFor();
    await fromFlyToDebrief(second);
    const { text } = await savedFile(second);
    expect(text.split('\n').filter((line) => line.includes('"kind":"markMade"'))).toHaveLength(
      TOUCHES + 1,
    );
    expect(verifiedByReadme(text)).toContain('entries');
  });
});
