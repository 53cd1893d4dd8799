import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../src/record/canonical.ts';
import { compareEntries, union } from '../../src/record/merge.ts';
import { FILE_BYTES_MAX, FILE_LINES_MAX } from '../../src/file/limits.ts';
import { readTimeline } from '../../src/file/readTimeline.ts';
import type { TimelineReading } from '../../src/file/timelineReading.ts';
import { writeTimeline } from '../../src/file/timelineFile.ts';
import { findingWords, lineRefusalWords, wholeRefusalWords } from '../../src/file/words.ts';
import { chainOf, ENGINEER, mark, note, OPENED, OTHER_FLIGHT, smallFlight } from './smallFlight.ts';

const bytesOf = (text: string): number => new TextEncoder().encode(text).length;
const read = (text: string): TimelineReading => readTimeline(text, bytesOf(text));

/** Every sentence that the user would see, in the order in which it would be shown. */
function sentences(reading: TimelineReading): readonly string[] {
  return reading.kind === 'refused'
    ? [wholeRefusalWords(reading.refusal)]
    : [...reading.refused.map(lineRefusalWords), ...reading.findings.map(findingWords)];
}

function kept(reading: TimelineReading): number {
  return reading.kind === 'refused' ? 0 : reading.entries.length;
}

const sound = writeTimeline(smallFlight());
const lines = sound.trimEnd().split('\n');
const withLine = (index: number, text: string): string => `${lines.with(index, text).join('\n')}\n`;
const without = (...indices: readonly number[]): string =>
  `${lines.filter((_, index) => !indices.includes(index)).join('\n')}\n`;
const inserted = (at: number, ...texts: readonly string[]): string =>
  `${lines.toSpliced(at, 0, ...texts).join('\n')}\n`;
const editedJson = (index: number, edit: (value: Record<string, unknown>) => object): string =>
  withLine(index, canonicalJson(edit(JSON.parse(lines[index] ?? '') as Record<string, unknown>)));
const editedFlight = (lines[1] ?? '').replace('f1'.repeat(16), OTHER_FLIGHT);
const stranger = chainOf([OPENED], { flight: OTHER_FLIGHT, rec: ENGINEER })[0]?.line ?? '';
const forked = chainOf([note('another')], {
  after: smallFlight()[1],
  startMs: Date.UTC(2031, 4, 6, 12, 0, 2),
});

describe('a sound timeline file', () => {
  it('gives back every entry and finds nothing', () => {
    const reading = read(sound);
    expect(reading).toMatchObject({ kind: 'read', refused: [], findings: [] });
    expect(reading.kind === 'read' && reading.entries).toEqual(smallFlight());
  });

  it('is the same whatever order the entries came in', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...smallFlight()], { minLength: 6 }), (entries) => {
        expect(writeTimeline(entries)).toBe(sound);
      }),
    );
  });

  it('tolerates a byte-order mark and CR LF', () => {
    const reading = read(`\uFEFF${sound.replaceAll('\n', '\r\n')}`);
    expect(reading).toMatchObject({ kind: 'read', refused: [], findings: [] });
  });

  it('keeps an entry of a kind from a newer release', () => {
    const newer = lines[3]?.replace('"kind":"noted"', '"kind":"probeWarmed"') ?? '';
    const reading = read(`${[lines[0], lines[1], lines[2], newer].join('\n')}\n`);
    expect(kept(reading)).toBe(3);
    expect(reading.kind === 'read' && reading.entries.at(-1)).toMatchObject({
      kind: 'unrecognised',
      writtenKind: 'probeWarmed',
      line: newer,
    });
  });
});

