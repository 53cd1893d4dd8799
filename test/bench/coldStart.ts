import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { leaveFlightOpen, preparedSite } from '../browser/prepared.ts';
import { Tablet } from '../browser/tablet.ts';
import { manyEntries } from './manyEntries.ts';
import { quantile, type Ratio } from './ratios.ts';

const RUNS = 5;

/** From the start of the navigation to the first touch that Fly accepts: no server, a new browser process each time. */
export async function coldStartRatio(
  executablePath: string,
  entries: number,
  limitMs: number,
): Promise<Ratio> {
  const profile = mkdtempSync(join(tmpdir(), 'kneeline-cold-'));
  const site = await preparedSite();
  const launch = (): Promise<Tablet> => Tablet.launch(site.origin, { executablePath, profile });
  try {
    const loaded = await launch();
    await loaded.open();
    await loaded.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await leaveFlightOpen(loaded.page, site.origin, manyEntries(entries));
    await loaded.close();
    await site.server.close();
    const times: number[] = [];
    for (let run = 0; run < RUNS; run += 1) {
      const tablet = await launch();
      times.push(await firstTouchMs(tablet));
      await tablet.close();
    }
    return {
      promise: `cold start offline to the first touch, ${entries} entries, p50`,
      oursMs: quantile(times, 0.5),
      yardstick: 'the limit',
      yardstickMs: limitMs,
      atMost: 1,
    };
  } finally {
    await site.close();
    rmSync(profile, { recursive: true, force: true });
  }
}

async function firstTouchMs(tablet: Tablet): Promise<number> {
  const { page } = tablet;
  await page.addInitScript(() => {
    const note = ({ target }: Event) => {
      if (target instanceof Element && target.closest('[data-act="tile-mark"]') !== null) {
        Object.assign(globalThis, { touchedAt: performance.now() });
      }
    };
    window.addEventListener('pointerdown', note, { capture: true, once: true });
  });
  await page.goto(`${tablet.origin}/`, { waitUntil: 'commit' });
  await tablet.tap('tile-mark');
  await page.getByText(/^\d+ saved$/).waitFor();
  const written = await page.locator('section[aria-label="Last entries"]').innerText();
  if (!/Mark/.test(written)) throw new Error(`the first touch must be accepted, got ${written}`);
  return page.evaluate(() => Reflect.get(globalThis, 'touchedAt'));
}
