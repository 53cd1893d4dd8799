import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { THEMES, type Theme } from '../../../src/ui/kit/settings.ts';
import { scriptA } from '../../flights/flightA.ts';
import { entriesUntil, flightOfScript } from '../../flights/scriptToEntries.ts';
import { contrast } from '../../ui/kit/contrast.ts';
import { preparedSite, type PreparedSite } from '../prepared.ts';
import type { Scribe } from '../scribe.ts';
import { flyOn } from './flyOn.ts';
import { openAtHome } from './flyPlaces.ts';
import { looksInPage, type Looks, type Written } from './looksInPage.ts';
import { pixelsOf, type Pixels } from './pixels.ts';
import { atLeast, atMost, seen, tabled, type Row } from './rows.ts';
import { MM_SCALES, sizeWords, turnTo, VIEWPORTS, type Size } from './sizes.ts';

/** Between two fuel readings of the fifth test point of flight A: suction on, the figure standing. */
const IN_CRUISE = Date.UTC(2032, 5, 2, 23, 39, 12);
const SO_FAR = entriesUntil(flightOfScript(scriptA), 81);

/** Touches from Fly as it opens. The tablet is turned, and the theme changed, where it then stands. */
const PLACES = {
  cruise: [],
  'fuel pad': ['tile-fuel', 'key-0', 'key-8'],
  'every event': ['tile-more'],
  wing: ['tile-more', 'tile-wing'],
  log: ['tile-more', 'tile-log'],
  detail: ['tile-cloud'],
} as const satisfies Readonly<Record<string, readonly string[]>>;
type PlaceName = keyof typeof PLACES;

let site: PreparedSite;
beforeAll(async () => {
  site = await preparedSite();
});
afterAll(async () => {
  await site.close();
});

interface Found extends Looks {
  readonly size: Size;
  readonly theme: Theme;
}

/** Sizes of capitals in mm at 60 cm: 20, 24 and 45 minutes of arc. */
const CAPITAL_MM = { text: 3.49, label: 4.19, large: 7.85 } as const;
/** A mounted 13 inch tablet is read from 75 cm. */
const FAR = 75 / 60;
const ROUNDING_MM = 0.02;

async function goTo(place: PlaceName, scribe: Scribe): Promise<void> {
  await openAtHome(scribe);
  await scribe.tablet.shown('tile-more');
  for (const act of PLACES[place]) {
    await (act.startsWith('key-') ? scribe.tapDigit(act) : scribe.tap(act));
  }
  await scribe.tablet.saved();
}

async function putTheme(page: Page, theme: Theme): Promise<void> {
  await page.evaluate((to) => {
    document.documentElement.dataset['theme'] = to;
  }, theme);
}

async function everyLook(pxPerMm: number): Promise<readonly Found[]> {
  const scribe = await flyOn(site, { entries: SO_FAR, startAt: IN_CRUISE, pxPerMm });
  const { page } = scribe.tablet;
  const found: Found[] = [];
  try {
    for (const place of Object.keys(PLACES) as PlaceName[]) {
      await turnTo(page, VIEWPORTS[0]);
      await goTo(place, scribe);
      for (const size of VIEWPORTS) {
        await turnTo(page, size);
        for (const theme of THEMES) {
          await putTheme(page, theme);
          found.push({ size, theme, ...(await page.evaluate(looksInPage)) });
        }
      }
    }
  } finally {
    await scribe.tablet.close();
  }
  return found;
}

const least = (values: readonly number[]): number => Math.min(...values);
const ratio = ({ ink, ground }: Pick<Written, 'ink' | 'ground'>): number => contrast(ink, ground);

function none(
  about: Pick<Row, 'no' | 'requirement'>,
  things: readonly string[],
  where: string,
): Row {
  const each = [...new Set(things)];
  const measured = each.length === 0 ? 'none' : each.join(', ');
  return seen({ ...about, required: 'none' }, measured, each.length === 0, where);
}

/** R21, R22: letters and figures do not depend on the theme. */
function letterRows(here: readonly Found[], pxPerMm: number, where: string): readonly Row[] {
  const isFar = here.some(({ screenClass }) => screenClass === 'thirteen');
  const written = here.flatMap((each) => each.written);
  return [
    ...(['text', 'label', 'large'] as const).map((role) =>
      atLeast(
        {
          no: 'R21',
          requirement: `height of capitals, ${ROLE_WORDS[role]}, ${isFar ? '75' : '60'} cm`,
        },
        {
          limit: Number((CAPITAL_MM[role] * (isFar ? FAR : 1)).toFixed(2)),
          value: least(
            written
              .filter((each) => role === 'text' || each.role === role)
              .map(({ capitalPx }) => capitalPx / pxPerMm),
          ),
          unit: 'mm',
          decimals: 2,
          within: ROUNDING_MM,
          where,
        },
      ),
    ),
    none(
      { no: 'R21', requirement: 'words of which a part cannot be seen' },
      here.flatMap(({ cut }) => cut),
      where,
    ),
    none(
      { no: 'R21', requirement: 'words that run into each other' },
      here.flatMap(({ collided }) => collided),
      where,
    ),
    atMost(
      { no: 'R22', requirement: 'widths of the ten figures differ by' },
      {
        limit: 0,
        value: Math.max(...written.map(({ figureSpread }) => figureSpread)),
        unit: 'em',
        decimals: 3,
        where,
      },
    ),
  ];
}

