import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entryId } from '../../src/record/brand.ts';
import { hashLine } from '../../src/record/chain.ts';
import { headCode, readCode } from '../../src/record/headCode.ts';

const anyHash = fc.string().map((text) => hashLine(text));

describe('the code of a head', () => {
  it('is its first forty bits in the base 32 of its specification', () => {
    // Crockford's table (crockford.com/base32.html): value 0 is 0, 10 is A, 18 is J, 19 is K, 31 is Z.
    // 00000 00001 01010 10010 10011 11111 00000 11111 in hex: 00 55 29 fc 1f.
    expect(headCode([entryId(`005529fc1f${'0'.repeat(54)}`)])).toBe('01AJ-KZ0Z');
  });

  it('is the same in whatever order the heads of several recorders come', () => {
    const [a, b] = [hashLine('a'), hashLine('b')];
    expect(headCode([a, b])).toBe(headCode([b, a]));
    expect(new Set([headCode([a, b]), headCode([a]), headCode([b])]).size).toBe(3);
  });

  it('is read back however it was typed', () => {
    fc.assert(
      fc.property(anyHash, fc.boolean(), (hash, small) => {
        const code = headCode([hash]);
        const spoken = code.replaceAll('0', 'o').replaceAll('1', 'l').replace('-', ' ');
        expect(readCode(small ? spoken.toLowerCase() : spoken)).toBe(code);
      }),
    );
  });

  it('has no letter that is heard or read as another', () => {
    fc.assert(
      fc.property(anyHash, (hash) => {
        expect(headCode([hash])).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
      }),
    );
  });

  it('is not made of less, of more, or of other letters', () => {
    expect(['', 'ABCD-EFG', 'ABCD-EFGHJ', 'UUUU-UUUU', 'ABCD*EFG'].map(readCode)).toEqual(
      Array.from({ length: 5 }, () => null),
    );
  });
});
