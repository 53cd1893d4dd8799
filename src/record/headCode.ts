import type { EntryId } from './brand.ts';
import { hashLine } from './chain.ts';

/** Crockford's base 32: no I, L, O or U, so that no two letters sound or look like a digit. https://www.crockford.com/base32.html */
const SYMBOLS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const CODE_BITS = 40;
const BITS_A_SYMBOL = 5;
const CODE_LENGTH = CODE_BITS / BITS_A_SYMBOL;
const HEX_DIGITS = CODE_BITS / 4;
const IS_CODE = new RegExp(`^[${SYMBOLS}]{${CODE_LENGTH}}$`);

/**
 * Eight letters and digits that two people read to each other to know that they hold the same record: the first 40 bits
 * of the head's SHA-256, or, of several heads, of the SHA-256 over their hashes in order, joined by LF. It guards
 * against mistakes, not against forgery.
 *
 * @returns e.g. `7K2M-Q4XD`
 * @throws RangeError when there is no head
 */
export function headCode(heads: readonly EntryId[]): string {
  const [first, ...others] = heads;
  if (first === undefined) throw new RangeError('a code needs at least one head, got none');
  const hash = others.length === 0 ? first : hashLine(heads.toSorted().join('\n'));
  const bits = BigInt(`0x${hash.slice(0, HEX_DIGITS)}`);
  const symbols = Array.from({ length: CODE_LENGTH }, (_, index) => {
    const shift = BigInt(CODE_BITS - BITS_A_SYMBOL * (index + 1));
    return SYMBOLS[Number((bits >> shift) & 31n)] ?? '';
  }).join('');
  return `${symbols.slice(0, 4)}-${symbols.slice(4)}`;
}

/**
 * A code as somebody typed what was heard: small letters, spaces and hyphens do not matter, O is read as 0, I and L as 1.
 *
 * @returns the code as `headCode` writes it, or null when it is no code
 */
export function readCode(typed: string): string | null {
  const symbols = typed
    .toUpperCase()
    .replace(/[\s-]/g, '')
    .replaceAll('O', '0')
    .replace(/[IL]/g, '1');
  return IS_CODE.test(symbols) ? `${symbols.slice(0, 4)}-${symbols.slice(4)}` : null;
}
