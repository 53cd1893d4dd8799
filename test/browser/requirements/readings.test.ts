import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '../../../src/record/entry.ts';
import { scriptA } from '../../flights/flightA.ts';
import { entriesUntil, flightOfScript } from '../../flights/scriptToEntries.ts';
import { inCruise } from '../inCruise.ts';
import { preparedSite, type PreparedSite } from '../prepared.ts';
import type { Scribe } from '../scribe.ts';
import { Fingers } from './fingers.ts';
import { flyOn, NOW } from './flyOn.ts';
import { ownTicks } from './ownTicks.ts';
import { passTime } from './passingTime.ts';
import { atMost, seen, tabled, type Row } from './rows.ts';
import { entriesOnDisk, writtenBy } from './saidOnDisk.ts';
import { watchSaves, type Saves } from './watchSaves.ts';

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

const is = (no: string, requirement: string, required: string, measured: string): Row =>
  seen({ no, requirement, required }, measured, measured === required);

describe('a touch on Fly', () => {
  it('R11 R12 R13 R39: is shown in the next frame, called saved once durable, and said once', async ({
    task,
  }) => {
    scribe = await flyOn(site, { before: watchSaves });
    const { page } = scribe.tablet;
    await page.evaluate(() => {
      localStorage.setItem('kneeline-sound', 'on');
      localStorage.setItem('kneeline-pulse', 'on');
    });
    await scribe.tablet.open();
    await scribe.tablet.shown('tile-mark');
    await scribe.tablet.saved();
    const fingers = await Fingers.of(scribe);
    const saves = () => page.evaluate((): Saves => Reflect.get(globalThis, 'savesSeen'));
    const touches = 10;
    const saidBefore = (await saves()).said.length;
    const entries = await writtenBy(scribe, async () => {
      for (let touch = 1; touch <= touches; touch += 1) {
        await fingers.tap('tile-mark', NOW + 5_000 * touch);
        await scribe.tablet.saved();
      }
    });
    const found = await saves();
    const marks = entries.filter(({ kind }) => kind === 'markMade').length;
    const counts = found.said.slice(saidBefore).filter((words) => /saved/.test(words)).length;
    expect(
      tabled(task, [
        is(
          'R11',
          'contacts with the pressed look in the next frame',
          `${touches} of ${touches}`,
          `${found.pressedInFrame} of ${found.contacts}`,
        ),
        seen(
          { no: 'R12', requirement: 'tick on save, its length', required: '20 to 70 ms' },
          `${[...new Set(found.ticksMs)].join(', ')} ms`,
          found.ticksMs.length > 0 && found.ticksMs.every((ms) => ms >= 20 && ms <= 70),
        ),
        seen(
          { no: 'R12', requirement: 'pulse on save, its length', required: '5 to 50 ms' },
          `${[...new Set(found.pulsesMs)].join(', ')} ms`,
          found.pulsesMs.length > 0 && found.pulsesMs.every((ms) => ms >= 5 && ms <= 50),
        ),
        is('R13', 'records of ten touches on the disk', `${touches}`, `${marks}`),
        is(
          'R13',
          'saved marks before the line was durable',
          '0',
          `${found.durableAhead.filter((lines) => lines < 0).length}`,
        ),
        is('R13', 'lines written with less than strict durability', '0', `${found.notStrict}`),
        atMost(
          { no: 'R39', requirement: 'messages of the saved count for a touch' },
          { limit: 1, value: counts / entries.length, unit: 'a touch', decimals: 2 },
        ),
      ]),
    ).toEqual([]);
  });
});

describe('a reading out by ten', () => {
  it('R35: is stored on Enter, asked about on the same screen, and stops nobody', async ({
    task,
  }) => {
    scribe = await flyOn(site);
    const { page } = scribe.tablet;
    await scribe.tap('tile-fuel');
    const written = await writtenBy(scribe, async () => {
      for (const digit of '8400') await scribe.tapDigit(`key-${digit}`);
      await scribe.tapDigit('key-enter');
    });
    const values = written.flatMap((entry) =>
      entry.kind === 'fuelRead' ? (entry.body.readings ?? []) : [],
    );
    const asked = await scribe.isThere('query-keep');
    const offered = (await scribe.isThere('query-candidate'))
      ? await page.locator('[data-act="query-candidate"]').innerText()
      : '';
    await scribe.tapDigit('key-0');
    const echo = await page.locator('[data-instrument] [role="img"]').getAttribute('aria-label');
    expect(
      tabled(task, [
        is(
          'R35',
          'stored on Enter',
          '8400',
          values.map((each) => ('value' in each ? each.value : 'blank')).join(),
        ),
        is('R35', 'asked beside the boxes', 'yes', asked ? 'yes' : 'no'),
        seen(
          { no: 'R35', requirement: 'offered for it', required: '840' },
          offered.trim(),
          /840/.test(offered),
        ),
        is('R35', 'next key of the next engine, at once', '0', `${echo}`),
      ]),
    ).toEqual([]);
  });
});

