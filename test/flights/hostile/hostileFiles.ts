import { canonicalJson } from '../../../src/record/canonical.ts';
import { writeTimeline } from '../../../src/file/timelineFile.ts';
import { LINE_LIMIT_BYTES } from '../../../src/record/parse.ts';
import { chainOf, mark, note, OPENED } from '../../file/smallFlight.ts';

/** A file that somebody made to do harm, and what has to be read then. */
export interface HostileFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly sentences: readonly string[];
  readonly kept: number;
}

const SOUND = writeTimeline(chainOf([OPENED, note('haze'), mark]));
const LINES = SOUND.trimEnd().split('\n');
const KEPT = 3;
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
/** Put in as line 3, between sound entries. */
const withLine = (line: string): Uint8Array => utf8(`${LINES.toSpliced(2, 0, line).join('\n')}\n`);
const edited = (from: string, to: string): string => {
  const line = LINES[2] ?? '';
  if (!line.includes(from)) throw new RangeError(`the line must hold ${from}, is ${line}`);
  return line.replace(from, to);
};
/** A note that a recorder really wrote: whatever stands in it is text and no more. */
const saying = (words: string): Uint8Array =>
  utf8(writeTimeline(chainOf([OPENED, note(words), mark])));
const aside = (words: string): readonly string[] => [`Line 3 was put aside: ${words}`];

const NOT_TIMELINE =
  'Line 1 does not say that this is a flight timeline file. Nothing was opened. Choose a file that ends in .jsonl.';
const NOT_SPELT =
  'it is not spelt as the record spells it (spaces, order of fields, or a field given twice).';

