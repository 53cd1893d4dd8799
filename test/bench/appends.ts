import { leaveFlightOpen } from '../browser/prepared.ts';
import { importBench, withTablet } from './benchPage.ts';
import type { BenchInPage, Beside } from './inPage.ts';
import { manyEntries } from './manyEntries.ts';
import { quantile, type Ratio } from './ratios.ts';

const APPENDS = 400;
const FULL = 20_000;
const YARDSTICK = 'a bare strict transaction, same bytes and stores';

/** From a touch to the disk, in an empty log and in a long one. */
export async function appendRatios(executablePath: string): Promise<readonly Ratio[]> {
  const empty = await appends(executablePath, 1);
  const full = await appends(executablePath, FULL);
  const median = (times: readonly number[]): number => quantile(times, 0.5);
  return [
    ...besides('a new log', empty),
    ...besides(`a log of ${FULL}`, full),
    {
      promise: `append does not grow to ${FULL} entries, p50`,
      oursMs: median(full.ours) / median(full.yardstick),
      yardstick: 'the same ratio in a new log',
      yardstickMs: median(empty.ours) / median(empty.yardstick),
      atMost: 1.25,
    },
  ];
}

function besides(where: string, { ours, yardstick }: Beside): readonly Ratio[] {
  return [0.5, 0.95].map((share) => ({
    promise: `append to ${where}, p${share * 100}`,
    oursMs: quantile(ours, share),
    yardstick: YARDSTICK,
    yardstickMs: quantile(yardstick, share),
    atMost: 1.25,
  }));
}

function appends(executablePath: string, entries: number): Promise<Beside> {
  return withTablet(executablePath, async ({ page }, { origin }) => {
    const flight = await leaveFlightOpen(page, origin, manyEntries(entries));
    await importBench(page);
    return page.evaluate(
      ({ to, count }) => {
        const bench: BenchInPage = Reflect.get(globalThis, 'benchInPage');
        return bench.appends(to, count);
      },
      { to: flight, count: APPENDS },
    );
  });
}
