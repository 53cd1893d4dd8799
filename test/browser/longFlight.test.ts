import { describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { flyLong } from './longFlight.ts';

const PATIENCE_MS = 900_000;
/** More than a collection leaves by chance; a page that kept what every touch makes would grow without end. */
const MOST_GROWTH = 1.5;
const MOST_REMINDERS_AN_HOUR = 6;

describe('an hour of flight in which the browser is killed again and again', () => {
  it(
    'loses and doubles nothing, grows no memory and reminds at most six times',
    { timeout: PATIENCE_MS },
    async () => {
      const seen = await flyLong({
        executablePath: findBrowser() ?? '',
        hours: 1,
        touches: 100,
        kills: 5,
        seed: 20_320_603,
      });
      expect(seen.faults).toEqual([]);
      expect(seen.entries).toBeGreaterThan(100);
      expect(Math.max(...seen.reminders)).toBeLessThanOrEqual(MOST_REMINDERS_AN_HOUR);
      expect(seen.heaps.length).toBeGreaterThan(0);
      for (const { firstMiB, lastMiB } of seen.heaps) {
        expect(lastMiB / firstMiB).toBeLessThan(MOST_GROWTH);
      }
    },
  );
});