const ROLE_WORDS = {
  text: 'all words of Fly',
  label: 'words on tiles',
  large: 'clock, live figure, digits of a pad',
} as const;

/** What a theme requires of text: the number of the requirement, and the least contrast. */
const TEXT: Readonly<Record<Theme, readonly [no: string, least: number]>> = {
  day: ['R23', 7],
  dark: ['R23', 7],
  sun: ['R24', 21],
  night: ['R25', 7],
  'night-red': ['R25', 7],
};
const MOST_MEANINGS_A_SCREEN = 4;

/** Colours do not depend on the size, but what is on the screen does: the worst of all sizes. */
function themeRows(here: readonly Found[], theme: Theme, pxPerMm: number): readonly Row[] {
  const where = `${theme}, ${VIEWPORTS.length} sizes, ${pxPerMm.toFixed(2)}`;
  const [no, limit] = TEXT[theme];
  const shown = { unit: ': 1', decimals: 2, where };
  const words = here.flatMap(({ written }) => written);
  const edges = here.flatMap((each) => each.edges);
  return [
    atLeast(
      { no, requirement: 'contrast of text' },
      { limit, value: least(words.map(ratio)), ...shown },
    ),
    atLeast(
      { no: 'R26', requirement: 'contrast of the edges of targets' },
      { limit: 3, value: least(edges.map(ratio)), ...shown },
    ),
    atMost(
      { no: 'R28', requirement: 'hues on one screen' },
      {
        limit: MOST_MEANINGS_A_SCREEN,
        value: Math.max(...here.map(({ hues }) => hues.length)),
        unit: 'hues',
        decimals: 0,
        where,
      },
    ),
    ...(theme === 'sun'
      ? [
          atLeast(
            { no: 'R24', requirement: 'strokes round targets' },
            {
              limit: 0.6,
              value: least(here.map(({ thinnestEdgePx }) => thinnestEdgePx / pxPerMm)),
              unit: 'mm',
              decimals: 2,
              // Whole device pixels.
              within: 0.5 / pxPerMm,
              where,
            },
          ),
        ]
      : []),
  ];
}

describe.each(MM_SCALES)('how Fly looks at %d px a mm', (pxPerMm) => {
  it('R21 R22 R23 R24 R25 R26 R28: is readable at every size in every theme', async ({ task }) => {
    const found = await everyLook(pxPerMm);
    const rows = VIEWPORTS.flatMap((size) => {
      const at = sizeWords(size, pxPerMm);
      const here = found.filter((each) => each.size === size);
      return letterRows(here, pxPerMm, at);
    });
    const inThemes = THEMES.flatMap((theme) =>
      themeRows(
        found.filter((each) => each.theme === theme),
        theme,
        pxPerMm,
      ),
    );
    expect(tabled(task, [...rows, ...inThemes])).toEqual([]);
  });
});

/** Where slanted lines meet, the soft edge is more than a pixel wide. */
const SOFT_PERCENT = 0.01;
const NIGHTS = ['night', 'night-red'] as const;
const PIXEL_LIMITS = [
  {
    no: 'R24',
    requirement: 'pixels with a hue',
    limit: 0,
    unit: '%',
    of: ({ hueShare }: Pixels) => 100 * hueShare,
    themes: ['sun'],
  },
  {
    no: 'R24',
    requirement: 'pixels of a tone between, soft ends of lines apart',
    limit: SOFT_PERCENT,
    unit: '%',
    of: ({ midToneShare }: Pixels) => 100 * midToneShare,
    themes: ['sun'],
  },
  {
    no: 'R25',
    requirement: 'luminance of the brightest pixel',
    limit: 0.36,
    unit: 'of white',
    of: ({ brightest }: Pixels) => brightest,
    themes: NIGHTS,
  },
  {
    no: 'R25',
    requirement: 'mean luminance of the screen',
    limit: 0.04,
    unit: 'of white',
    of: ({ meanLuminance }: Pixels) => meanLuminance,
    themes: NIGHTS,
  },
] as const;

describe('the pixels of Fly', () => {
  it('R24 R25: are two tones in Sun and dim at night', async ({ task }) => {
    const scribe = await flyOn(site, { entries: SO_FAR, startAt: IN_CRUISE });
    const { page } = scribe.tablet;
    const taken: (Pixels & { readonly size: Size; readonly theme: Theme })[] = [];
    try {
      for (const place of ['cruise', 'fuel pad', 'wing'] as const) {
        await turnTo(page, VIEWPORTS[0]);
        await goTo(place, scribe);
        for (const size of VIEWPORTS) {
          await turnTo(page, size);
          for (const theme of ['sun', 'night', 'night-red'] as const) {
            await putTheme(page, theme);
            taken.push({ size, theme, ...(await pixelsOf(page)) });
          }
        }
      }
    } finally {
      await scribe.tablet.close();
    }
    const rows = PIXEL_LIMITS.flatMap(({ no, requirement, limit, unit, of, themes }) =>
      themes.flatMap((theme) =>
        VIEWPORTS.map((size) => {
          const here = taken.filter((each) => each.size === size && each.theme === theme);
          const where = `${size.width}x${size.height} ${theme}`;
          const value = Math.max(...here.map(of));
          return atMost({ no, requirement }, { limit, value, unit, decimals: 3, where });
        }),
      ),
    );
    expect(tabled(task, rows)).toEqual([]);
  });
});
