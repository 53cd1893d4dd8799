import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';
import { fromFlyToDebrief } from './timelineFiles.ts';

const NOW = Date.UTC(2032, 5, 2, 12, 0, 0);

let site: PreparedSite;
let tablet: Tablet;
let scribe: Scribe;
beforeEach(async () => {
  site = await preparedSite();
  tablet = await Tablet.launch(site.origin, { executablePath: findBrowser() ?? '', startAt: NOW });
  await leaveFlightOpen(tablet.page, site.origin, inCruise(NOW));
  scribe = new Scribe(tablet, NOW);
  await tablet.open();
});
afterEach(async () => {
  await tablet.close();
  await site.close();
});

describe('a tablet that went away in the air', () => {
  it('comes back to the same page of tiles, the same pad and the digits in its boxes', async () => {
    await scribe.tap('phase-climb');
    await scribe.tap('tile-fuel');
    await scribe.tapDigit('key-0');
    await scribe.tapDigit('key-8');
    const boxes = tablet.page.locator('[data-instrument="FF1"]').getByRole('img', { name: '08' });
    const firstDigit = tablet.page.locator('[data-first-digit]');
    await boxes.waitFor();
    const timed = await firstDigit.getAttribute('data-first-digit');
    await tablet.open();
    await boxes.waitFor();
    expect(await firstDigit.getAttribute('data-first-digit')).toBe(timed);
    await scribe.tapDigit('key-erase');
    await scribe.tapDigit('key-erase');
    await scribe.tapDigit('key-erase');
    await tablet.shown('tile-coversLeft');
  });

  it('says in the record how long it was away, after a reload and after the screen was left', async () => {
    await tablet.page.evaluate(() => {
      let visible = 'visible';
      Object.defineProperty(document, 'visibilityState', { get: () => visible });
      Reflect.set(globalThis, 'setVisible', (to: string) => {
        visible = to;
        document.dispatchEvent(new Event('visibilitychange'));
      });
    });
    const turn = (to: string) =>
      tablet.page.evaluate((say) => Reflect.get(globalThis, 'setVisible')(say), to);
    const saved = await tablet.saved();
    await turn('hidden');
    await turn('visible');
    await tablet.savedBeyond(saved + 1);
    await fromFlyToDebrief(scribe);
    await scribe.tap('tab-audit');
    await scribe.tap('audit-device');
    const said = (words: RegExp) => tablet.page.getByText(words).first().waitFor();
    // The flight was left ten minutes before it was opened again.
    await said(/resumed, (9|10)\u00a0min \d+\u00a0s after its last entry/);
    await said(/screen left/);
    await said(/screen back, after \d\u00a0s/);
  });
});
