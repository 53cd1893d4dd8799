import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeCsv, type Table } from '../../src/file/csv.ts';

const csv = (header: Table['header'], rows: Table['rows']) => writeCsv({ header, rows });

describe('writeCsv', () => {
  it('quotes every field, doubles quotes and ends lines with CR LF', () => {
    // RFC 4180, section 2, rules 1, 5, 6 and 7.
    expect(csv(['a', 'b'], [['x "y"', 'one\ntwo, three']])).toBe(
      '"a","b"\r\n"x ""y""","one\ntwo, three"\r\n',
    );
  });

  it('lets numbers pass, negative ones too, and blank stay blank', () => {
    expect(csv(['n'], [[-20], [1.5e-7], [null], ['-20']])).toBe(
      '"n"\r\n"-20"\r\n"1.5e-7"\r\n""\r\n"-20"\r\n',
    );
  });

  it('leaves no text that a spreadsheet would run', () => {
    // The opening characters are those of the OWASP page on CSV injection.
    const opening = fc.constantFrom('=', '+', '-', '@', '\t', '\r');
    fc.assert(
      fc.property(opening, fc.string(), (first, rest) => {
        const cell = csv(['h'], [[`${first}x${rest}`]]).split('\r\n"')[1] ?? '';
        expect(cell.startsWith("'")).toBe(true);
      }),
    );
  });

  it('refuses a row that does not fit its header', () => {
    expect(() => csv(['a', 'b'], [['only one']])).toThrow('a row must have 2 cells, got 1');
  });
});
