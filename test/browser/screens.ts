import type { Theme } from '../../src/ui/kit/settings.ts';
import { scriptA } from '../flights/flightA.ts';
import { entriesUntil, flightOfScript } from '../flights/scriptToEntries.ts';
import { touchMark } from './chart.ts';
import { chooseTrace, readTrace } from './debriefStops.ts';
import { inGrey } from './grey.ts';
import { inCruise } from './inCruise.ts';
import { leaveFlightOpen, preparedSite } from './prepared.ts';
import { openAtHome } from './requirements/flyPlaces.ts';
import { Scribe } from './scribe.ts';
import { Tablet } from './tablet.ts';

interface Way {
  /** `uncalled`: in cruise, and nobody has called a panel yet. */
  readonly flight: 'inCruise' | 'uncalled' | 'demo';
  /** Whether going there leaves something in the record. */
  readonly writes: boolean;
  readonly go: (scribe: Scribe) => Promise<void>;
}

/** Touches one after the other, from where Fly stands at the start of the app. */
const onFly = (...acts: readonly string[]): Way => ({
  flight: 'inCruise',
  writes: false,
  go: async (scribe) => {
    await scribe.tablet.shown('tile-fuel');
    for (const act of acts) await scribe.tap(act);
  },
});
const onBrief = (...acts: readonly string[]): Way =>
  onFly('tile-more', 'tile-desk', 'desk-brief', ...acts);
const onDebrief = (...acts: readonly string[]): Way => ({
  flight: 'demo',
  writes: false,
  go: async (scribe) => {
    const ways = scribe.tablet.page.locator('[data-act="start.demo"], [data-act^="days.debrief="]');
    await ways.first().waitFor();
    const isFirst = await scribe.isThere('start.demo');
    await scribe.tap(isFirst ? 'start.demo' : { starts: 'days.debrief=' });
    await scribe.tablet.shown('timeline');
    for (const act of acts) await scribe.tap(act);
  },
});

/** What the panels of the left wing are called for the picture; the rest stay as they are. */
const ALL_STATES = { L1: 'laminar', L2: 'intermittent', L3: 'turbulent' };

/** How each screen is reached by touch from a fresh start of the app, and which flight it shows. */
const WAYS = {
  start: { flight: 'demo', writes: true, go: (scribe) => scribe.tablet.shown('start.demo') },
  brief: onBrief('brief.tab=flight'),
  'brief-hack': onBrief('brief.tab=hack'),
  'brief-sheet': onBrief('brief.tab=sheet', 'section=instruments'),
  fly: onFly(),
  'fly-fuel': {
    ...onFly(),
    writes: true,
    go: async (scribe) => {
      await scribe.tap('tile-fuel');
      for (const digit of '0850') await scribe.tapDigit(`key-${digit}`);
      await scribe.tapDigit('key-enter');
      for (const digit of '08') await scribe.tapDigit(`key-${digit}`);
    },
  },
  'fly-cloud': { ...onFly('tile-cloud'), writes: true },
  'fly-wing': onFly('tile-more', 'tile-wing'),
  'fly-count': onFly('tile-more', 'tile-count'),
  'fly-sketch': onFly('tile-more', 'tile-sketch'),
  'wing-grey': {
    flight: 'uncalled',
    writes: true,
    // Every state on one wing, and no hue: what a stranger is asked to name.
    go: async (scribe) => {
      await scribe.tap('tile-more');
      await scribe.tap('tile-wing');
      for (const [panel, state] of Object.entries(ALL_STATES)) {
        await scribe.tap(`panel-${panel}`);
        await scribe.tap(`state-${state}`);
      }
      await inGrey(scribe.tablet.page);
    },
  },
  'fly-log': onFly('tile-more', 'tile-log'),
  'fly-more': onFly('tile-more'),
  debrief: {
    ...onDebrief(),
    go: async (scribe) => {
      await onDebrief().go(scribe);
      await touchMark(scribe.tablet, (marks) =>
        marks.filter(({ kind, lane }) => kind === 'fuelRead' && lane === 'fuel').at(12),
      );
    },
  },
  'debrief-answers': onDebrief('tab-answers'),
  'debrief-drag': onDebrief('tab-answers', 'answer-1'),
  'debrief-losses': onDebrief('tab-answers', 'answer-2'),
  'debrief-moisture': onDebrief('tab-answers', 'answer-3'),
  'debrief-laminar': onDebrief('tab-answers', 'answer-4'),
  'debrief-fuel': onDebrief('tab-answers', 'answer-5'),
  'debrief-completion': onDebrief('tab-answers', 'answer-6'),
  'debrief-chronic': onDebrief('tab-answers', 'answer-7'),
  'debrief-economics': onDebrief('tab-answers', 'answer-8'),
  'debrief-clocks': onDebrief('tab-answers', 'answer-9'),
  'debrief-books': onDebrief('tab-answers', 'answer-10'),
  'debrief-flights': onDebrief('tab-flights'),
  'debrief-recorder': {
    ...onDebrief(),
    go: async (scribe) => {
      await onDebrief().go(scribe);
      await chooseTrace.go(scribe);
      await readTrace.go(scribe);
    },
  },
  'debrief-print': {
    ...onDebrief(),
    go: async (scribe) => {
      await onDebrief('tab-sign', 'go-print').go(scribe);
      // Its code is fetched when it is asked for.
      await scribe.tablet.shown('print');
    },
  },
  'debrief-calibration': onDebrief('tab-forms', 'form-calibration'),
  'debrief-forms': onDebrief('tab-forms'),
  'debrief-files': onDebrief('tab-files'),
} as const satisfies Readonly<Record<string, Way>>;

