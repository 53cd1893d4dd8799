import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { QUESTIONS } from '../../src/ui/debrief/answers/questions.ts';
import {
  chooseTrace,
  dayOfYearAxis,
  readTrace,
  seenByTwo,
  type DebriefStop,
} from './debriefStops.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';

const NOW = Date.UTC(2032, 5, 2, 12, 0, 0);
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

type Way = readonly (string | DebriefStop)[];

const BRIEF_TABS = ['flight', 'hack', 'cautions', 'forms', 'sheet'];
const SECTIONS = ['flight', 'aircraft', 'weights', 'condition', 'baseline', 'panels', 'probes'];
const MORE_SECTIONS = ['instruments', 'cards', 'people', 'clocks', 'limits', 'tiles'];
const DEBRIEF_TABS = ['timeline', 'flights', 'recorder', 'audit', 'forms', 'files', 'sign'];
const SHEETS = ['log', 'squawks', 'samples', 'wings', 'account'];
const FORMS = ['handover', 'inspection', 'squawk', 'maintenance', 'lab'];
const MORE_FORMS = ['calibration', 'uplift', 'late', 'note'];
const ANSWERS = ['tab-answers', ...QUESTIONS.map(({ id }) => `answer-${id}`)];

/** Touches from one screen to the next; every stop is looked at. */
const NEW_TABLET: Way = ['start.manual', 'manual.back', 'start.setup', 'days.new'];
const IN_FLIGHT: Way = [
  'tile-cloud',
  'panel-done',
  'tile-fuel',
  'key-1',
  'key-erase',
  'key-erase',
  'tile-gain',
  'pad-close',
  'tile-more',
  'tile-log',
  'pad-close',
  'tile-more',
  'tile-desk',
  'desk-brief',
  ...BRIEF_TABS.map((tab) => `brief.tab=${tab}`),
  ...[...SECTIONS, ...MORE_SECTIONS].map((section) => `section=${section}`),
  'nav.debrief',
  ...DEBRIEF_TABS.map((tab) => `tab-${tab}`),
  'tab-forms',
  ...[...FORMS, ...MORE_FORMS].map((form) => `form-${form}`),
];
const AFTER_FLIGHT: Way = [
  'start.demo',
  'filters',
  ...DEBRIEF_TABS.map((tab) => `tab-${tab}`),
  'tab-audit',
  'audit-pairs',
  'audit-all',
  ...ANSWERS,
  'answer-2',
  'step-1',
  'decide-cause',
  'cause=other',
  'open-loss',
  'detail-cause',
  'detail-amend',
  'form-cancel',
  'detail-withdraw',
  'form-cancel',
  dayOfYearAxis,
  chooseTrace,
  readTrace,
  'tab-timeline',
  seenByTwo,
  'pair-open',
];
const ON_PAPER: Way = [
  'start.demo',
  'tab-sign',
  'go-print',
  ...SHEETS.map((sheet) => `sheet-${sheet}`),
  'paper-letter',
];

let site: PreparedSite;
beforeAll(async () => {
  site = await preparedSite();
});
afterAll(async () => {
  await site.close();
});

/** What breaks a rule anywhere on the way, each named by the stop. */
async function violationsOnTheWay(
  theme: 'day' | 'night',
  way: Way,
  isInFlight: boolean,
): Promise<readonly string[]> {
  const tablet = await Tablet.launch(site.origin, {
    executablePath: findBrowser() ?? '',
    startAt: NOW,
  });
  const { page } = tablet;
  const found: string[] = [];
  const look = async (stop: string): Promise<void> => {
    const axe = new AxeBuilder({ page });
    // Themes differ in colour alone: what other rules find is found in one of them.
    const rules = theme === 'day' ? axe.withTags(TAGS) : axe.withRules(['color-contrast']);
    const { violations } = await rules.analyze();
    found.push(
      ...violations.flatMap(({ id, nodes }) =>
        nodes.map((node) => `${stop}: ${id}: ${node.html.slice(0, 160)}`),
      ),
    );
  };
  try {
    if (isInFlight) await leaveFlightOpen(page, site.origin, inCruise(NOW));
    await tablet.open();
    await page.evaluate((to) => localStorage.setItem('kneeline-theme', to), theme);
    await tablet.open();
    const scribe = new Scribe(tablet, NOW + 1_000);
    await tablet.shown(isInFlight ? 'tile-cloud' : 'start.demo');
    await look('at the start');
    for (const stop of way) {
      await (typeof stop === 'string' ? scribe.tap(stop) : stop.go(scribe));
      await look(typeof stop === 'string' ? stop : stop.name);
    }
  } finally {
    await tablet.close();
  }
  return [...new Set(found)];
}

describe.each(['day', 'night'] as const)('the screens in theme %s', (theme) => {
  it.each([
    ['on a new tablet', NEW_TABLET, false],
    ['in flight', IN_FLIGHT, true],
    ['after flight', AFTER_FLIGHT, false],
    ['on paper', ON_PAPER, false],
  ])('break no rule of WCAG A or AA that a machine can check, %s', async (_, way, isInFlight) => {
    expect(await violationsOnTheWay(theme, way, isInFlight)).toEqual([]);
  });
});
