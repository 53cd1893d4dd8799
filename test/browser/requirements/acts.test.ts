import { afterEach, beforeAll, afterAll, describe, expect, it } from 'vitest';
import type { Entry } from '../../../src/record/entry.ts';
import { preparedSite, type PreparedSite } from '../prepared.ts';
import type { Scribe } from '../scribe.ts';
import { Fingers } from './fingers.ts';
import { flyOn, NOW } from './flyOn.ts';
import { ownTicks } from './ownTicks.ts';
import { passTime } from './passingTime.ts';
import { seen, tabled, type Row } from './rows.ts';
import { entriesOnDisk, writtenBy } from './saidOnDisk.ts';

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

const DEEP = 20;
const HOUR_MS = 3_600_000;

const words = async (act: string): Promise<string> =>
  (await scribe.tablet.page.locator(`[data-act="${act}"]`).innerText()).replaceAll(/\s+/g, ' ');

const withdrawn = (entries: readonly Entry[]) =>
  entries.flatMap((entry) => (entry.kind === 'entryWithdrawn' ? [entry.body.target] : []));

describe('undo', () => {
  it('R20: one touch a step, 20 deep, names its target, keeps what was struck, and never times out', async ({
    task,
  }) => {
    scribe = await flyOn(site);
    const fingers = await Fingers.of(scribe);
    const acts = await writtenBy(scribe, async () => {
      for (let turn = 0; turn < DEEP; turn += 1) {
        await fingers.tap(turn % 2 === 0 ? 'tile-mark' : 'tile-cloud', NOW + 5_000 * (turn + 1));
      }
    });
    const names: string[] = [];
    const places = new Set<string>();
    const undone = await writtenBy(scribe, async () => {
      for (let turn = 0; turn < DEEP; turn += 1) {
        names.push(await words('undo'));
        places.add(JSON.stringify(await fingers.boxOf('undo')));
        await fingers.tap('undo', NOW + HOUR_MS + 5_000 * turn);
        await scribe.tablet.saved();
      }
    });
    const targets = withdrawn(undone);
    const disk = await entriesOnDisk(scribe);
    const named = names.filter((name, turn) => (turn % 2 === 0 ? /Cloud/ : /Mark/).test(name));
    const row = (requirement: string, required: string, measured: string): Row =>
      seen({ no: 'R20', requirement, required }, measured, measured === required);
    expect(
      tabled(task, [
        row('undone an hour later, one touch each', `${DEEP}`, `${targets.length}`),
        row(
          'newest first, none twice',
          'in order',
          targets.join() ===
            acts
              .toReversed()
              .map(({ id }) => id)
              .join()
            ? 'in order'
            : 'not',
        ),
        row('times that the key named its target', `${DEEP}`, `${named.length}`),
        row('places of the key on the screen', '1', `${places.size}`),
        row(
          'struck records still on the disk',
          `${DEEP}`,
          `${acts.filter(({ id }) => disk.some((entry) => entry.id === id)).length}`,
        ),
      ]),
    ).toEqual([]);
  });
});

/** Digits that stand in the boxes of the open pad. */
const digits = () =>
  scribe.tablet.page.locator('[data-instrument] [role="img"]').getAttribute('aria-label');

/** Through the log, as for any entry whose panel has gone. */
async function toNoteOfNewest(): Promise<void> {
  for (const act of ['tile-more', 'tile-log', 'log-0', 'amend']) await scribe.tap(act);
  await scribe.tablet.shown('panel-done');
  for (let page = 0; page < 3 && !(await scribe.isThere('type-note')); page += 1) {
    await scribe.tap('panel-more');
  }
  await scribe.tap('type-note');
}

describe('what is left half done', () => {
  it('R41: a pad, a note and a panel go home after 30 s, what was typed is kept', async ({
    task,
  }) => {
    scribe = await flyOn(site, { before: ownTicks });
    const { page } = scribe.tablet;
    const rows: Row[] = [];
    const row = (requirement: string, required: string, measured: string | null): void => {
      rows.push(seen({ no: 'R41', requirement, required }, `${measured}`, measured === required));
    };
    const idle = async (ms: number, gone: string): Promise<string> => {
      await passTime(scribe, ms);
      return (await scribe.isThere(gone)) ? 'open' : 'home';
    };
    await scribe.tap('tile-fuel');
    await scribe.tapDigit('key-4');
    await scribe.tapDigit('key-2');
    row('fuel pad after 25 s', 'open', await idle(25_000, 'key-4'));
    row('fuel pad after 31 s', 'home', await idle(6_000, 'key-4'));
    await scribe.tap('tile-fuel');
    row('its digits when opened again', '42', await digits());
    await scribe.tap('key-erase');
    await scribe.tap('key-erase');
    await scribe.tap('key-erase');

    await scribe.tap('tile-mark');
    row('detail panel after 31 s', 'home', await idle(31_000, 'panel-done'));
    await toNoteOfNewest();
    await page.keyboard.insertText('haze abeam');
    row('half-written note after 31 s', 'home', await idle(31_000, 'text'));
    await toNoteOfNewest();
    const kept = await page.locator('[data-act="text"]').inputValue();
    row('its words when opened again', 'haze abeam', kept);
    expect(tabled(task, rows)).toEqual([]);
  });
});
