import { expect, it } from 'vitest';
import { severalRecorders } from '../drills/recorders/simulate.ts';

/** Few enough for every commit; `npm run drill` takes ten thousand. */
const SEEDS = 200;

it('one to four recorders lose nothing that was told saved, double nothing and agree in the end, whatever happens', async () => {
  const seen = await severalRecorders(SEEDS, 1);
  expect(seen.broken).toEqual([]);
  expect(seen.faults).toBeGreaterThan(SEEDS);
}, 600_000);
