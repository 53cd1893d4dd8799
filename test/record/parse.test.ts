import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../src/record/canonical.ts';
import { DEPTH_LIMIT, LINE_LIMIT_BYTES, parseEntry } from '../../src/record/parse.ts';
import { scriptA } from '../flights/flightA.ts';
import { entriesOfScript } from '../flights/scriptToEntries.ts';
import { chained, FLIGHT_ID, REC_A, START_MS } from './writing.ts';

const fields = {
  v: 1,
  flight: FLIGHT_ID,
  rec: REC_A,
  seq: 1,
  prev: null,
  ord: START_MS,
  wall: START_MS,
  mono: 0.1,
  boot: 'b0',
  author: 'S1',
  role: 'scribe',
  kind: 'noted',
  body: { words: 'clear' },
};
const lineWith = (change: object): string => canonicalJson({ ...fields, ...change });
const faultOf = (line: string): unknown => {
  const read = parseEntry(line);
  return read.ok ? 'parsed' : read.error;
};

describe('parsing a line', () => {
  it('takes what the record would have written', () => {
    expect(parseEntry(lineWith({}))).toMatchObject({ ok: true, value: { kind: 'noted', seq: 1 } });
  });

  it('keeps a kind from a newer release, raw', () => {
    expect(parseEntry(lineWith({ kind: 'balloonSeen', body: { colour: 'grey' } }))).toMatchObject({
      ok: true,
      value: { kind: 'unrecognised', writtenKind: 'balloonSeen', raw: { colour: 'grey' } },
    });
  });

  it('keeps fields from a newer release in the line', () => {
    const line = lineWith({ body: { words: 'clear', mood: 'calm' }, sig: 'abc' });
    expect(parseEntry(line)).toMatchObject({ ok: true, value: { line, body: { words: 'clear' } } });
  });

  it.each([
    ['no JSON', 'x', { reason: 'notJson' }],
    ['nothing', '', { reason: 'notJson' }],
    ['a number', '1', { reason: 'envelopeUnfit', field: '' }],
    ['a list', '[]', { reason: 'envelopeUnfit', field: '' }],
    ['null', 'null', { reason: 'envelopeUnfit', field: '' }],
    ['a newer envelope', lineWith({ v: 2 }), { reason: 'newerVersion', found: 2, readable: 1 }],
    ['no version', lineWith({ v: 'one' }), { reason: 'envelopeUnfit', field: 'v' }],
    ['number zero', lineWith({ seq: 0 }), { reason: 'envelopeUnfit', field: 'seq' }],
    ['half a millisecond', lineWith({ wall: 0.5 }), { reason: 'envelopeUnfit', field: 'wall' }],
    ['a short hash', lineWith({ prev: 'ab' }), { reason: 'envelopeUnfit', field: 'prev' }],
    [
      'words missing',
      lineWith({ body: {} }),
      { reason: 'bodyUnfit', kind: 'noted', field: 'words' },
    ],
    [
      'a reading in a strange unit',
      lineWith({ body: { words: '', readings: [{ instrument: 'FF1', value: 1, unit: 'gal' }] } }),
      { reason: 'bodyUnfit', kind: 'noted', field: 'readings.0' },
    ],
    ['blanks', lineWith({}).replace(':', ': '), { reason: 'notCanonical', at: 10 }],
    ['keys out of order', '{"b":1,"a":2}', { reason: 'notCanonical', at: 2 }],
    ['a key twice', '{"a":1,"a":2}', { reason: 'notCanonical', at: 5 }],
    ['a number written otherwise', '{"a":1.0}', { reason: 'notCanonical', at: 6 }],
    ['negative zero', '{"a":-0}', { reason: 'notCanonical', at: 5 }],
    ['an escape that is not needed', String.raw`{"a":"\u0041"}`, { reason: 'notCanonical', at: 6 }],
    ['half a surrogate pair', String.raw`{"a":"\ud83d"}`, { reason: 'notCanonical', at: 0 }],
    ['a prototype', '{"__proto__":{}}', { reason: 'forbiddenKey', key: '__proto__' }],
    [
      'a constructor deep down',
      '{"a":[{"constructor":1}]}',
      { reason: 'forbiddenKey', key: 'constructor' },
    ],
  ])('refuses %s', (_name, line, fault) => {
    expect(faultOf(line)).toEqual(fault);
  });

  it('takes text that only looks like a forbidden key', () => {
    expect(faultOf(lineWith({ body: { words: '{"__proto__":1}' } }))).toBe('parsed');
    expect(faultOf(lineWith({ body: { words: '__proto__' } }))).toBe('parsed');
  });

  it('refuses one bracket more than the limit, and no bracket inside a text', () => {
    const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);
    expect(faultOf(nested(DEPTH_LIMIT))).toEqual({ reason: 'envelopeUnfit', field: '' });
    expect(faultOf(nested(DEPTH_LIMIT + 1))).toEqual({ reason: 'tooDeep', limit: DEPTH_LIMIT });
    expect(faultOf(nested(100_000))).toEqual({ reason: 'tooDeep', limit: DEPTH_LIMIT });
    expect(faultOf(lineWith({ body: { words: '[[[[[[[[[[[[[[[[\\"[[[' } }))).toBe('parsed');
  });

  it('counts the limit of a line in bytes', () => {
    const [limit] = [LINE_LIMIT_BYTES];
    expect(faultOf('x'.repeat(limit))).toEqual({ reason: 'notJson' });
    expect(faultOf('x'.repeat(limit + 1))).toEqual({
      reason: 'tooLong',
      bytes: limit + 1,
      limitBytes: limit,
    });
    expect(faultOf('é'.repeat(limit / 2 + 1))).toEqual({
      reason: 'tooLong',
      bytes: limit + 2,
      limitBytes: limit,
    });
  });

  it('finds every changed byte: it is refused or has another name', () => {
    const lines = entriesOfScript(scriptA).map((entry) => entry.line);
    const anyChange = fc.record({
      line: fc.constantFrom(...lines),
      place: fc.nat(),
      bit: fc.integer({ min: 0, max: 6 }),
    });
    fc.assert(
      fc.property(anyChange, ({ line, place, bit }) => {
        const at = place % line.length;
        const flipped = String.fromCharCode(line.charCodeAt(at) ^ (1 << bit));
        const changed = line.slice(0, at) + flipped + line.slice(at + 1);
        const [read, original] = [parseEntry(changed), parseEntry(line)];
        expect(original.ok).toBe(true);
        expect(read.ok && original.ok && read.value.id === original.value.id).toBe(false);
      }),
      { numRuns: 2000 },
    );
  });

  it('never throws, whatever the line', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json()), (line) => {
        expect(typeof parseEntry(line).ok).toBe('boolean');
      }),
    );
  });

  it('leaves prototypes clean', () => {
    parseEntry('{"__proto__":{"polluted":1}}');
    chained([{ kind: 'strange', body: { words: 'x' } }]);
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });
});
