import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../src/record/canonical.ts';

function doubleOf(bits: string): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${bits}`));
  return view.getFloat64(0);
}

describe('canonical JSON', () => {
  /** RFC 8785, appendix B: IEEE 754 bits and their text. */
  it.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('writes the number with bits %s as %s', (bits, text) => {
    expect(canonicalJson(doubleOf(bits))).toBe(text);
  });

  it.each(['7fffffffffffffff', '7ff0000000000000'])('refuses the number with bits %s', (bits) => {
    expect(() => canonicalJson(doubleOf(bits))).toThrow(RangeError);
  });

  /** RFC 8785, section 3.2.2. */
  it('writes literals, numbers and strings as the example of the RFC', () => {
    const read: unknown = JSON.parse(
      String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],` +
        String.raw`"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`,
    );
    expect(canonicalJson(read)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],' +
        String.raw`"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  /** RFC 8785, section 3.2.3: keys by UTF-16 code units, so the emoji stands before the Hebrew letter. */
  it('sorts keys as the example of the RFC', () => {
    const sorted = canonicalJson({
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    });
    const names = ['Carriage', 'One', 'Control', 'Latin', 'Euro', 'Emoji', 'Hebrew'];
    const places = names.map((name) => sorted.indexOf(`"${name}`));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(places).not.toContain(-1);
  });

  it.each([
    ['NaN', { value: Number.NaN }],
    ['undefined', { value: undefined }],
    ['a hole', Array(2)],
    ['half a pair in a text', 'a\ud83d'],
    ['half a pair in a key', { '\ude00': 1 }],
    ['a function', { value: () => 1 }],
    ['a big integer', { value: 1n }],
  ])('refuses %s', (_name, value) => {
    expect(() => canonicalJson(value)).toThrow(RangeError);
  });

  it('reads back as what was written, and writes that the same', () => {
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'binary' }), (value) => {
        fc.pre(isWellFormed(value));
        const text = canonicalJson(value);
        const back: unknown = JSON.parse(text);
        expect(canonicalJson(back)).toBe(text);
        expect(back).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });

  it('does not depend on the order in which keys were set', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(fc.string(), fc.integer()), { selector: ([key]) => key }),
        (pairs) => {
          expect(canonicalJson(Object.fromEntries(pairs.toReversed()))).toBe(
            canonicalJson(Object.fromEntries(pairs)),
          );
        },
      ),
    );
  });
});

function isWellFormed(value: unknown): boolean {
  return (
    !/\p{Surrogate}/u.test(JSON.stringify(value)) && !/\\ud[89a-f]/i.test(JSON.stringify(value))
  );
}
