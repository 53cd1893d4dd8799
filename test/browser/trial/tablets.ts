import { flyOn, NOW, type Setting } from '../requirements/flyOn.ts';
import type { PreparedSite } from '../prepared.ts';
import type { Scribe } from '../scribe.ts';

/** On the knee and on a mount. */
export const TABLETS = [
  { size: { width: 744, height: 1133 }, pxPerMm: 6.42, where: '744x1133' },
  { size: { width: 1180, height: 820 }, pxPerMm: 5.2, where: '1180x820' },
] as const;

/** Fly in cruise on such a tablet, a work on it, and the tablet away again. */
export async function onTablet(
  site: PreparedSite,
  setting: Setting,
  work: (scribe: Scribe) => Promise<void>,
): Promise<void> {
  const scribe = await flyOn(site, setting);
  try {
    scribe.waitUntil(NOW + 20_000);
    await work(scribe);
  } finally {
    await scribe.tablet.close();
  }
}
