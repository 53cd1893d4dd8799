import { appendRatios } from './appends.ts';
import { coldStartRatio } from './coldStart.ts';
import type { Counted, Ratio } from './ratios.ts';
import { redrawRatio } from './redraw.ts';
import { touchRatios } from './touches.ts';

/** Promises that only a browser can keep. */
export async function browserRatios(executablePath: string): Promise<readonly (Ratio | Counted)[]> {
  return [
    ...(await appendRatios(executablePath)),
    ...(await touchRatios(executablePath)),
    await coldStartRatio(executablePath, 500, 1_000),
    await coldStartRatio(executablePath, 20_000, 2_000),
    await redrawRatio(executablePath),
  ];
}
