import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import type { PanelState } from '../../src/record/kinds.ts';
import { THEMES } from '../../src/ui/kit/settings.ts';
import { chainOf } from '../file/smallFlight.ts';
import { inGrey, inkShare } from './grey.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite, type PreparedSite } from './prepared.ts';
import { openAtHome } from './requirements/flyPlaces.ts';
import { atLeast, seen, tabled } from './requirements/rows.ts';
import { Scribe } from './scribe.ts';
import { SIZES, Tablet } from './tablet.ts';

const NOW = Date.UTC(2032, 5, 2, 12, 0, 0);
const CALLED = { L1: 'laminar', L2: 'intermittent', L3: 'turbulent' } as const satisfies Record<
  string,
  PanelState
>;
/** Panels of one wing side by side, all states among them; nobody called L4. */
const PANELS = { L1: 'LAM', L2: 'INT', L3: 'TRB', L4: '?' } as const;

let site: PreparedSite;
let tablet: Tablet;
beforeAll(async () => {
  site = await preparedSite();
  tablet = await Tablet.launch(site.origin, {
    executablePath: findBrowser() ?? '',
    startAt: NOW,
    size: SIZES.kneeboard,
  });
  const soFar = inCruise(NOW);
  const calls = Object.entries(CALLED).map(
    ([panel, state]) => ({ kind: 'panelStateCalled', body: { panel, state } }) as const,
  );
  const entries = [...soFar, ...chainOf(calls, { after: soFar.at(-1), startMs: NOW - 60_000 })];
  await leaveFlightOpen(tablet.page, site.origin, entries);
});
afterAll(async () => {
  await tablet.close();
  await site.close();
});

describe('R27: the wing map without any hue', () => {
  it.for(THEMES)(
    'tells the four states apart by fill and by word in %s',
    async (theme, { task }) => {
      const { page } = tablet;
      await tablet.open();
      await page.evaluate((to) => localStorage.setItem('kneeline-theme', to), theme);
      const scribe = new Scribe(tablet, NOW + THEMES.indexOf(theme) * 60_000);
      await openAtHome(scribe);
      await scribe.tap('tile-more');
      await scribe.tap('tile-wing');
      await tablet.shown('panel-L1');
      await inGrey(page);
      const ink: Record<string, number> = {};
      const words: string[] = [];
      for (const [panel, word] of Object.entries(PANELS)) {
        const key = page.locator(`[data-act="panel-${panel}"]`);
        words.push(await key.innerText());
        expect(words.at(-1)).toBe(`${panel} ${word}`);
        ink[panel] = await inkShare(key.locator('svg'));
      }
      const { L1: laminar = 0, L2: intermittent = 0, L3: turbulent = 0, L4: notAssessed = 0 } = ink;
      // More fill is more turbulent; half is half as much again as an outline, and a dashed outline has gaps to see.
      const times = (requirement: string, limit: number, value: number) =>
        atLeast(
          { no: 'R27', requirement },
          { limit, value, unit: 'times', decimals: 2, where: theme },
        );
      expect(
        tabled(task, [
          seen(
            { no: 'R27', requirement: 'words on the panels', required: 'LAM, INT, TRB, ?' },
            words.map((each) => each.split(' ')[1]).join(', '),
            words.length === 4,
            theme,
          ),
          times('ink of TRB over INT, hue taken out', 1.4, turbulent / intermittent),
          times('ink of INT over LAM', 1.4, intermittent / laminar),
          times('ink of LAM over not assessed', 1.25, laminar / notAssessed),
        ]),
      ).toEqual([]);
    },
  );
});
