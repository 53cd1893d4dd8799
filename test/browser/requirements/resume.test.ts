import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { linesOnDisk } from '../drillJudge.ts';
import { preparedSite, type PreparedSite } from '../prepared.ts';
import type { Scribe } from '../scribe.ts';
import { Fingers } from './fingers.ts';
import { flyOn, keepSettings, NOW } from './flyOn.ts';
import { seen, tabled, type Row } from './rows.ts';
import { writtenBy } from './saidOnDisk.ts';
import { sizeWords, turnTo, VIEWPORTS } from './sizes.ts';

let site: PreparedSite;
let scribe: Scribe;
beforeAll(async () => {
  site = await preparedSite();
});
afterAll(async () => {
  await site.close();
});
afterEach(async () => {
  await scribe.tablet.close();
});

const rowOf = (no: string, requirement: string, required: string, measured: string, where = '') =>
  seen({ no, requirement, required }, measured, measured === required, where);

/** Which view stands, and whether the cloud tile shows its running time. */
async function shownOnFly(): Promise<string> {
  await scribe.tablet.shown('tile-cloud');
  const words = await scribe.tablet.page.locator('[data-act="tile-cloud"]').innerText();
  return `Fly, cloud ${/\d:\d\d/.test(words) ? 'open' : 'closed'}`;
}

