import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import type { Entry } from '../../src/record/entry.ts';
import { flightA } from '../analysis/flights.ts';
import { anyLog } from '../record/anyLog.ts';
import { typed } from './typed.ts';

/** What no number, no sentence and no cell may show. */
const HOLES = /\b(?:NaN|undefined|Infinity)\b/;

function tellsWhole(entries: readonly Entry[]): void {
  const files = { a: writeTimeline(entries) };
  const page = typed('results a', files);
  expect(page.code).toBeLessThan(2);
  expect(page.out).not.toMatch(HOLES);
  const json = typed('results --json a', files).out;
  expect(JSON.parse(json).flights).toHaveLength(1);
  expect(json).not.toMatch(HOLES);
  for (const { content } of typed('tables a --into out', files).files) {
    if (typeof content === 'string') expect(content).not.toMatch(HOLES);
  }
}

describe('a page, JSON and tables without a hole in them', () => {
  it('are given of whatever two recorders may have written', () => {
    fc.assert(fc.property(anyLog({ minLength: 1, maxLength: 60 }), tellsWhole), { numRuns: 40 });
  }, 60_000);

  it('are given of the demonstration flight, whatever is lost of it', () => {
    const left = fc.subarray([...flightA.entries], { minLength: 1 });
    fc.assert(fc.property(left, tellsWhole), { numRuns: 20 });
  }, 60_000);
});
