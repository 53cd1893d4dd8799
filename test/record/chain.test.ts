import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochMs, flightId, recorderId } from '../../src/record/brand.ts';
import { canonicalJson } from '../../src/record/canonical.ts';
import { checkChains, hashLine, nextOrd, sealEntry } from '../../src/record/chain.ts';
import type { Entry } from '../../src/record/entry.ts';
import { parseEntry } from '../../src/record/parse.ts';
import { chained, FLIGHT_ID, REC_A, REC_B, START_MS } from './writing.ts';

const DAY_MS = 86_400_000;

describe('the hash of a line', () => {
  /** FIPS 180-4 examples of SHA-256: csrc.nist.gov, "Cryptographic Standards and Guidelines", SHA256.pdf. */
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    // The empty message, from memory of the validation system's short-message vectors.
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ])('of "%s" is the published one', (text, digest) => {
    expect(hashLine(text)).toBe(digest);
  });

  it('is what the platform makes of the same UTF-8 bytes', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 300 }), async (text) => {
        const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
        expect(hashLine(text)).toBe(Buffer.from(digest).toString('hex'));
      }),
    );
  });
});

describe('sealing', () => {
  const fields = {
    flight: flightId(FLIGHT_ID),
    rec: recorderId(REC_A),
    seq: 1,
    prev: null,
    ord: START_MS,
    author: { author: 'S1', role: 'scribe' },
  };
  const stamp = { wall: epochMs(START_MS), mono: 1234.5, boot: 'b0' };

  it('is undone by parsing', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 200 }),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.option(fc.integer({ min: 0, max: 2 ** 45 }), { nil: undefined }),
        (words, value, at) => {
          const sealed = sealEntry({
            ...fields,
            draft: {
              kind: 'noted',
              body: {
                words,
                ...(at !== undefined && { at: epochMs(at) }),
                readings: [{ instrument: 'FF1', value, unit: 'lb/h' }],
              },
              stamp,
            },
          });
          expect(parseEntry(sealed.line)).toEqual({ ok: true, value: sealed });
          expect(sealed.id).toBe(hashLine(sealed.line));
        },
      ),
    );
  });

  it('refuses a draft that does not fit its kind', () => {
    expect(() =>
      sealEntry({ ...fields, draft: { kind: 'noted', body: { words: 'x'.repeat(3000) }, stamp } }),
    ).toThrow(RangeError);
  });
});

describe('the order key', () => {
  const now = epochMs(START_MS);

  it.each([
    ['follows the clock', null, now, null, now],
    ['rises by one when the clock stands', START_MS, now, null, START_MS + 1],
    ['rises by one when the clock goes back', START_MS + 500, now, null, START_MS + 501],
    ['goes behind what it has seen', START_MS - 9, now, START_MS + 40, START_MS + 41],
    ['ignores a key more than a day ahead', null, now, START_MS + DAY_MS + 1, START_MS],
    ['minds a key just a day ahead', null, now, START_MS + DAY_MS, START_MS + DAY_MS + 1],
  ])('%s', (_name, prevOrd, wall, seenOrd, expected) => {
    expect(nextOrd(prevOrd, wall, seenOrd, now)).toBe(expected);
  });
});

describe('checking chains', () => {
  const mark = { kind: 'markMade', body: {} };
  const note = (words: string) => ({ kind: 'noted', body: { words } });
  const log = chained([mark, note('a'), note('b'), mark, note('c')]);
  const at = (index: number): Entry => {
    const entry = log[index];
    if (entry === undefined) throw new RangeError(`no entry ${index}`);
    return entry;
  };

  it('finds nothing in a whole chain, in any order and with each line twice', () => {
    expect(checkChains(log)).toEqual([]);
    expect(checkChains([...log.toReversed(), ...log])).toEqual([]);
    expect(checkChains([])).toEqual([]);
  });

  it('names the numbers that are missing at the beginning and inside', () => {
    expect(checkChains([at(1), at(2)])).toEqual([
      { kind: 'gap', rec: REC_A, fromSeq: 1, toSeq: 1 },
    ]);
    expect(checkChains([at(0), at(3), at(4)])).toEqual([
      { kind: 'gap', rec: REC_A, fromSeq: 2, toSeq: 3 },
    ]);
  });

  it('cannot see a cut tail: that takes a witness', () => {
    expect(checkChains(log.slice(0, 3))).toEqual([]);
  });

  it('names both contents of one number, and follows either branch', () => {
    const branch = chained([note('other'), mark], { head: at(1) });
    const forked = branch.map((entry) => entry.id);
    expect(checkChains([...log.slice(0, 3), ...branch])).toEqual([
      { kind: 'fork', rec: REC_A, seq: 3, ids: expect.arrayContaining([at(2).id, forked[0]]) },
    ]);
  });

  it('names an entry that follows another than the one before it', () => {
    const elsewhere = chained([note('x'), note('y')]);
    const [, second] = elsewhere;
    const findings = checkChains([at(0), ...(second === undefined ? [] : [second])]);
    expect(findings).toEqual([{ kind: 'prevMismatch', rec: REC_A, seq: 2, id: second?.id }]);
  });

  it('names an entry of another flight and one whose key does not rise', () => {
    const forged = (change: object): Entry => {
      const fields: object = JSON.parse(at(1).line);
      const read = parseEntry(canonicalJson({ ...fields, ...change }));
      if (!read.ok) throw new RangeError(JSON.stringify(read.error));
      return read.value;
    };
    const stray = forged({ flight: 'f'.repeat(32) });
    expect(checkChains([at(0), stray])).toEqual([
      { kind: 'flightMismatch', rec: REC_A, seq: 2, id: stray.id },
    ]);
    const flat = forged({ ord: at(0).ord });
    expect(checkChains([at(0), flat])).toContainEqual({
      kind: 'ordNotRising',
      rec: REC_A,
      seq: 2,
      id: flat.id,
    });
  });

  it('finds every dropped line but the last, whichever recorder it is of', () => {
    const other = chained([mark, mark, mark], { rec: REC_B });
    const all = [...log, ...other];
    const lastOnes = [log.at(-1)?.id, other.at(-1)?.id];
    const unseen = all.filter(
      (dropped) => checkChains(all.filter((entry) => entry !== dropped)).length === 0,
    );
    expect(unseen.map((entry) => entry.id)).toEqual(lastOnes);
  });
});