export type Screen = keyof typeof WAYS;
export const SCREENS = Object.keys(WAYS) as readonly Screen[];

/** Between two fuel readings of the fifth test point of flight A: suction on, the figure standing. */
const IN_CRUISE = Date.parse('2032-06-02T23:39:12Z');
const SO_FAR = entriesUntil(flightOfScript(scriptA), 81);

interface Size {
  readonly width: number;
  readonly height: number;
}

/** One screen in one theme at one size. */
export interface Picture extends Size {
  readonly screen: Screen;
  readonly theme: Theme;
  readonly png: Buffer;
}

/**
 * The app's screens as a crew would see them: Fly and Brief in the middle of flight A, Debrief after it.
 *
 * @param save called with each picture
 */
export async function takePictures(
  wanted: {
    readonly sizes: readonly Size[];
    readonly themes: readonly Theme[];
    readonly screens: readonly Screen[];
    readonly executablePath: string;
  },
  save: (picture: Picture) => void,
): Promise<void> {
  const site = await preparedSite();
  try {
    for (const flight of ['inCruise', 'uncalled', 'demo'] as const) {
      const screens = wanted.screens.filter((screen) => WAYS[screen].flight === flight);
      for (const screen of screens) {
        await pictured(screen, wanted, site.origin, save);
      }
    }
  } finally {
    await site.close();
  }
}

/** A tablet of its own for each screen, and anew for each picture where the way to it writes into the flight. */
async function pictured(
  screen: Screen,
  wanted: Parameters<typeof takePictures>[0],
  origin: string,
  save: (picture: Picture) => void,
): Promise<void> {
  const { flight, writes, go }: Way = WAYS[screen];
  const fresh = async (): Promise<Tablet> => {
    const { executablePath } = wanted;
    const tablet = await Tablet.launch(origin, { executablePath, startAt: IN_CRUISE });
    if (flight !== 'demo') {
      const soFar = flight === 'inCruise' ? SO_FAR : inCruise(IN_CRUISE);
      await leaveFlightOpen(tablet.page, origin, soFar);
    }
    return tablet;
  };
  let tablet = await fresh();
  for (const [index, size] of wanted.sizes.entries()) {
    for (const theme of wanted.themes) {
      if (writes && (index > 0 || theme !== wanted.themes[0])) {
        await tablet.close();
        tablet = await fresh();
      }
      await tablet.page.setViewportSize(size);
      await tablet.open();
      await tablet.page.evaluate((to) => localStorage.setItem('kneeline-theme', to), theme);
      const scribe = new Scribe(tablet, IN_CRUISE + 5_000);
      await openAtHome(scribe);
      await go(scribe);
      await painted(tablet);
      save({ screen, theme, ...size, png: await tablet.page.screenshot() });
    }
  }
  await tablet.close();
}

async function painted(tablet: Tablet): Promise<void> {
  await tablet.page.evaluate(async () => {
    await document.fonts.ready;
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  });
}
