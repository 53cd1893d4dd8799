import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareEntries, union } from '../../src/record/merge.ts';
import { anyLog, anyTwoLogs } from './anyLog.ts';

describe('merging', () => {
  it('gives the same log whichever recorder merges first', () => {
    fc.assert(
      fc.property(anyTwoLogs, ([a, b]) => {
        expect(union(a, b)).toEqual(union(b, a));
      }),
    );
  });

  it('gives the same log however three are paired', () => {
    const anyThree = anyLog({ minLength: 0, maxLength: 20 }).chain((pool) =>
      fc.tuple(fc.shuffledSubarray(pool), fc.shuffledSubarray(pool), fc.shuffledSubarray(pool)),
    );
    fc.assert(
      fc.property(anyThree, ([a, b, c]) => {
        expect(union(union(a, b), c)).toEqual(union(a, union(b, c)));
      }),
    );
  });

  it('repeats harmlessly', () => {
    fc.assert(
      fc.property(anyTwoLogs, ([a, b]) => {
        const once = union(a, b);
        expect(union(once, b)).toEqual(once);
        expect(union(once, once)).toEqual(once);
        expect(union([...a, ...a], [])).toEqual(union(a, []));
      }),
    );
  });

  it('keeps every entry and no other, in order of writing', () => {
    fc.assert(
      fc.property(anyTwoLogs, ([a, b]) => {
        const merged = union(a, b);
        expect(new Set(merged.map(({ id }) => id))).toEqual(
          new Set([...a, ...b].map(({ id }) => id)),
        );
        expect(new Set(merged).size).toBe(merged.length);
        expect(merged).toEqual(merged.toSorted(compareEntries));
      }),
    );
  });

  it('orders no two entries as equal', () => {
    fc.assert(
      fc.property(anyLog({ minLength: 2, maxLength: 20 }), (log) => {
        const pairs = log.flatMap((a) => log.filter((b) => b !== a).map((b) => [a, b] as const));
        expect(pairs.filter(([a, b]) => compareEntries(a, b) === 0)).toEqual([]);
        expect(
          pairs.filter(
            ([a, b]) => Math.sign(compareEntries(a, b)) === Math.sign(compareEntries(b, a)),
          ),
        ).toEqual([]);
      }),
    );
  });
});
