/** How JSON.stringify prints half of a surrogate pair; a whole pair and every other character are printed as they are. */
const LONE_SURROGATE = /\\ud[89a-f]/;
/** What needs no escape and holds no surrogate; nearly every text of a record. */
const PLAIN = /^[ !#-[\]-\ud7ff]*$/;

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
  if (PLAIN.test(text)) {
    return `"${text}"`;
  }
  const printed = JSON.stringify(text);
  if (LONE_SURROGATE.test(printed) && /\p{Surrogate}/u.test(text)) {
    throw new RangeError('a text must not hold half of a surrogate pair');
  }
  return printed;
}

function canonicalObject(value: object): string {
  if (Array.isArray(value)) {
    // Not `map`: it skips holes, and a hole has no JSON form.
    const parts = Array.from(value, canonicalJson);
    return `[${parts.join(',')}]`;
  }
  const keys = Object.keys(value).sort();
  let text = '';
  for (const key of keys) {
    const item: unknown = Reflect.get(value, key);
    text += `${text === '' ? '' : ','}${canonicalString(key)}:${canonicalJson(item)}`;
  }
  return `{${text}}`;
}
