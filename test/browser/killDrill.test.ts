import { describe, expect, it } from 'vitest';
import { findBrowser } from '../../.tools/browser.mjs';
import { drillOnNewTablet } from './drillRun.ts';
import type { Seen } from './drillJudge.ts';
import { verifiedByReadme } from './timelineFiles.ts';

const ROUNDS = 20;
/** Ends a drill that hangs; no part of it is judged by its time. */
const PATIENCE_MS = 900_000;

describe('a browser that is killed in bursts of touches', () => {
  it(
    'loses nothing that it said was saved, and opens Fly as it was',
    { timeout: PATIENCE_MS },
    async () => {
      const rounds: Seen[] = [];
      const { file, disk } = await drillOnNewTablet({
        executablePath: findBrowser() ?? '',
        rounds: ROUNDS,
        seed: 20_320_602,
        onRound: (seen) => rounds.push(seen),
      });
      expect(rounds.flatMap(({ faults }) => faults)).toEqual([]);
      expect(rounds).toHaveLength(ROUNDS);
      // Every kill fell between touches that were already saved and touches that were not yet.
      expect(rounds.filter((seen) => seen.acknowledged === 0 || seen.unacknowledged === 0)).toEqual(
        [],
      );
      expect(rounds.reduce((sum, seen) => sum + seen.acknowledged, 0)).toBeGreaterThanOrEqual(400);
      expect(file.trimEnd().split('\n').slice(1, -1)).toEqual(disk);
      expect(verifiedByReadme(file)).toContain(`${disk.length} entries`);
    },
  );
});
