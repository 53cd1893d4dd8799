import { describe, expect, it } from 'vitest';
import { entryWords } from '../../src/record/lang.ts';
import { LINE_LIMIT_BYTES, parseEntry } from '../../src/record/parse.ts';
import { SKETCH_NUMBERS_MAX, SKETCH_STROKES_MAX } from '../../src/record/sketch.ts';
import { chainOf } from '../file/smallFlight.ts';

const sketch = (strokes: readonly (readonly number[])[], caption?: string) =>
  chainOf([{ kind: 'sketchDrawn', body: { strokes, ...(caption !== undefined && { caption }) } }]);

function refuses(strokes: readonly (readonly number[])[]): void {
  expect(() => sketch(strokes)).toThrow('bodyUnfit');
}

describe('a note drawn by hand', () => {
  it('is read back stroke by stroke', () => {
    const strokes = [
      [0, 0, 500, 500, 1000, 1000],
      [10, 990],
    ];
    const [entry] = sketch(strokes);
    const read = parseEntry(entry?.line ?? '');
    expect(read.ok && read.value).toMatchObject({ kind: 'sketchDrawn', body: { strokes } });
  });

  it('says how many strokes it has, and its caption', () => {
    const [one] = sketch([[1, 2]]);
    const [two] = sketch(
      [
        [1, 2],
        [3, 4],
      ],
      'wake behind L4',
    );
    expect(one === undefined ? '' : entryWords(one, null)).toBe('Sketch, 1 stroke');
    expect(two === undefined ? '' : entryWords(two, null)).toBe('Sketch, 2 strokes wake behind L4');
  });

  it('stays far below the longest line, however full the card', () => {
    const stroke = Array.from({ length: SKETCH_NUMBERS_MAX }, () => 1000);
    const [entry] = sketch([stroke]);
    expect(parseEntry(entry?.line ?? '').ok).toBe(true);
    expect(entry?.line.length ?? Infinity).toBeLessThan(LINE_LIMIT_BYTES / 4);
  });

  it('is not kept with a stroke of half a point, beside the card, or with too much on it', () => {
    refuses([[1, 2, 3]]);
    refuses([[1001, 2]]);
    refuses([[-1, 2]]);
    refuses([[0.5, 2]]);
    refuses([[]]);
    refuses([]);
    refuses(Array.from({ length: SKETCH_STROKES_MAX + 1 }, () => [1, 2]));
    refuses([Array.from({ length: SKETCH_NUMBERS_MAX + 2 }, () => 1)]);
  });
});
