import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { preparedSite, type PreparedSite } from '../prepared.ts';
import { calmInPage, type Calm } from './calmInPage.ts';
import { flyOn } from './flyOn.ts';
import { FLY_PLACES, openAtHome, tapToFlyPlace } from './flyPlaces.ts';
import { atMost, seen, tabled } from './rows.ts';
import { sizeWords, VIEWPORTS, type Size } from './sizes.ts';

let site: PreparedSite;
beforeAll(async () => {
  site = await preparedSite();
});
afterAll(async () => {
  await site.close();
});

interface Moved {
  readonly node: Node | null;
  readonly previousRect: DOMRectReadOnly;
  readonly currentRect: DOMRectReadOnly;
}

/** Counts what would stop the scribe, and what moves on the screen by itself, from before the app starts. */
function watchCalm(): void {
  let modals = 0;
  let movers: string[] = [];
  const answer = () => {
    modals += 1;
  };
  Object.assign(window, { alert: answer, confirm: answer, prompt: answer });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      const sources: readonly Moved[] = Reflect.get(entry, 'sources');
      // A text set to the right begins elsewhere when it gets longer; nothing has moved.
      const moved = sources.filter(
        ({ previousRect: was, currentRect: is }) =>
          Math.abs(was.right - is.right) >= 1 || Math.abs(was.top - is.top) >= 3,
      );
      if (Reflect.get(entry, 'hadRecentInput') === false) {
        movers.push(
          ...moved.map(({ node, previousRect: was, currentRect: is }) => {
            const words = (node?.textContent ?? '').slice(0, 40);
            return `“${words}” from ${was.x},${was.y} to ${is.x},${is.y}`;
          }),
        );
      }
    }
  }).observe({ type: 'layout-shift', buffered: true });
  const loaded = () => {
    movers = [];
  };
  Object.assign(globalThis, { calmSeen: () => ({ modals, movers }), loaded });
}

interface CalmPlace extends Calm {
  readonly place: string;
}

/** Every place of Fly, by taps alone. */
async function calmAt(size: Size, pxPerMm: number): Promise<readonly CalmPlace[]> {
  const scribe = await flyOn(site, { size, pxPerMm, before: watchCalm });
  const found: CalmPlace[] = [];
  try {
    for (const place of FLY_PLACES) {
      await openAtHome(scribe);
      await scribe.tablet.shown('tile-more');
      await scribe.tablet.page.evaluate(async () => {
        await Promise.all([...document.fonts].map((face) => face.load()));
        await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
        Reflect.get(globalThis, 'loaded')();
      });
      await tapToFlyPlace(place, scribe);
      await scribe.tablet.saved();
      found.push({ place, ...(await scribe.tablet.page.evaluate(calmInPage)) });
    }
  } finally {
    await scribe.tablet.close();
  }
  return found;
}

const listed = (all: readonly (readonly string[])[]): string => {
  const each = [...new Set(all.flat())];
  return each.length === 0 ? 'none' : each.join(', ');
};

/** Keys behind the pads that were seen at more than one place. */
function moved(found: readonly Calm[]): readonly string[] {
  const places = new Map<string, Set<string>>();
  for (const { name, box } of found.flatMap(({ standing }) => standing)) {
    places.set(name, (places.get(name) ?? new Set()).add(box));
  }
  return [...places].filter(([, boxes]) => boxes.size > 1).map(([name]) => name);
}

describe('every place of Fly', () => {
  it.for([
    [VIEWPORTS[0], 6.42],
    [VIEWPORTS[3], 5.2],
    [VIEWPORTS[5], 5.2],
  ] as const)(
    'R8 R30 R31 R39: is reached by taps alone, stops nobody and keeps still, at %o',
    async ([size, pxPerMm], { task }) => {
      const found = await calmAt(size, pxPerMm);
      const where = sizeWords(size, pxPerMm);
      const none = (
        no: string,
        requirement: string,
        things: (of: CalmPlace) => readonly string[],
      ) => {
        const measured = listed(found.map(things));
        return seen({ no, requirement, required: 'none' }, measured, measured === 'none', where);
      };
      const places = `${found.length} of ${FLY_PLACES.length}`;
      const reached = { no: 'R8', requirement: 'places reached by taps alone', required: 'all' };
      expect(
        tabled(task, [
          seen(reached, places, found.length === FLY_PLACES.length, where),
          none('R8', 'targets that hear a drag, pinch, double tap or wheel', (of) =>
            // A note drawn by hand is a drag by nature.
            of.place === 'sketch' ? [] : of.gestures,
          ),
          none('R22', 'figures beside a bare letter O', (of) => of.ohs),
          none('R29', 'movement on the screen that does not end', (of) => of.endless),
          none('R30', 'dialogs on the screen', (of) => of.dialogs),
          atMost(
            { no: 'R30', requirement: 'alert, confirm and prompt called' },
            {
              limit: 0,
              value: Math.max(...found.map(({ modals }) => modals)),
              unit: 'calls',
              decimals: 0,
              where,
            },
          ),
          none('R31', 'what moved by itself after load', (of) => of.movers),
          none('R31', 'keys that stood elsewhere on another of these screens', () => moved(found)),
          none('R38', 'targets with no name for a reader', (of) => of.nameless),
          none('R39', 'live regions that interrupt', (of) => of.assertive),
        ]),
      ).toEqual([]);
    },
  );
});
