import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { panelsFor, probesFor } from '../../src/record/blankSheet.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { scriptA } from '../flights/flightA.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { boxesOn, RULES, type Boxes } from './boxes.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { FLY_PLACES, goToFlyPlace, PAGES_OF_TILES } from './requirements/flyPlaces.ts';
import { atLeast, atMost, tabled, type Row } from './requirements/rows.ts';
import { MM_SCALES, sizeWords, turnTo, VIEWPORTS, type Size } from './requirements/sizes.ts';
import { Scribe } from './scribe.ts';
import { SIZES, Tablet } from './tablet.ts';

const NOW = Date.UTC(2032, 5, 2, 23, 0, 0);
const MINUTE_MS = 60_000;
/** Layout is rounded to device pixels. */
const ROUNDING_MM = 0.1;

const ALL_SIZES: readonly Size[] = [...VIEWPORTS, SIZES.desk];

/** Where the number of panels shows. */
const WING_PLACES = [
  'cruise',
  'wing',
  'wing, a panel chosen',
  'probes',
  'probe count',
  'covers',
  'detail',
];
/** The way there depends on the size: everywhere else the tablet is turned where it stands. */
const REACHED_ANEW = ['log, an entry chosen'];

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

interface Case {
  readonly pxPerMm: number;
  readonly aWing: number;
  readonly hand: 'left' | 'right';
  readonly places: readonly string[];
}

interface Found extends Boxes {
  readonly place: string;
  readonly size: Size;
}

/** Goes to each place and turns the tablet there through all sizes. */
async function measured({ pxPerMm, aWing, hand, places }: Case): Promise<readonly Found[]> {
  const tablet = await Tablet.launch(site.origin, {
    size: ALL_SIZES[0] ?? SIZES.kneeboard,
    executablePath: findBrowser() ?? '',
    startAt: NOW,
  });
  const found: Found[] = [];
  try {
    await leaveFlightOpen(tablet.page, site.origin, inCruise(NOW, sheetWith(aWing)));
    await tablet.page.evaluate(
      (kept) => kept.forEach(([key, value]) => localStorage.setItem(key, value)),
      [
        ['kneeline-hand', hand],
        ['kneeline-mm', String(pxPerMm)],
      ] as const,
    );
    const scribe = new Scribe(tablet, NOW + MINUTE_MS);
    for (const place of places) {
      for (const [index, size] of ALL_SIZES.entries()) {
        await turnTo(tablet.page, size);
        if (index === 0 || REACHED_ANEW.includes(place)) await goToFlyPlace(place, scribe);
        found.push({ place, size, ...(await boxesOn(tablet.page, pxPerMm)) });
      }
    }
  } finally {
    await tablet.close();
  }
  return found;
}

const MEASURES = [
  ['R1', 'event keys, pad keys and undo, smaller side', 'largeSide', RULES.largeMm],
  ['R2', 'other targets of Fly, smaller side', 'side', RULES.targetMm],
  ['R4', 'dead space between targets', 'gap', RULES.gapMm],
  ['R5', 'space round what must be held', 'consequentialGap', RULES.consequentialGapMm],
  ['R6', 'targets from left, right and upper edge', 'edge', RULES.edgeMm],
  ['R6', 'what must be held from an edge', 'consequentialEdge', RULES.consequentialEdgeMm],
  ['R6', 'targets from the lower edge', 'bottom', RULES.bottomMm],
] as const;

function rowsOf(found: readonly Found[], pxPerMm: number): readonly Row[] {
  return ALL_SIZES.flatMap((size) => {
    const here = found.filter((each) => each.size === size);
    const where = sizeWords(size, pxPerMm);
    const rows = MEASURES.map(([no, requirement, measure, limit]) => ({
      value: Math.min(...here.map(({ leastMm }) => leastMm[measure])),
      about: { no, requirement },
      limit,
    }));
    return [
      // A chosen few places have nothing that must be held.
      ...rows
        .filter(({ value }) => Number.isFinite(value))
        .map(({ about, value, limit }) =>
          atLeast(about, { limit, value, unit: 'mm', within: ROUNDING_MM, where }),
        ),
      atMost(
        { no: 'R7', requirement: 'what could be scrolled on Fly' },
        {
          limit: 0,
          value: Math.max(...here.map(({ scrollPx }) => scrollPx)),
          unit: 'px',
          decimals: 0,
          where,
        },
      ),
      ...tileRows(here, where),
    ];
  });
}

/** The pages of tiles: no more of them than a glance can part, on the smallest tablet above all. */
function tileRows(here: readonly Found[], where: string): readonly Row[] {
  const pages = here.filter(({ place }) => PAGES_OF_TILES.includes(place));
  const about = (requirement: string) => ({ no: 'R7', requirement });
  return pages.length === 0
    ? []
    : [
        atMost(about('tiles on a page'), {
          limit: 12,
          value: Math.max(...pages.map(({ tiles }) => tiles.count)),
          unit: 'tiles',
          decimals: 0,
          where,
        }),
        atLeast(about('width of a tile'), {
          limit: 22,
          value: Math.min(...pages.map(({ tiles }) => tiles.leastWidthMm)),
          unit: 'mm',
          within: ROUNDING_MM,
          where,
        }),
        atLeast(about('height of a tile'), {
          limit: 20,
          value: Math.min(...pages.map(({ tiles }) => tiles.leastHeightMm)),
          unit: 'mm',
          within: ROUNDING_MM,
          where,
        }),
      ];
}

const offencesOf = (found: readonly Found[]): readonly string[] =>
  found.flatMap(({ place, size, offences }) =>
    offences.map((offence) => `${place} at ${size.width}x${size.height}: ${offence}`),
  );

describe.each(MM_SCALES)('R1 R2 R4 R5 R6 R7: the targets of Fly at %d px a mm', (pxPerMm) => {
  it('are large enough, apart enough and all in view at every size', async ({ task }) => {
    const found = await measured({
      pxPerMm,
      hand: 'right',
      aWing: 6,
      places: FLY_PLACES,
    });
    expect(offencesOf(found)).toEqual([]);
    expect(tabled(task, rowsOf(found, pxPerMm))).toEqual([]);
  });

  it.for([2, 12])('are so with %i panels a wing', async (aWing, { task }) => {
    const found = await measured({ pxPerMm, hand: 'right', aWing, places: WING_PLACES });
    expect(offencesOf(found)).toEqual([]);
    expect(tabled(task, rowsOf(found, pxPerMm))).toEqual([]);
  });
});

describe('R1 R2 R4 R5 R6 R7: the targets of Fly mirrored', () => {
  it('are so for the left hand', async ({ task }) => {
    const [pxPerMm] = MM_SCALES;
    const found = await measured({ pxPerMm, hand: 'left', aWing: 6, places: FLY_PLACES });
    expect(offencesOf(found)).toEqual([]);
    expect(tabled(task, rowsOf(found, pxPerMm))).toEqual([]);
  });
});
