/** With the `u` flag a pair of surrogates is one code point, so this finds only a half without its other half. */
const LONE_SURROGATE = /\p{Surrogate}/u;

/**
 * The one way to write a value as JSON: keys by UTF-16 code units, no blanks, strings and numbers as ECMAScript prints
 * them. Equal values give equal bytes, so a hash can name them.
 *
 * @throws RangeError for what has no JSON form or would not come back the same: NaN, infinities, `undefined`, functions,
 * symbols, big integers and lone surrogates. Negative zero becomes 0, as the RFC says.
 * @see RFC 8785 (JSON Canonicalization Scheme), sections 3.2.2 and 3.2.3
 */
export function canonicalJson(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return canonicalString(value);
    case 'number':
      if (!Number.isFinite(value)) {
        throw new RangeError(`a number must be finite, got ${value}`);
      }
      return String(value);
    case 'boolean':
      return value ? 'true' : 'false';
    case 'object':
      return value === null ? 'null' : canonicalObject(value);
    default:
      throw new RangeError(`a ${typeof value} has no JSON form`);
  }
}

function canonicalString(text: string): string {
  if (LONE_SURROGATE.test(text)) {
    throw new RangeError('a text must not hold half of a surrogate pair');
  }
  return JSON.stringify(text);
}

function canonicalObject(value: object): string {
  if (Array.isArray(value)) {
    // Not `map`: it skips holes, and a hole has no JSON form.
    const parts = Array.from(value, canonicalJson);
    return `[${parts.join(',')}]`;
  }
  const parts = Object.entries(value)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, item]) => `${canonicalString(key)}:${canonicalJson(item)}`);
  return `{${parts.join(',')}}`;
}