/** Between two fuel readings of the fifth test point of flight A: suction on, the figure standing. */
const IN_CRUISE = Date.UTC(2032, 5, 2, 23, 39, 12);
const SO_FAR = entriesUntil(flightOfScript(scriptA), 81);
const MINUTE_MS = 60_000;

describe('the live figure', () => {
  it('R36: shows value, its 95 % and its age, goes stale, and is blank without support', async ({
    task,
  }) => {
    scribe = await flyOn(site, { entries: SO_FAR, startAt: IN_CRUISE, before: ownTicks });
    const live = scribe.tablet.page.locator('[data-live]');
    const said = async (): Promise<string> =>
      (await live.innerText()).replaceAll(/[\s\u2060]+/g, ' ');
    const rows: Row[] = [];
    const fresh = await said();
    const figure = /(\d+\.\d) ?% ?± ?(\d+\.\d)\b/.exec(fresh);
    rows.push(
      seen(
        { no: 'R36', requirement: 'value and its 95 %, to one place', required: '0.0 % ±0.0' },
        figure?.[0] ?? fresh,
        figure !== null,
      ),
      seen(
        { no: 'R36', requirement: 'age of the reading', required: 'seconds' },
        /\d+ s ago/.exec(fresh)?.[0] ?? fresh,
        /\d+ s ago/.test(fresh),
      ),
    );
    // The reading is of 23:38:30, the next one is due every five minutes.
    await passTime(scribe, 8 * MINUTE_MS);
    rows.push(is('R36', 'STALE within two reading intervals', 'no', yes(/STALE/, await said())));
    await passTime(scribe, 2 * MINUTE_MS);
    rows.push(is('R36', 'STALE beyond two reading intervals', 'yes', yes(/STALE/, await said())));
    await scribe.tablet.close();
    scribe = await flyOn(site);
    const [state, words] = await scribe.tablet.page
      .locator('[data-live]')
      .evaluate((each) => [
        each.getAttribute('data-live') ?? '',
        each.querySelector('output')?.innerText ?? '',
      ]);
    rows.push(
      is('R36', 'state of a figure with no baseline', 'notYet', `${state}`),
      is('R36', 'a number in its place', 'no', yes(/\d\s*%/, words ?? '')),
    );
    expect(tabled(task, rows)).toEqual([]);
  });
});

function yes(pattern: RegExp, words: string): string {
  return pattern.test(words) ? 'yes' : 'no';
}

const HOURS = 4;
const STEP_MS = 20_000;

/** Lets hours pass in the page and looks at the strip after every step. */
async function mostStripsAtOnce(hours: number): Promise<number> {
  return scribe.tablet.page.evaluate(
    async ({ steps, stepMs }) => {
      let most = 0;
      for (let step = 0; step < steps; step += 1) {
        Reflect.get(globalThis, 'passTime')(stepMs);
        await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
        most = Math.max(most, document.querySelectorAll('[data-reminder]').length);
      }
      return most;
    },
    { steps: (hours * 3_600_000) / STEP_MS, stepMs: STEP_MS },
  );
}

const shownIn = (entries: readonly Entry[]): readonly number[] =>
  entries.flatMap((entry) => (entry.kind === 'reminderShown' ? [entry.wall] : []));

describe('reminders', () => {
  it('R37: are one at a time, a minute apart, few in four hours, and none while it must be quiet', async ({
    task,
  }) => {
    scribe = await flyOn(site, { before: ownTicks });
    const most = await mostStripsAtOnce(HOURS);
    await scribe.tablet.saved();
    const began = shownIn(await entriesOnDisk(scribe));
    const apartS = began.slice(1).map((at, index) => (at - (began[index] ?? at)) / 1000);
    await scribe.tablet.close();
    // Lifted off, and no gear up yet.
    scribe = await flyOn(site, { entries: inCruise(NOW).slice(0, 4), before: ownTicks });
    await mostStripsAtOnce(0.5);
    await scribe.tablet.saved();
    const quiet = shownIn(await entriesOnDisk(scribe)).length;
    expect(
      tabled(task, [
        is('R37', 'most at once', '1', `${most}`),
        seen(
          { no: 'R37', requirement: 'least time between two', required: 'at least 60 s' },
          `${Math.min(...apartS).toFixed(0)} s`,
          began.length > 2 && apartS.every((seconds) => seconds >= 60),
        ),
        atMost(
          { no: 'R37', requirement: 'reminders in four hours that nobody answers' },
          { limit: 6, value: began.length / HOURS, unit: 'an hour' },
        ),
        is('R37', 'between lift-off and gear up, in half an hour', '0', `${quiet}`),
      ]),
    ).toEqual([]);
  });
});