/** The same flight in every one of them: opened, a note, a mark. */
export const HOSTILE_FILES: readonly HostileFile[] = [
  ...['__proto__', 'constructor', 'prototype'].map((key) => ({
    name: `a field named ${key}`,
    bytes: withLine(edited('"words":"haze"', `"${key}":{"polluted":true},"words":"haze"`)),
    sentences: aside(`it has a field named ${key}, which no entry has.`),
    kept: KEPT,
  })),
  {
    name: 'a prototype hidden in an escape',
    bytes: withLine(edited('"words":"haze"', '"\\u005f_proto__":{"polluted":true},"words":"haze"')),
    sentences: aside(NOT_SPELT),
    kept: KEPT,
  },
  ...['[', '{"a":'].map((open) => ({
    name: `nested a hundred thousand deep with ${open}`,
    bytes: withLine(open.repeat(LINE_LIMIT_BYTES / open.length - 1)),
    sentences: aside('it is nested too deeply to be an entry.'),
    kept: KEPT,
  })),
  ...['1e999', '-1e999', '9007199254740993', '1'.repeat(400)].map((number) => ({
    name: `the number ${number.slice(0, 20)}`,
    bytes: withLine(edited('"seq":2', `"seq":${number}`)),
    sentences: aside(NOT_SPELT),
    kept: KEPT,
  })),
  ...['1e+300', '-1', '0', '1.5', '"2"', 'null', '[2]'].map((number) => ({
    name: `an entry numbered ${number}`,
    bytes: withLine(edited('"seq":2', `"seq":${number}`)),
    sentences: aside('its field seq is missing or unfit.'),
    kept: KEPT,
  })),
  {
    name: 'a time past the end of the calendar',
    bytes: withLine(edited('"wall":1935835201000', '"wall":1e+300')),
    sentences: aside('its field wall is missing or unfit.'),
    kept: KEPT,
  },
  {
    name: 'a field given twice',
    bytes: withLine(edited('"seq":2', '"seq":1,"seq":2')),
    sentences: aside(NOT_SPELT),
    kept: KEPT,
  },
  {
    name: 'a line longer than any entry',
    bytes: withLine(edited('"haze"', `"${'x'.repeat(LINE_LIMIT_BYTES)}"`)),
    sentences: aside(`it is longer than ${LINE_LIMIT_BYTES / 1024} KiB.`),
    kept: KEPT,
  },
  {
    name: 'a note longer than a note may be',
    bytes: withLine(edited('"haze"', `"${'x'.repeat(100_000)}"`)),
    sentences: aside('its field words is missing or unfit for noted.'),
    kept: KEPT,
  },
  {
    name: 'half of a surrogate pair',
    bytes: withLine(edited('haze', '\\ud83d')),
    sentences: aside(NOT_SPELT),
    kept: KEPT,
  },
  {
    name: 'bytes that are no UTF-8',
    bytes: Uint8Array.from([
      ...utf8(`${LINES.slice(0, 2).join('\n')}\n`),
      0xff,
      0xfe,
      0xc3,
      0x28,
      0xed,
      0xa0,
      0x80,
      0x0a,
      ...utf8(`${LINES.slice(2).join('\n')}\n`),
    ]),
    sentences: aside('it is cut or not JSON.'),
    kept: KEPT,
  },
  {
    name: 'a NUL in the middle',
    bytes: withLine(edited('haze', 'ha\u0000ze')),
    sentences: aside('it is cut or not JSON.'),
    kept: KEPT,
  },
  { name: 'a byte-order mark', bytes: utf8(`\uFEFF${SOUND}`), sentences: [], kept: KEPT },
  {
    name: 'lines ended by CR LF',
    bytes: utf8(SOUND.replaceAll('\n', '\r\n')),
    sentences: [],
    kept: KEPT,
  },
  {
    name: 'UTF-16 instead of UTF-8',
    bytes: Uint8Array.from(Buffer.from(`\uFEFF${SOUND}`, 'utf16le')),
    sentences: [NOT_TIMELINE],
    kept: 0,
  },
  {
    // RFC 1952: compressed input is not accepted, so nothing is unpacked and no bomb can go off.
    name: 'a gzip file',
    bytes: Uint8Array.from([0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 3, 0x4b, 0x4c, 0x84, 1, 0, 0xa1]),
    sentences: [NOT_TIMELINE],
    kept: 0,
  },
  {
    name: 'a format that is no number',
    bytes: utf8(SOUND.replace('"format":1', '"format":"1"')),
    sentences: [
      'Line 1 was put aside: its field v is missing or unfit.',
      'The first line, which says what the file is, is missing or damaged. The entries were still read.',
    ],
    kept: KEPT,
  },
  {
    name: 'a last line that claims more than there is',
    bytes: utf8(SOUND.replace('"count":3', '"count":1e300')),
    sentences: [
      'The last line of the file was changed after it was saved. The entries do not depend on it and were read.',
    ],
    kept: KEPT,
  },
  {
    name: 'a kind named like a method of every object',
    bytes: utf8(`${[...LINES.slice(0, 2), ...oddKind()].join('\n')}\n`),
    sentences: [
      'The file is cut: its last line is missing. 2 entries recovered; how many followed cannot be told.',
    ],
    kept: 2,
  },
  ...[
    '=HYPERLINK("http://example.invalid","x")',
    "+1+cmd|' /C calc'!A0",
    '-2+3',
    '@SUM(1)',
    '\tx',
    '\rx',
    '<script>alert(1)</script>',
    '<img src=x onerror=alert(1)>',
    '"><svg/onload=alert(1)>',
    'javascript:alert(1)',
    '\u202egnp.exe',
    '\u2066\u2069\u200b\ufeff',
    '\u0007\u001b[31m',
    '\u2028\u2029',
    '%s%n${7*7}{{7*7}}',
    "'; DROP TABLE entries; --",
    '../../../etc/passwd',
  ].map((words) => ({
    name: `a note of ${JSON.stringify(words)}`,
    bytes: saying(words),
    sentences: [],
    kept: KEPT,
  })),
];

/** Written as the record writes it, of a kind that no release has. */
function oddKind(): readonly string[] {
  const fields: unknown = JSON.parse(LINES[2] ?? '');
  return [canonicalJson({ ...Object(fields), kind: 'hasOwnProperty' })];
}
