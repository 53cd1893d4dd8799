import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochMs, flightId, recorderId } from '../../src/record/brand.ts';
import { sealEntry } from '../../src/record/chain.ts';
import { compareEntries, union } from '../../src/record/merge.ts';
import { entrySet } from '../../src/journal/entrySet.ts';
import { gearMoved, SCRIBE } from './smallFlight.ts';

/** Few recorders, numbers and order keys, so that equal entries, forks and equal keys come up. */
const anyEntry = fc
  .record({
    rec: fc.constantFrom('a', 'b').map((digit) => recorderId(digit.repeat(32))),
    seq: fc.integer({ min: 1, max: 6 }),
    ord: fc.integer({ min: 0, max: 8 }),
  })
  .map(({ rec, seq, ord }) =>
    sealEntry({
      flight: flightId('f'.repeat(32)),
      rec,
      seq,
      prev: null,
      ord,
      draft: gearMoved({ wall: epochMs(0), mono: 0, boot: 'boot' }),
      author: SCRIBE,
    }),
  );

describe('entries in memory', () => {
  it('are the sorted union of all that was added, whatever came when', () => {
    fc.assert(
      fc.property(fc.array(fc.array(anyEntry, { maxLength: 8 }), { maxLength: 8 }), (parts) => {
        const set = entrySet();
        const added = parts.flatMap((part) => set.add(part));
        const all = parts.reduce(union, []);
        expect(set.sorted()).toEqual(all);
        expect(set.size()).toBe(all.length);
        expect(added.toSorted(compareEntries)).toEqual(all);
        expect(all.every((entry) => set.byId(entry.id)?.line === entry.line)).toBe(true);
      }),
    );
  });

  it('keep their array while nothing new is added, and leave one that was given as it is', () => {
    fc.assert(
      fc.property(fc.array(anyEntry, { minLength: 1 }), anyEntry, (entries, more) => {
        const set = entrySet();
        set.add(entries);
        const before = set.sorted();
        const copy = [...before];
        set.add(entries);
        expect(set.sorted()).toBe(before);
        const isNew = set.add([more]).length === 1;
        expect(set.sorted() === before).toBe(!isNew);
        expect(before).toEqual(copy);
      }),
    );
  });

  it('count the numbers of a recorder up to the first gap', () => {
    fc.assert(
      fc.property(fc.array(anyEntry), (entries) => {
        const set = entrySet();
        set.add(entries);
        const rec = recorderId('a'.repeat(32));
        const numbers = entries.filter((entry) => entry.rec === rec).map((entry) => entry.seq);
        const gap = [1, 2, 3, 4, 5, 6, 7].find((seq) => !numbers.includes(seq)) ?? 0;
        expect(set.unbroken(rec)).toBe(gap - 1);
      }),
    );
  });
});
