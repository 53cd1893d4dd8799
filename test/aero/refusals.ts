import { expect, it } from 'vitest';

/** Values that a number with that demand must not have. */
export const BAD = {
  /** Zero or more is asked for. */
  negative: [-1, Number.NaN, Infinity],
  /** More than zero is asked for. */
  none: [0, -1, Number.NaN, Infinity],
  notFinite: [Number.NaN, Infinity, -Infinity],
} as const;

/**
 * One test a field: `call` answers the good input, and throws a RangeError whose message begins with
 * `named` for each bad value of the field.
 */
export function refusalsOf<Input extends object>(
  name: string,
  call: (input: Input) => unknown,
  good: Input,
  fields: readonly (readonly [
    field: keyof Input & string,
    named: string,
    bad: readonly number[],
  ])[],
): void {
  it.each(fields.map((of) => [of[0], of] as const))(`${name}: %s`, (_, [field, named, bad]) => {
    expect(() => call(good)).not.toThrow();
    expect(bad.length).toBeGreaterThan(0);
    for (const value of bad) {
      const broken = Object.assign({}, good, { [field]: value });
      const refused = (): unknown => call(broken);
      expect(refused, String(value)).toThrow(RangeError);
      expect(refused, String(value)).toThrow(new RegExp(`^${named}`));
    }
  });
}
