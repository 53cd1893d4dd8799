import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { THEMES } from '../../../src/ui/kit/settings.ts';
import { contrast } from '../../ui/kit/contrast.ts';
import { preparedSite, type PreparedSite } from '../prepared.ts';
import type { Scribe } from '../scribe.ts';
import { flyOn } from './flyOn.ts';
import { focusInPage, targetsInPage } from './groundInPage.ts';
import { atLeast, seen, tabled, type Row } from './rows.ts';
import { MM_SCALES, sizeWords, turnTo, VIEWPORTS } from './sizes.ts';

let site: PreparedSite;
beforeAll(async () => {
  site = await preparedSite();
});
afterAll(async () => {
  await site.close();
});

/** Touches from Fly through the pages of the ground; each stop is measured. */
const TO_BRIEF = ['tile-more', 'tile-desk', 'desk-brief'];
const BRIEF = ['flight', 'hack', 'cautions', 'screen', 'forms', 'sheet'].map(
  (tab) => `brief.tab=${tab}`,
);
const DEBRIEF = [
  'nav.debrief',
  'tab-timeline',
  'tab-answers',
  'answer-2',
  ...['flights', 'recorder', 'audit', 'forms', 'files', 'sign'].map((tab) => `tab-${tab}`),
];

async function onBrief(scribe: Scribe): Promise<void> {
  for (const act of TO_BRIEF) await scribe.tap(act);
  await scribe.tablet.shown('nav.debrief');
}

/** Layout is rounded to device pixels. */
const ROUNDING_MM = 0.1;

describe.each(MM_SCALES)('Brief and Debrief at %d px a mm', (pxPerMm) => {
  it('R3: have targets of 10 mm and 44 px at every size', async ({ task }) => {
    const scribe = await flyOn(site, { pxPerMm });
    const { page } = scribe.tablet;
    const found = new Map<string, { readonly side: number; readonly act: string }>();
    try {
      await onBrief(scribe);
      for (const act of [...BRIEF, ...DEBRIEF]) {
        await turnTo(page, VIEWPORTS[0]);
        await scribe.tap(act);
        for (const size of VIEWPORTS) {
          await turnTo(page, size);
          const where = sizeWords(size, pxPerMm);
          for (const target of await page.evaluate(targetsInPage)) {
            const least = found.get(where);
            if (least === undefined || target.side < least.side) found.set(where, target);
          }
        }
      }
    } finally {
      await scribe.tablet.close();
    }
    const rows = [...found].flatMap(([where, { side, act }]): readonly Row[] => [
      atLeast(
        { no: 'R3', requirement: 'targets of Brief and Debrief, smaller side' },
        {
          limit: 10,
          value: side / pxPerMm,
          unit: 'mm',
          within: ROUNDING_MM,
          where: side / pxPerMm < 10 - ROUNDING_MM ? `${where} (${act})` : where,
        },
      ),
      atLeast(
        { no: 'R3', requirement: 'the same in CSS px' },
        { limit: 44, value: side, unit: 'px', where },
      ),
    ]);
    expect(tabled(task, rows)).toEqual([]);
  });
});

/** Goes round the page by Tab and says where it stopped. */
async function tabbed(page: Page, most: number) {
  const stops = new Map<string, Awaited<ReturnType<typeof focusedNow>>>();
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  });
  for (let key = 0; key < most; key += 1) {
    await page.keyboard.press('Tab');
    const at = await focusedNow(page);
    if (at !== null) stops.set(at.act, at);
  }
  return stops;
}

const focusedNow = (page: Page) => page.evaluate(focusInPage);

describe('the keyboard', () => {
  it('R38: reaches every key of Fly, Brief and Debrief, and shows where it is', async ({
    task,
  }) => {
    const scribe = await flyOn(site);
    const { page } = scribe.tablet;
    const rows: Row[] = [];
    const look = async (where: string): Promise<void> => {
      const acts = (await page.evaluate(targetsInPage)).map(({ act }) => act);
      const stops = await tabbed(page, acts.length + 12);
      const missed = [...new Set(acts)].filter((act) => !stops.has(act));
      rows.push(
        seen(
          { no: 'R38', requirement: 'keys that Tab does not reach', required: 'none' },
          missed.length === 0 ? 'none' : missed.join(', '),
          missed.length === 0,
          where,
        ),
      );
      for (const theme of THEMES) {
        await page.evaluate((to) => {
          document.documentElement.dataset['theme'] = to;
        }, theme);
        const ring = await focusedNow(page);
        const drawn = ring !== null && ring.px >= 2;
        rows.push(
          atLeast(
            { no: 'R38', requirement: 'contrast of the mark of focus' },
            {
              limit: 3,
              value: drawn ? contrast(ring.ink, ring.ground) : 0,
              unit: ': 1',
              where: `${where} ${theme}`,
            },
          ),
        );
      }
    };
    try {
      await look('Fly');
      await onBrief(scribe);
      await scribe.tap('brief.tab=flight');
      await look('Brief');
      await scribe.tap('nav.debrief');
      await scribe.tap('tab-answers');
      await look('Debrief');
    } finally {
      await scribe.tablet.close();
    }
    expect(tabled(task, rows)).toEqual([]);
  });
});

