import { findBrowser } from '../../../.tools/browser.mjs';
import type { Entry } from '../../../src/record/entry.ts';
import type { Theme } from '../../../src/ui/kit/settings.ts';
import { inCruise } from '../inCruise.ts';
import { leaveFlightOpen, type PreparedSite } from '../prepared.ts';
import { Scribe } from '../scribe.ts';
import { Tablet } from '../tablet.ts';
import { VIEWPORTS, type Size } from './sizes.ts';

export const NOW = Date.UTC(2032, 5, 2, 23, 0, 0);

/** A tablet as a requirement wants it. What is not said is as on a new 8 inch one, in cruise. */
export interface Setting {
  readonly size?: Size;
  readonly pxPerMm?: number;
  readonly theme?: Theme;
  readonly hand?: 'left' | 'right';
  readonly textSize?: number;
  readonly timezone?: string;
  readonly entries?: readonly Entry[];
  /** Page time at start, UTC milliseconds. */
  readonly startAt?: number;
  /** Runs in the page before anything of the app; must stand on its own. */
  readonly before?: () => void;
}

/** Fly open on a tablet of its own, ten minutes into a cruise, and someone at it. */
export async function flyOn(site: PreparedSite, setting: Setting = {}): Promise<Scribe> {
  const startAt = setting.startAt ?? NOW;
  const tablet = await Tablet.launch(site.origin, {
    size: setting.size ?? VIEWPORTS[0],
    executablePath: findBrowser() ?? '',
    startAt,
    ...(setting.timezone === undefined ? {} : { timezone: setting.timezone }),
  });
  if (setting.before !== undefined) await tablet.context.addInitScript(setting.before);
  await leaveFlightOpen(tablet.page, site.origin, setting.entries ?? inCruise(startAt));
  await keepSettings(tablet, setting);
  await tablet.open();
  await tablet.shown('tile-more');
  return new Scribe(tablet, startAt + 1_000);
}

/** What the tablet remembers of itself; the app reads it when it next starts. */
export async function keepSettings(tablet: Tablet, setting: Setting): Promise<void> {
  const kept = {
    'kneeline-mm': setting.pxPerMm,
    'kneeline-theme': setting.theme,
    'kneeline-hand': setting.hand,
    'kneeline-size': setting.textSize,
  };
  await tablet.page.evaluate(
    (pairs) => pairs.forEach(([key, value]) => localStorage.setItem(key, value)),
    Object.entries(kept).flatMap(([key, value]) =>
      value === undefined ? [] : [[key, String(value)] as const],
    ),
  );
}
