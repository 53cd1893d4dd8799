import { describe, expect, it } from 'vitest';
import { cut } from '../../../src/ui/debrief/print/cut.ts';

describe('words cut to a column of the summary', () => {
  it.each([
    ['all there is', 12, 'all there is'],
    ['tape strip standing 0.02 in high', 24, 'tape strip standing…'],
    ['tape strip standing 0.02 in high', 26, 'tape strip standing 0.02…'],
    ['root fillet rough', 12, 'root fillet…'],
    ['SQ-1234567890', 8, 'SQ-1234…'],
  ])('%s in %i letters', (words, letters, shown) => {
    expect(cut(words, letters)).toBe(shown);
    expect(shown.length).toBeLessThanOrEqual(letters);
  });
});
