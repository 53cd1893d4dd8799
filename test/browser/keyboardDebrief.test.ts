import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { startApp, type AppServer } from './appServer.ts';
import { focused, press, reach, type } from './keyboard.ts';

const WHOLE_MS = 300_000;
const MOST_MARKS = 60;

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

/** The focus stands somewhere, and where it stands shows. */
async function keepsFocus(page: Page): Promise<void> {
  await expect
    .poll(() =>
      page.evaluate(
        () =>
          document.activeElement !== document.body &&
          document.activeElement?.matches(':focus-visible') === true,
      ),
    )
    .toBe(true);
}

const said = (page: Page, words: string | RegExp): Promise<void> =>
  page.getByRole('status').filter({ hasText: words }).first().waitFor();

interface FocusedMark {
  readonly kind: string;
  readonly lane: string;
  readonly entry: string;
  /** As a reader says it. */
  readonly words: string;
}

const markHere = (page: Page): Promise<FocusedMark> =>
  page.evaluate(() => {
    const mark = document.activeElement instanceof HTMLElement ? document.activeElement : null;
    const { kind = '', lane = '', entry = '' } = mark?.dataset ?? {};
    return { kind, lane, entry, words: mark?.textContent ?? '' };
  });

/** Presses until the focus stands on another mark. @returns false where it stays */
async function step(page: Page, key: string): Promise<boolean> {
  const { entry } = await markHere(page);
  await page.keyboard.press(key);
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(resolve)));
  return (await markHere(page)).entry !== entry;
}

/** To the uppermost lane, down from there to a lane, and to the first mark of it. */
async function toLane(page: Page, lane: string): Promise<void> {
  while (await step(page, 'ArrowUp'));
  for (let steps = 0; steps < MOST_MARKS && (await markHere(page)).lane !== lane; steps += 1) {
    await step(page, 'ArrowDown');
  }
  while (await step(page, 'Shift+ArrowLeft'));
  expect((await markHere(page)).lane).toBe(lane);
}

/** Seconds of "4 minutes 12 seconds". */
function secondsIn(words: string): number {
  const of = (unit: string): number =>
    Number(new RegExp(String.raw`(\d+) ${unit}`).exec(words)?.[1] ?? 0);
  return 3600 * of('hour') + 60 * of('minute') + of('second');
}

/** How long the interval of a mark lasted. */
const lengthOf = (mark: FocusedMark | undefined): string =>
  /closed, ([^,]*)/.exec(mark?.words ?? '')?.[1] ?? '';

/** Walks along the lane of the focus to its end. */
async function marksAlong(page: Page): Promise<readonly FocusedMark[]> {
  const found = [await markHere(page)];
  while (found.length < MOST_MARKS && (await step(page, 'Shift+ArrowRight'))) {
    found.push(await markHere(page));
  }
  return found;
}

it(
  'a whole debrief of the demo flight goes by keyboard alone, and the focus is never lost',
  async () => {
    const page = await browser.newPage();
    await page.goto(app.origin);
    await press(page, 'start.demo');
    await page.locator('[data-act="timeline"]').waitFor();
    await keepsFocus(page);

    await reach(page, 'axis-time');
    await page.keyboard.press('ArrowDown');
    expect(await page.locator('[data-act="axis-time"]').inputValue()).toBe('dayOfYear');
    await keepsFocus(page);

    await reach(page, 'mark');
    await toLane(page, 'moisture');
    const clouds = (await marksAlong(page)).filter(({ kind }) => kind === 'moistureEntered');
    const [longest] = clouds.toSorted((a, b) => secondsIn(lengthOf(b)) - secondsIn(lengthOf(a)));
    // test/flights/scripts/flight-a-oracle.json, M1; 2 June of a leap year is day 154.
    expect(longest?.words).toMatch(/^day 154, 23 10 42 Zulu, /);
    expect(secondsIn(lengthOf(longest))).toBe(338);
    await keepsFocus(page);

    await toLane(page, 'fuel');
    while ((await markHere(page)).kind !== 'fuelRead' && (await step(page, 'Shift+ArrowRight')));
    await page.keyboard.press('Enter');
    await keepsFocus(page);
    await press(page, 'detail-amend');
    await keepsFocus(page);
    const field = page.locator('[data-act^="field-readings."]').first();
    await type(page, (await field.getAttribute('data-act')) ?? '', '905');
    await press(page, 'code-misKeyed');
    await type(page, 'reason', 'the photograph shows 905');
    await press(page, 'save');
    await said(page, /^Amended:/);
    await keepsFocus(page);

    await press(page, 'detail-later', 'Shift+Tab');
    await keepsFocus(page);
    await press(page, 'detail-withdraw');
    await keepsFocus(page);
    await type(page, 'reason', 'entered twice');
    await press(page, 'save');
    await said(page, /^Withdrawn\./);
    await keepsFocus(page);

    await reach(page, 'tab-timeline');
    await page.keyboard.press('ArrowRight');
    expect(await focused(page)).toBe('tab-answers');
    await press(page, 'answer-2');
    await keepsFocus(page);
    await press(page, 'decide-cause');
    await press(page, 'cause=other');
    await type(page, 'cause-other', 'insects at the root');
    await type(page, 'cause-reason', 'seen from the cabin');
    await press(page, 'save');
    await said(page, 'Cause decided: insects at the root.');
    await keepsFocus(page);
    await press(page, 'step-1');
    await keepsFocus(page);
    await press(page, 'open-entry');
    await page.locator('[data-act="timeline"]').waitFor();
    await keepsFocus(page);

    await reach(page, 'tab-timeline');
    await page.keyboard.press('End');
    expect(await focused(page)).toBe('tab-sign');
    await press(page, 'signer-scribe');
    await press(page, 'sign');
    await said(page, 'Signed by scribe.');
    await keepsFocus(page);
    await press(page, 'go-print', 'Shift+Tab');
    await page.locator('[data-act="printed-summary"]').waitFor();
    await keepsFocus(page);
    await press(page, 'sheet-log');
    await page.locator('[data-act="printed-log"]').waitFor();
    await keepsFocus(page);
    await press(page, 'print-back');
    await page.locator('[data-act="go-print"]').waitFor();
    await keepsFocus(page);
  },
  WHOLE_MS,
);
