import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { panelsFor, probesFor } from '../../src/record/blankSheet.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { scriptA } from '../flights/flightA.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { offencesOn, pxPerMmOf } from './boxes.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';

const NOW = Date.UTC(2032, 5, 2, 23, 0, 0);
const MINUTE_MS = 60_000;

const SIZES = [
  { width: 744, height: 1133 },
  { width: 1133, height: 744 },
  { width: 820, height: 1180 },
  { width: 1180, height: 820 },
  { width: 1366, height: 1024 },
  { width: 1440, height: 900 },
];

/** Touches from Fly as it opens to each of its places; each is measured after its last touch. */
const PLACES: Readonly<Record<string, readonly string[]>> = {
  ground: ['phase-ground'],
  climb: ['phase-climb'],
  descent: ['phase-descent'],
  cruise: ['phase-cruise'],
  'fuel pad': ['tile-fuel'],
  'fuel pad, queried': ['tile-fuel', 'key-9', 'key-9', 'key-9', 'key-9', 'key-enter'],
  'air pad': ['tile-more', 'tile-air'],
  'tank pad': ['tile-more', 'tile-tank'],
  'every event': ['tile-more'],
  'every event, page 2': ['tile-more', 'more-next'],
  'every event, page 3': ['tile-more', 'more-next', 'more-next'],
  log: ['tile-more', 'tile-log'],
  'log, an entry chosen': ['tile-more', 'tile-log', 'log-0'],
  wing: ['tile-more', 'tile-wing'],
  'wing, a panel chosen': ['tile-more', 'tile-wing', 'panel-L1'],
  rake: ['tile-more', 'tile-rake'],
  probes: ['tile-gain'],
  covers: ['phase-climb', 'tile-coversLeft'],
  detail: ['phase-cruise', 'tile-cloud'],
  'detail, next': ['tile-cloud', 'panel-next'],
  note: ['phase-ground', 'tile-note'],
  tablet: ['tile-more', 'tile-desk'],
  scribe: ['tile-more', 'tile-desk', 'desk-scribe'],
  'end of flight': ['tile-more', 'tile-desk', 'desk-end'],
  cards: ['tile-more', 'tile-cards'],
};

/** Where the number of panels shows. */
const WING_PLACES = ['cruise', 'wing', 'wing, a panel chosen', 'probes', 'covers', 'detail'];

function sheetWith(aWing: number): FlightSheet {
  const panels = panelsFor({
    aWing,
    area: 120 / aWing,
    areaUnit: 'ft2',
    spanFromFraction: 0.1,
    spanToFraction: 0.88,
  });
  return { ...sheetOfScript(scriptA), panels, probes: probesFor(panels, aWing > 6 ? 2 : 4) };
}

let site: PreparedSite;
beforeAll(async () => {
  site = await preparedSite();
});
afterAll(async () => {
  await site.close();
});

async function offencesAt(
  places: readonly string[],
  given: {
    readonly size: (typeof SIZES)[number];
    readonly aWing: number;
    readonly hand: 'left' | 'right';
  },
): Promise<readonly string[]> {
  const { size, aWing, hand } = given;
  const tablet = await Tablet.launch(site.origin, {
    size,
    executablePath: findBrowser() ?? '',
    startAt: NOW,
  });
  const found: string[] = [];
  try {
    await leaveFlightOpen(tablet.page, site.origin, inCruise(NOW, sheetWith(aWing)));
    await tablet.page.evaluate((to) => localStorage.setItem('kneeline-hand', to), hand);
    const scribe = new Scribe(tablet, NOW + MINUTE_MS);
    for (const place of places) {
      await tablet.open();
      for (const act of PLACES[place] ?? []) {
        await (act.startsWith('key-') ? scribe.tapDigit(act) : scribe.tap(act));
      }
      scribe.waitUntil(scribe.nowMs + MINUTE_MS);
      const offences = await offencesOn(tablet.page, pxPerMmOf(size));
      found.push(...offences.map((offence) => `${place}: ${offence}`));
    }
  } finally {
    await tablet.close();
  }
  return found;
}

describe.each(SIZES)('the targets of Fly at $width x $height', (size) => {
  it.each(['right', 'left'] as const)(
    'are large enough, apart enough and all in view for the %s hand',
    async (hand) => {
      expect(await offencesAt(Object.keys(PLACES), { size, aWing: 6, hand })).toEqual([]);
    },
  );

  it.each([2, 12])('are so with %i panels a wing', async (aWing) => {
    expect(await offencesAt(WING_PLACES, { size, aWing, hand: 'right' })).toEqual([]);
  });
});
