import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  appended,
  emptyTrail,
  extended,
  firstOf,
  itemAt,
  items,
  itemsBackwards,
  itemsFrom,
  replaced,
  type Trail,
} from '../../src/record/trail.ts';

/** Across the joints of its chunks, which hold 64. */
const anyList = fc.array(fc.nat(), { maxLength: 200 });
const trailOf = (list: readonly number[]): Trail<number> =>
  list.reduce<Trail<number>>(appended, emptyTrail());

describe('a trail', () => {
  it('holds what was appended, in order, from either end and by index', () => {
    fc.assert(
      fc.property(anyList, (list) => {
        const trail = trailOf(list);
        expect(trail.length).toBe(list.length);
        expect([...items(trail)]).toEqual(list);
        expect([...itemsBackwards(trail)]).toEqual(list.toReversed());
        expect(list.map((_item, index) => itemAt(trail, index))).toEqual(list);
        expect(itemAt(trail, -1)).toBe(list.at(-1));
        expect(itemAt(trail, list.length)).toBeUndefined();
        expect(itemAt(trail, -list.length - 1)).toBeUndefined();
      }),
    );
  });

  it('is the same trail extended at once, in two portions or item by item', () => {
    fc.assert(
      fc.property(anyList, anyList, (first, more) => {
        const bulk = extended(extended(emptyTrail<number>(), first), more);
        expect(bulk).toEqual(trailOf([...first, ...more]));
      }),
    );
  });

  it('gives its beginning and the rest, which make it whole again', () => {
    fc.assert(
      fc.property(anyList, fc.nat({ max: 210 }), (list, length) => {
        const trail = trailOf(list);
        const beginning = firstOf(trail, length);
        expect(beginning).toEqual(trailOf(list.slice(0, length)));
        expect(itemsFrom(trail, length)).toEqual(list.slice(length));
        expect(extended(beginning, itemsFrom(trail, length))).toEqual(trail);
      }),
    );
  });

  it('replaces one item and leaves the trail it came from as it was', () => {
    const anyPlace = anyList
      .filter((list) => list.length > 0)
      .chain((list) => fc.tuple(fc.constant(list), fc.nat({ max: list.length - 1 })));
    fc.assert(
      fc.property(anyPlace, ([list, index]) => {
        const trail = trailOf(list);
        expect([...items(replaced(trail, index, -1))]).toEqual(list.with(index, -1));
        expect([...items(trail)]).toEqual(list);
      }),
    );
  });

  it.each([-1, 0, 1])('has no item %i to replace when it is empty', (index) => {
    expect(() => replaced(emptyTrail<number>(), index, 1)).toThrow(RangeError);
  });

  it('has no beginning of less than nothing', () => {
    expect(() => firstOf(emptyTrail(), -1)).toThrow(RangeError);
  });
});