const ZONES = ['Pacific/Chatham', 'America/St_Johns', 'UTC'] as const;

describe('times', () => {
  it('R40: are UTC with Z in every time zone, with the day of the year', async ({ task }) => {
    const rows: Row[] = [];
    for (const timezone of ZONES) {
      const scribe = await flyOn(site, { timezone });
      const { page } = scribe.tablet;
      try {
        const clock = (
          await page.locator('section[aria-label^="Clock"] p').first().innerText()
        ).replaceAll(/\s/g, '');
        const is = (requirement: string, required: string, measured: string | undefined): Row =>
          seen(
            { no: 'R40', requirement, required },
            measured ?? 'not there',
            measured === required,
            timezone,
          );
        rows.push(is('clock of Fly at 23:00 UTC', '23:00 Z', clock.replace(/:\d\dZ$/, ' Z')));
        const last = await page.locator('section[aria-label="Last entries"]').innerText();
        const hour = /\b\d\d(?=:\d\d:\d\d\b)/.exec(last)?.[0];
        rows.push(is('hour of an entry of ten minutes ago', '22', hour));
        await onBrief(scribe);
        await scribe.tap('brief.tab=flight');
        const brief = await page.locator('body').innerText();
        rows.push(is('day of the year on Brief', '2032-154', /2032-\d{3}/.exec(brief)?.[0]));
      } finally {
        await scribe.tablet.close();
      }
    }
    expect(tabled(task, rows)).toEqual([]);
  });
});

/** What the cautions must say, as the table of cautions has it; each by the words that carry its meaning. */
const ON_BRIEF = {
  'approval overrules': /approval and the test safety plan overrule/,
  'record only': /not an instrument.*not for flying.*not for fuel planning/,
  'transmitters off': /Transmitters off unless approved.*offline/,
  'strapped, clear, stowed': /strapped.*clear of controls.*Stowed/,
  decompression: /decompression/,
  heat: /No direct sun.*plenty of water/,
  'paper card': /Paper card and pencil/,
  provisional: /provisional, with its uncertainty.*test team/,
} as const;

describe('cautions', () => {
  it('R42: stand on Brief, the fuel pad, the figure and the report', async ({ task }) => {
    const rows: Row[] = [];
    const scribe = await flyOn(site);
    const { page } = scribe.tablet;
    const words = async (): Promise<string> =>
      (await page.locator('body').innerText()).replaceAll(/\s+/g, ' ');
    const row = (requirement: string, pattern: RegExp, said: string, where = ''): void => {
      const there = pattern.test(said);
      rows.push(
        seen(
          { no: 'R42', requirement, required: 'there' },
          there ? 'there' : 'missing',
          there,
          where,
        ),
      );
    };
    try {
      for (const size of VIEWPORTS) {
        await turnTo(page, size);
        const where = `${size.width}x${size.height}`;
        row('provisional, at the figure', /provisional/i, await words(), where);
        await scribe.tap('tile-fuel');
        row(
          'not for fuel planning, at the fuel pad',
          /not for fuel planning/i,
          await words(),
          where,
        );
        for (const act of ['key-0', 'key-erase', 'key-erase']) await scribe.tapDigit(act);
        await scribe.tablet.shown('tile-fuel');
      }
      await onBrief(scribe);
      await scribe.tap('brief.tab=cautions');
      const brief = await words();
      for (const [caution, pattern] of Object.entries(ON_BRIEF)) {
        row(`on Brief: ${caution}`, pattern, brief);
      }
      await scribe.tap('nav.debrief');
      row('on the report: record only, provisional', /Record only\. Provisional/, await words());
    } finally {
      await scribe.tablet.close();
    }
    expect(tabled(task, rows)).toEqual([]);
  });
});
