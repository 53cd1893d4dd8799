import { importBench, withTablet } from './benchPage.ts';
import type { BenchInPage } from './inPage.ts';
import { quantile, type Ratio } from './ratios.ts';

const MARKS = 100_000;
const WINDOWS = 40;

/** The timeline of Debrief, drawn anew at one zoom after the other. */
export function redrawRatio(executablePath: string): Promise<Ratio> {
  return withTablet(executablePath, async (tablet) => {
    // The app's own page, for its fonts and colours.
    await tablet.open();
    await tablet.shown('start.demo');
    await importBench(tablet.page);
    const { ours, yardstick } = await tablet.page.evaluate(
      ({ marks, windows }) => {
        const bench: BenchInPage = Reflect.get(globalThis, 'benchInPage');
        return bench.redraws(marks, windows);
      },
      { marks: MARKS, windows: WINDOWS },
    );
    return {
      promise: `timeline of ${MARKS} marks redrawn on zoom, p50`,
      oursMs: quantile(ours, 0.5),
      yardstick: 'a bare uPlot of as many points',
      yardstickMs: quantile(yardstick, 0.5),
      atMost: 1.5,
    };
  });
}