/** What was done to the file, what the user reads, and how many entries are kept. */
const DAMAGE: readonly [
  damage: string,
  text: string,
  sentences: readonly string[],
  kept: number,
][] = [
  ['nothing in it', '', ['The file is empty. Nothing was opened. Look for another copy.'], 0],
  [
    'another kind of file',
    'time,altitude\n12:00,37000\n',
    [
      'Line 1 does not say that this is a flight timeline file. Nothing was opened. Choose a file that ends in .jsonl.',
    ],
    0,
  ],
  [
    'a picture',
    '\u0000\u0001PNG\r\n\u001a\n',
    [
      'Line 1 does not say that this is a flight timeline file. Nothing was opened. Choose a file that ends in .jsonl.',
    ],
    0,
  ],
  [
    'a format from a newer app',
    editedJson(0, (value) => ({ ...value, format: 2 })),
    [
      'The file is format 2; this app reads format 1. Nothing was opened. Update the app on the ground, then open it again.',
    ],
    0,
  ],
  [
    'only its first line',
    `${lines[0]}\n`,
    ['The file has no entry after its first line. Nothing was opened. Look for another copy.'],
    0,
  ],
  [
    'no line that can be used',
    `${lines[0]}\nx\ny\n`,
    [
      'None of the 2 lines after the first could be used. Nothing was opened. Look for another copy.',
    ],
    0,
  ],
  [
    'the end cut off between lines',
    `${lines.slice(0, 5).join('\n')}\n`,
    [
      'The file is cut: its last line is missing. 4 entries recovered; how many followed cannot be told.',
    ],
    4,
  ],
  [
    'the end cut off within a line',
    sound.slice(0, sound.indexOf('haze') + 2),
    [
      'Line 4 was put aside: it is cut or not JSON.',
      'The file is cut: its last line is missing. 2 entries recovered; how many followed cannot be told.',
    ],
    2,
  ],
  [
    'a digit of a note edited',
    sound.replace('"haze"', '"hazy"'),
    [
      'Line 4 was put aside: it was changed after it was written (entry 3 of recorder a1a1a1a1; the fingerprint named after it differs).',
      'Entry 3 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'the newest entry edited',
    sound.replace('"mono":5000', '"mono":5001'),
    [
      'Line 7 was put aside: it was changed after it was written (entry 6 of recorder a1a1a1a1; the fingerprint named after it differs).',
      'Recorder a1a1a1a1 wrote at least 6 entries; the last one read is 5.',
    ],
    5,
  ],
  [
    'a line taken out',
    without(3),
    [
      'The last line speaks of 6 entries; 5 could be read.',
      'Entry 3 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'three lines taken out',
    without(2, 3, 4),
    [
      'The last line speaks of 6 entries; 3 could be read.',
      'Entries 2 to 4 of recorder a1a1a1a1 are missing. Open another copy to fill the gap.',
    ],
    3,
  ],
  [
    'the newest entry taken out',
    without(6),
    [
      'Recorder a1a1a1a1 wrote at least 6 entries; the last one read is 5.',
      'The last line speaks of 6 entries; 5 could be read.',
    ],
    5,
  ],
  [
    'two lines changed places',
    `${lines
      .with(3, lines[4] ?? '')
      .with(4, lines[3] ?? '')
      .join('\n')}\n`,
    [
      'The lines do not stand as they were saved (moved, repeated or joined by hand). Every entry was still read.',
    ],
    6,
  ],
  ['a line doubled', inserted(4, lines[3] ?? ''), ['Line 5 repeats an entry and counts once.'], 6],
  [
    'a line of another flight joined in',
    inserted(4, stranger),
    ['Line 5 was put aside: it belongs to another flight (f2f2f2f2, not f1f1f1f1).'],
    6,
  ],
  [
    'spaces put in by an editor',
    withLine(3, (lines[3] ?? '').replace('"body":', '"body": ')),
    [
      'Line 4 was put aside: it is not spelt as the record spells it (spaces, order of fields, or a field given twice).',
      'The last line speaks of 6 entries; 5 could be read.',
      'Entry 3 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'a field given twice',
    withLine(3, (lines[3] ?? '').replace('"boot":', '"boot":"other","boot":')),
    [
      'Line 4 was put aside: it is not spelt as the record spells it (spaces, order of fields, or a field given twice).',
      'The last line speaks of 6 entries; 5 could be read.',
      'Entry 3 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'a field that reaches for the prototype',
    withLine(3, (lines[3] ?? '').replace('"words":"haze"', '"__proto__":{},"words":"haze"')),
    [
      'Line 4 was put aside: it has a field named __proto__, which no entry has.',
      'The last line speaks of 6 entries; 5 could be read.',
      'Entry 3 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'a line nested a thousand deep',
    inserted(4, `${'['.repeat(1000)}${']'.repeat(1000)}`),
    ['Line 5 was put aside: it is nested too deeply to be an entry.'],
    6,
  ],
  [
    'an entry that is a list',
    inserted(4, '[1,2]'),
    ['Line 5 was put aside: it is not an entry.'],
    6,
  ],
  [
    'an entry of a newer envelope',
    editedJson(6, (value) => ({ ...value, v: 2 })),
    [
      'Line 7 was put aside: it was written by a newer app (entry version 2). Update the app on the ground, then open the file again.',
      'Recorder a1a1a1a1 wrote at least 6 entries; the last one read is 5.',
      'The last line speaks of 6 entries; 5 could be read.',
    ],
    5,
  ],
  [
    'a sequence number that is a word',
    editedJson(6, (value) => ({ ...value, seq: 'six' })),
    [
      'Line 7 was put aside: its field seq is missing or unfit.',
      'Recorder a1a1a1a1 wrote at least 6 entries; the last one read is 5.',
      'The last line speaks of 6 entries; 5 could be read.',
    ],
    5,
  ],
  [
    'a note without words',
    editedJson(3, (value) => ({ ...value, body: {} })),
    [
      'Line 4 was put aside: its field words is missing or unfit for noted.',
      'The last line speaks of 6 entries; 5 could be read.',
      'Entry 3 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'a line put after the end',
    `${sound}${stranger}\n`,
    ['Line 9 was put aside: it stands after the last line of the file.'],
    6,
  ],
  [
    'a fingerprint edited that one line names',
    editedJson(4, (value) => ({ ...value, prev: `0${String(value['prev']).slice(1)}` })),
    [
      'Line 5 was put aside: it was changed after it was written (entry 4 of recorder a1a1a1a1; the fingerprint named after it differs).',
      'Entry 4 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'the recorder of a line edited',
    editedJson(4, (value) => ({ ...value, rec: ENGINEER })),
    [
      'Line 5 was put aside: it was changed after it was written (it says that it is entry 4 of recorder b2b2b2b2; other lines contradict that).',
      'Entry 4 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'the recorder of the first entry edited, which follows none',
    editedJson(1, (value) => ({ ...value, rec: ENGINEER })),
    [
      'Line 2 was put aside: it was changed after it was written (it says that it is entry 1 of recorder b2b2b2b2; other lines contradict that).',
      'Line 1 gives the title as “Slot check”; the entry that would say so is missing.',
      'Line 1 gives the date as “2031-05-06”; the entry that would say so is missing.',
      'Entry 1 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'a number of the last line edited',
    sound.replace('"count":6', '"count":7'),
    [
      'The last line of the file was changed after it was saved. The entries do not depend on it and were read.',
    ],
    6,
  ],
  [
    'a fingerprint of the last line edited',
    sound.replace(/"digest":"./, '"digest":"x'),
    [
      'The last line of the file was changed after it was saved. The entries do not depend on it and were read.',
    ],
    6,
  ],
  [
    'the newest fingerprint in the last line edited',
    sound.replace(/"heads":\[\{"hash":"./, '"heads":[{"hash":"x'),
    [
      'The last line of the file was changed after it was saved. The entries do not depend on it and were read.',
    ],
    6,
  ],
  [
    'its first line unreadable',
    withLine(0, '{"kneeline":"timelin'),
    [
      'Line 1 was put aside: it is cut or not JSON.',
      'The first line, which says what the file is, is missing or damaged. The entries were still read.',
    ],
    6,
  ],
  [
    'its first line taken out and the flight of the next edited',
    `${[editedFlight, ...lines.slice(2)].join('\n')}\n`,
    [
      'Line 1 was put aside: it belongs to another flight (f2f2f2f2, not f1f1f1f1).',
      'The last line speaks of 6 entries; 5 could be read.',
      'The first line, which says what the file is, is missing or damaged. The entries were still read.',
      'Entry 1 of recorder a1a1a1a1 is missing. Open another copy to fill the gap.',
    ],
    5,
  ],
  [
    'the title in the first line edited',
    sound.replace('"title":"Slot check"', '"title":"Record flight"'),
    ['Line 1 gives the title as “Record flight”; the entries say “Slot check”, and that holds.'],
    6,
  ],
];

describe('a damaged file', () => {
  it.each(DAMAGE)('%s', (_damage, text, expected, keptEntries) => {
    const reading = read(text);
    expect(sentences(reading)).toEqual(expected);
    expect(kept(reading)).toBe(keptEntries);
  });

  it('has at least twenty kinds under test', () => {
    expect(DAMAGE.length).toBeGreaterThanOrEqual(20);
  });

  it('is refused by size before it is read', () => {
    const reading = readTimeline(sound, FILE_BYTES_MAX + 1);
    expect(sentences(reading)).toEqual([
      'The file has 65 MiB; a timeline file has at most 64 MiB. Nothing was opened.',
    ]);
  });

  it('is refused by its number of lines', () => {
    const reading = read('x\n'.repeat(FILE_LINES_MAX + 1));
    expect(sentences(reading)).toEqual([
      `The file has ${FILE_LINES_MAX + 1} lines; a timeline file has at most ${FILE_LINES_MAX}. Nothing was opened.`,
    ]);
  });

  it('says that a line is too long', () => {
    const reading = read(inserted(4, `"${'x'.repeat(1_000_000)}"`));
    expect(sentences(reading)[0]).toMatch(/^Line 5 was put aside: it is longer than \d+ KiB\.$/);
  });

  it('keeps both branches of a recorder that was used twice', () => {
    const reading = read(writeTimeline(union(smallFlight(), forked)));
    expect(sentences(reading)).toEqual([
      'Recorder a1a1a1a1 was used twice: entry 3 exists in 2 versions. All are kept.',
    ]);
    expect(kept(reading)).toBe(7);
  });
});

describe('copies of one flight', () => {
  const own = smallFlight();
  const other = chainOf([mark, note('left wing'), mark], { rec: ENGINEER });
  const copies = [own.slice(0, 4), own, [...own.slice(2), ...forked], other, [...other, ...own]];

  it('merge to the same bytes in every order, and to what sorting their lines gives', () => {
    const expected = [...new Set(copies.flat().map((entry) => entry.line))].sort();
    fc.assert(
      fc.property(fc.shuffledSubarray(copies, { minLength: copies.length }), (order) => {
        const merged = order.reduce(union);
        expect(writeTimeline(merged)).toBe(writeTimeline(copies.reduce(union)));
        expect(merged.map((entry) => entry.line).toSorted()).toEqual(expected);
        expect(merged).toEqual(merged.toSorted(compareEntries));
      }),
    );
  });
});
