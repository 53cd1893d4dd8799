import { readNumber } from '../kit/Ground.tsx';

/** What a typed number is, with the reason in words where it is none; the text itself is kept by the field. */
export type TypedNumber =
  | { readonly kind: 'blank' }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'fault'; readonly words: string };

/** Reads a number with comma or point. A comma before exactly three digits is asked about, not guessed. */
export function typedNumber(typed: string, name: string): TypedNumber {
  const text = typed.trim();
  const thousands = /^[+\-\u2212]?([1-9]\d{0,2}),(\d{3})$/.exec(text);
  if (thousands !== null) {
    const [, before = '', after = ''] = thousands;
    return {
      kind: 'fault',
      words: `${name}: \u201c${text}\u201d may be ${before}${after} or ${before}.${after}; write it so.`,
    };
  }
  const read = readNumber(text);
  return read.kind === 'fault'
    ? { kind: 'fault', words: `${name}: \u201c${text}\u201d is not a number.` }
    : read;
}

/** A stored number as a person would type it again. */
export function numberText(value: number): string {
  return String(Number(value.toPrecision(12)));
}