describe('what happens to a tablet in the air', () => {
  it('R33: back, reload, rotation and a closed page leave Fly as it was and lose no record', async ({
    task,
  }) => {
    scribe = await flyOn(site);
    const { tablet } = scribe;
    const fingers = await Fingers.of(scribe);
    await scribe.tap('tile-cloud');
    // On the smallest tablet the panel of the new entry stands over the strip.
    await scribe.tap('panel-done');
    await tablet.saved();
    const before = await linesOnDisk(tablet.page);
    const rows: Row[] = [];
    const look = async (after: string): Promise<void> => {
      rows.push(rowOf('R33', `view after ${after}`, 'Fly, cloud open', await shownOnFly()));
      const now = await linesOnDisk(tablet.page);
      const lost = before.filter((line, index) => now[index] !== line).length;
      rows.push(rowOf('R33', `records lost by ${after}`, '0', `${lost}`));
    };
    await tablet.page.evaluate(() => history.back());
    await tablet.page.getByText('Still in Fly').waitFor();
    const strip = await tablet.page.locator('section[aria-label="Reminder"]').innerText();
    const said = /Still in Fly/.exec(strip)?.[0] ?? strip;
    rows.push(rowOf('R33', 'said after back', 'Still in Fly', said));
    await look('back');
    await tablet.page.reload();
    await look('reload');
    await turnTo(tablet.page, VIEWPORTS[1]);
    await look('rotation');
    const atMs = NOW + 60_000;
    const cut = await writtenBy(scribe, async () => {
      await fingers.down(0, await fingers.middleOf('tile-mark'), atMs);
      await fingers.cancelAll(atMs + 120);
    });
    const [kept] = cut.flatMap((entry) =>
      entry.kind === 'markMade' ? [`${entry.body.unconfirmed}, ${entry.wall - atMs} ms off`] : [],
    );
    rows.push(
      seen(
        {
          no: 'R33',
          requirement: 'a touch cut off by rotation',
          required: 'cancelled, at its time',
        },
        `${kept}`,
        /^cancelled, -?[01]?\d ms off$/.test(kept ?? ''),
      ),
    );
    await fingers.down(0, await fingers.middleOf('tile-mark'), atMs + 30_000);
    await tablet.page.close();
    const again = await tablet.newWindow();
    await again.open();
    await again.shown('tile-cloud');
    const words = await again.page.locator('[data-act="tile-cloud"]').innerText();
    rows.push(
      rowOf(
        'R33',
        'view after the page was closed under a finger',
        'Fly, cloud open',
        `Fly, cloud ${/\d:\d\d/.test(words) ? 'open' : 'closed'}`,
      ),
    );
    const after = await linesOnDisk(again.page);
    const lost = before.filter((line, index) => after[index] !== line).length;
    rows.push(rowOf('R33', 'records lost by the closed page', '0', `${lost}`));
    expect(tabled(task, rows)).toEqual([]);
  });

  it('R34: the browser takes no touch of Fly for itself', async ({ task }) => {
    scribe = await flyOn(site);
    const { page } = scribe.tablet;
    const fingers = await Fingers.of(scribe);
    const style = await page.evaluate(() => {
      const surface = document.querySelector('[data-surface]');
      const refused = [...document.querySelectorAll('[data-act]')].filter(
        (each) => getComputedStyle(each).touchAction !== 'none',
      );
      return {
        surface: surface === null ? 'no surface' : getComputedStyle(surface).touchAction,
        targets: refused.length,
        html: getComputedStyle(document.documentElement).overscrollBehavior,
        body: getComputedStyle(document.body).overscrollBehavior,
      };
    });
    const rows = [
      rowOf('R34', 'touch-action of the root of Fly', 'none', style.surface),
      rowOf('R34', 'targets with another touch-action', '0', `${style.targets}`),
      rowOf('R34', 'overscroll-behavior of html', 'none', style.html),
      rowOf('R34', 'overscroll-behavior of body', 'none', style.body),
    ];
    let atMs = NOW + 30_000;
    for (const size of VIEWPORTS) {
      await turnTo(page, size);
      const place = () =>
        page.evaluate(() => [location.href, scrollX, scrollY, visualViewport?.scale].join(' '));
      const stood = await place();
      const swipes = [
        [0.01, 0.5, 0.9, 0.5],
        [0.5, 0.01, 0.5, 0.9],
        [0.5, 0.99, 0.5, 0.2],
        [0.99, 0.5, 0.1, 0.5],
      ] as const;
      const wrote = await writtenBy(scribe, async () => {
        for (const [fromX, fromY, toX, toY] of swipes) {
          atMs += 5_000;
          const on = (x: number, y: number) => ({ x: x * size.width, y: y * size.height });
          await fingers.down(0, on(fromX, fromY), atMs);
          for (const part of [0.25, 0.5, 0.75, 1]) {
            await fingers.move(
              0,
              on(fromX + (toX - fromX) * part, fromY + (toY - fromY) * part),
              atMs + 200 * part,
            );
          }
          await fingers.up(0, atMs + 220);
        }
      });
      const where = sizeWords(size, 6.42);
      const sure = wrote.filter(
        (entry) => entry.kind !== 'unrecognised' && entry.body.unconfirmed === undefined,
      );
      rows.push(
        rowOf(
          'R34',
          'address, scroll and zoom after four swipes',
          'unchanged',
          (await place()) === stood ? 'unchanged' : await place(),
          where,
        ),
        rowOf('R34', 'events taken as meant from four swipes', '0', `${sure.length}`, where),
      );
    }
    expect(tabled(task, rows)).toEqual([]);
  });

  it('R32: the screen is held awake, again after each return, and says so', async ({ task }) => {
    scribe = await flyOn(site, { before: standInForWakeLock });
    const { page } = scribe.tablet;
    await keepSettings(scribe.tablet, {});
    const requests = () => page.evaluate(() => Reflect.get(globalThis, 'wakeLocks').length);
    const status = page.locator('[data-saved]');
    const rows = [rowOf('R32', 'requests when Fly is open', '1', `${await requests()}`)];
    await expect.poll(() => status.innerText()).toMatch(/\bawake/);
    rows.push(
      rowOf('R32', 'said while held', 'awake', /\bawake/.exec(await status.innerText())?.[0] ?? ''),
    );
    await page.evaluate(() => {
      Reflect.get(globalThis, 'loseWakeLock')();
      Reflect.get(globalThis, 'setVisible')('hidden');
    });
    await expect.poll(() => status.innerText()).toMatch(/may sleep/);
    rows.push(
      rowOf(
        'R32',
        'said when dropped',
        'may sleep',
        /may sleep/.exec(await status.innerText())?.[0] ?? '',
      ),
    );
    await page.evaluate(() => Reflect.get(globalThis, 'setVisible')('visible'));
    await expect.poll(() => status.innerText()).toMatch(/\bawake/);
    rows.push(rowOf('R32', 'requests after hidden and shown', '2', `${await requests()}`));
    expect(tabled(task, rows)).toEqual([]);
  });
});

/** Runs in the page before the app: a wake lock that a test can drop, and a page that it can hide. */
function standInForWakeLock(): void {
  const wakeLocks: (EventTarget & { released: boolean })[] = [];
  let visible = 'visible';
  const request = () => {
    const lock = Object.assign(new EventTarget(), {
      released: false,
      release: () => Promise.resolve(),
    });
    wakeLocks.push(lock);
    return Promise.resolve(lock);
  };
  Object.defineProperty(navigator, 'wakeLock', { value: { request } });
  Object.defineProperty(document, 'visibilityState', { get: () => visible });
  Object.assign(globalThis, {
    wakeLocks,
    loseWakeLock: () => {
      for (const lock of wakeLocks) {
        lock.released = true;
        lock.dispatchEvent(new Event('release'));
      }
    },
    setVisible: (to: string) => {
      visible = to;
      document.dispatchEvent(new Event('visibilitychange'));
    },
  });
}
