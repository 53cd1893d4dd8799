import { amendmentGraphs } from './amendmentGraphs.ts';
import { cutEverywhere, flippedBits } from './flippedBits.ts';
import { merges } from './merges.ts';
import { mutatedFiles } from './mutatedFiles.ts';
import { severalRecorders } from './recorders/simulate.ts';
import type { DrillSeen } from './seen.ts';

type Drill = (seed: number) => DrillSeen | Promise<DrillSeen>;

/** The drills that need no browser, one after the other; the short form stays within a minute of a busy machine. */
export function pureDrills(isShort: boolean): readonly Drill[] {
  const rounds = (long: number, short: number) => (isShort ? short : long);
  return [
    () => severalRecorders(rounds(10_000, 200), 1),
    (seed) => mutatedFiles(rounds(100_000, 3_000), seed),
    (seed) => flippedBits(rounds(10_000, 1_500), seed),
    () => cutEverywhere(),
    (seed) => merges(rounds(10_000, 1_000), seed),
    (seed) => amendmentGraphs(rounds(5_000, 500), seed),
  ];
}
