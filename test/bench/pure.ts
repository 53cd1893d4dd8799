import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { readTimeline } from '../../src/file/readTimeline.ts';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import { compareEntries, union } from '../../src/record/merge.ts';
import { liveAtLength } from './liveAtLength.ts';
import { manyEntries } from './manyEntries.ts';
import { bestOf, type Ratio } from './ratios.ts';

const LINES = 100_000;
const RUNS = 3;

/** Promises that need no browser. */
export function pureRatios(): readonly Ratio[] {
  return [reading(), merging(), liveAtLength()];
}

function reading(): Ratio {
  const text = writeTimeline(manyEntries(LINES));
  const lines = text.trimEnd().split('\n');
  const measured = bestOf(
    RUNS,
    () => readTimeline(text, text.length),
    () => {
      for (const line of lines) {
        JSON.parse(line);
        sha256(utf8ToBytes(line));
      }
    },
  );
  return {
    promise: `reading a file of ${LINES} lines`,
    yardstick: 'JSON.parse and SHA-256 of each line',
    atMost: 3,
    ...measured,
  };
}

function merging(): Ratio {
  const copies = [1, 2, 3, 4].map((recorder) => manyEntries(LINES, recorder));
  const all = copies.flat();
  const measured = bestOf(
    RUNS,
    () => copies.reduce(union),
    () => all.toSorted(compareEntries),
  );
  return {
    promise: `merging 4 files of ${LINES} entries`,
    yardstick: 'sorting the same entries',
    atMost: 3,
    ...measured,
  };
}
