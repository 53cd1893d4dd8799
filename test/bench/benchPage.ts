import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { buildModule, preparedSite, type PreparedSite } from '../browser/prepared.ts';
import { Tablet } from '../browser/tablet.ts';

const MODULE = 'bench-in-page.js';

/** A tablet of its own on a site of its own, for one measurement. */
export async function withTablet<Found>(
  executablePath: string,
  measure: (tablet: Tablet, site: PreparedSite) => Promise<Found>,
  options: { readonly startAt?: number } = {},
): Promise<Found> {
  const site = await preparedSite();
  try {
    await buildModule(site.folder, join(import.meta.dirname, 'inPage.ts'), MODULE);
    const tablet = await Tablet.launch(site.origin, { executablePath, ...options });
    try {
      return await measure(tablet, site);
    } finally {
      await tablet.close();
    }
  } finally {
    await site.close();
  }
}

/** Gives the page that stands there what the bench runs inside of it. */
export async function importBench(page: Page): Promise<void> {
  await page.evaluate(`import('/${MODULE}').then(() => undefined)`);
}
