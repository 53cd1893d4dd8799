import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import type { Entry } from '../../src/record/entry.ts';
import { union } from '../../src/record/merge.ts';
import { chainOf, ENGINEER, note, OPENED, OTHER_FLIGHT, smallFlight } from '../file/smallFlight.ts';
import { DEMO, typed } from './typed.ts';

const scribe = smallFlight();
const engineer = chainOf([note('haze'), note('thicker'), note('clear')], {
  rec: ENGINEER,
  startMs: Date.UTC(2031, 4, 6, 12, 0, 1),
});
const everything = [...scribe, ...engineer];
const written = (content: string) => [{ path: 'm.jsonl', content }];

describe('merged copies', () => {
  it('are the file that the app saves of the union, byte for byte', () => {
    const { code, err, files, out } = typed('merge a b --out m.jsonl', {
      a: writeTimeline([...scribe, ...engineer.slice(0, 1)]),
      b: writeTimeline([...scribe.slice(0, 3), ...engineer]),
    });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(files).toEqual(written(writeTimeline(union(scribe, engineer))));
    expect(out).toMatch(/^m\.jsonl: “Slot check” of 2031-05-06 \(f1f1f1f1\), 9 entries\n/);
  });

  it('are the same whichever copies were merged, in whatever order, as long as nothing is missing', () => {
    const copies = fc
      .array(fc.subarray(everything, { minLength: 1 }), { minLength: 1, maxLength: 3 })
      .map((some): readonly (readonly Entry[])[] => [...some, everything])
      .chain((all) => fc.shuffledSubarray([...all], { minLength: all.length }));
    fc.assert(
      fc.property(copies, (some) => {
        const files = Object.fromEntries(
          some.map((entries, i) => [`c${i}`, writeTimeline(entries)]),
        );
        const outcome = typed(`merge ${Object.keys(files).join(' ')} --out m.jsonl`, files);
        expect(outcome.files).toEqual(written(writeTimeline(everything)));
      }),
      { numRuns: 50 },
    );
  });

  it('of one file are that file', () => {
    expect(typed('merge a --out m.jsonl', { a: DEMO }).files).toEqual(written(DEMO));
  });

  it('go to standard output and nothing else does', () => {
    const { code, out, files } = typed('merge a a --out -', { a: DEMO });
    expect({ code, out, files }).toEqual({ code: 0, out: DEMO, files: [] });
  });

  it('of different flights are refused by name, and nothing is written', () => {
    const other = chainOf([OPENED], { flight: OTHER_FLIGHT });
    const { code, err, files } = typed('merge a b --out m.jsonl', {
      a: writeTimeline(scribe),
      b: writeTimeline(other),
    });
    expect(code).toBe(1);
    expect(err).toContain('different flights and cannot become one');
    expect(err).toContain('a is “Slot check” of 2031-05-06 (f1f1f1f1)');
    expect(err).toContain('b is “Slot check” of 2031-05-06 (f2f2f2f2)');
    expect(err).toMatch(/Nothing was written\.\n$/);
    expect(files).toEqual([]);
  });

  it.each([
    ['a missing one', { fault: 'missing' } as const, 3],
    ['one that is no timeline file', 'time,altitude\n', 1],
  ])('with %s among them are not made at all', (_, content, code) => {
    const outcome = typed('merge a b --out m.jsonl', { a: writeTimeline(scribe), b: content });
    expect(outcome.code).toBe(code);
    expect(outcome.files).toEqual([]);
    expect(outcome.err).toContain('Nothing was written.');
  });

  it('hold every sound line of a damaged copy, and say which copy to keep', () => {
    const damaged = writeTimeline(scribe).replace('covers on', 'covers oN');
    const { code, err, files } = typed('merge a b --out m.jsonl', {
      a: damaged,
      b: writeTimeline(everything.filter(({ seq }) => seq !== 2)),
    });
    expect(code).toBe(1);
    expect(err).toContain('a: Line 3 was put aside: it was changed after it was written');
    expect(err).toContain('a: keep it; 1 line is not in the merged file.');
    expect(err).toContain('Entry 2 of recorder a1a1a1a1 is missing.');
    const left = [scribe[0], ...scribe.slice(2)].flatMap((entry) => entry ?? []);
    const others = engineer.filter(({ seq }) => seq !== 2);
    expect(files).toEqual(written(writeTimeline([...left, ...others])));
  });
});
