/** Controls, and marks that turn the direction of writing: what a foreign file says must not move the cursor or lie. */
const UNPRINTABLE = /[\p{Cc}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/** Text of a record made safe for a terminal: one line, plain spaces, a mark where something was left out. */
export function printable(text: string): string {
  return text.replaceAll('\u00a0', ' ').replaceAll(UNPRINTABLE, '\ufffd');
}

/** JSON with nothing in it that a terminal would act on. It still means the same. */
export function printableJson(value: unknown): string {
  return JSON.stringify(value, null, 2).replaceAll(UNPRINTABLE, (found) =>
    found === '\n' ? found : `\\u${found.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
