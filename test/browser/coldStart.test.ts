import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { copySheet } from './sheetDriver.ts';
import { openFlight } from './briefDriver.ts';
import { linesOnDisk } from './drillJudge.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';

const NOW = Date.UTC(2032, 5, 2, 12, 0, 0);

let site: PreparedSite;
let profile = '';
beforeEach(async () => {
  site = await preparedSite();
  profile = mkdtempSync(join(tmpdir(), 'kneeline-cold-'));
});
afterEach(async () => {
  await site.close();
  rmSync(profile, { recursive: true, force: true });
});

const launch = (startAt: number) =>
  Tablet.launch(site.origin, { profile, executablePath: findBrowser() ?? '', startAt });

/** Loads the app once, as on the ground, until its worker holds every file. */
async function loadOnce(tablet: Tablet): Promise<void> {
  await tablet.open();
  await tablet.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
}

/** Takes the network away for good: no server, nothing in the HTTP cache, and a new browser process. */
async function coldStart(tablet: Tablet): Promise<Tablet> {
  const protocol = await tablet.context.newCDPSession(tablet.page);
  await protocol.send('Network.clearBrowserCache');
  await tablet.close();
  rmSync(join(profile, 'Default', 'Cache'), { recursive: true, force: true });
  await site.server.close();
  const cold = await launch(NOW + 60_000);
  await cold.open();
  return cold;
}

const marksOnDisk = async (tablet: Tablet) =>
  (await linesOnDisk(tablet.page)).filter((line) => line.includes('"kind":"markMade"'));

async function touchMark(scribe: Scribe): Promise<void> {
  await scribe.tap('tile-mark');
  await scribe.tablet.page.locator('[data-saved][data-pending="0"]').waitFor();
}

describe('a cold start with no network at all', () => {
  it('opens Fly of the flight that was open, and ends in a saved touch', async () => {
    const tablet = await launch(NOW);
    await loadOnce(tablet);
    await leaveFlightOpen(tablet.page, site.origin, inCruise(NOW));
    const cold = await coldStart(tablet);
    const asked: string[] = [];
    cold.context.on('request', (request) => asked.push(new URL(request.url()).origin));
    await touchMark(new Scribe(cold, NOW + 70_000));
    await expect.poll(async () => (await marksOnDisk(cold)).length).toBe(1);
    await cold.page.reload();
    await cold.shown('tile-mark');
    expect(await marksOnDisk(cold)).toHaveLength(1);
    expect(new Set(asked)).toEqual(new Set([site.origin]));
    await cold.close();
  });

  it('is enough to set up a flight, open it and save a touch', async () => {
    const tablet = await launch(NOW);
    await loadOnce(tablet);
    const cold = await coldStart(tablet);
    const scribe = new Scribe(cold, NOW + 70_000);
    await scribe.tap('start.setup');
    await copySheet(scribe);
    await openFlight(scribe, { title: 'Cold start', date: '2032-06-02', device: 'test tablet' });
    await scribe.tap('nav.fly');
    await touchMark(scribe);
    await expect.poll(async () => (await marksOnDisk(cold)).length).toBe(1);
    await cold.close();
  });
});
