import type { Scribe } from '../scribe.ts';

const MINUTE_MS = 60_000;

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
  'probe count': ['tile-more', 'tile-count'],
  sketch: ['tile-more', 'tile-sketch'],
  'suction, its region': ['phase-cruise', 'tile-suction', 'panel-next'],
  covers: ['phase-climb', 'tile-coversLeft'],
  detail: ['phase-cruise', 'tile-cloud'],
  'detail, next': ['tile-cloud', 'panel-next'],
  note: ['phase-ground', 'tile-note'],
  tablet: ['tile-more', 'tile-desk'],
  scribe: ['tile-more', 'tile-desk', 'desk-scribe'],
  'end of flight': ['tile-more', 'tile-desk', 'desk-end'],
  cards: ['tile-more', 'tile-cards'],
};

export const FLY_PLACES: readonly string[] = Object.keys(PLACES);
/** Pages of event tiles. */
export const PAGES_OF_TILES: readonly string[] = ['ground', 'climb', 'descent', 'cruise'];

/** Opens the app anew at home and goes to a place of Fly by touch; then a minute passes for the one who touches. */
export async function goToFlyPlace(place: string, scribe: Scribe): Promise<void> {
  await openAtHome(scribe);
  await tapToFlyPlace(place, scribe);
}

/** A reload comes back to where Fly stood; this forgets that first. */
export async function openAtHome({ tablet }: Scribe): Promise<void> {
  await tablet.page.evaluate(() => localStorage.removeItem('kneeline-fly'));
  await tablet.open();
}

/** By touch from Fly as it opens. */
export async function tapToFlyPlace(place: string, scribe: Scribe): Promise<void> {
  for (const act of PLACES[place] ?? []) {
    await (act.startsWith('key-') ? scribe.tapDigit(act) : scribe.tap(act));
  }
  scribe.waitUntil(scribe.nowMs + MINUTE_MS);
}
