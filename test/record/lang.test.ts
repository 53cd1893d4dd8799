import { describe, expect, it } from 'vitest';
import { epochMs } from '../../src/record/brand.ts';
import { hashLine } from '../../src/record/chain.ts';
import { KNOWN_KINDS } from '../../src/record/kinds.ts';
import { kindWords } from '../../src/record/kindWords.ts';
import { entryWords } from '../../src/record/lang.ts';
import { numberWords } from '../../src/record/readingWords.ts';
import { scriptA } from '../flights/flightA.ts';
import { flightOfScript, idOfLine } from '../flights/scriptToEntries.ts';
import { sheetOfScript } from '../flights/sheetOfScript.ts';
import { chained } from './writing.ts';

const flight = flightOfScript(scriptA);
const sheet = sheetOfScript(scriptA);
/** No-break blanks as plain ones, to be readable here. */
const wordsOf = (n: number): string => {
  const entry = flight.entries.find(({ id }) => id === idOfLine(flight.idOf, n));
  return entry === undefined ? '' : plain(entryWords(entry, sheet));
};
const plain = (words: string): string => words.replaceAll('\u00a0', ' ');

describe('words of an entry', () => {
  it.each([
    [4, 'Time hack 1'],
    [15, 'Covers released R, clear R1 R2 R3 R5 R6, hung R4'],
    [19, 'On condition leg 1, M 0.720, 36 970 ft'],
    [20, 'Point start TP01 run 1'],
    [21, 'Fuel 1 220, 1 150 lb/h'],
    [33, 'Laminar gained R1, R 20 of 24'],
    [41, 'Rake LA laminar'],
    [44, 'Turn start to leg 2, 140 s'],
    [47, 'Suction changed L and R, +15 %, unit 106 lb/h'],
    [52, 'Amended FF2 910 to 810, mis-keyed digit'],
    [61, 'Withdrawn wrong button, meant sampler open'],
    [94, 'Fuel state FU1 2 440 lb, FU2 2 381 lb, FUS 128 lb, FREM 5 951 lb, TANK 5 980 lb'],
    [97, 'Sampler opened S-03, slide, cloud'],
    [101, 'Cloud entered M2, haze, then partial cirrus'],
    [112, 'Laminar lost L 0 of 24, R 0 of 24'],
    [150, 'Lab result S-02 34 µm, 120 per litre'],
  ])('line %i says "%s"', (n, words) => {
    expect(wordsOf(n)).toBe(words);
  });

  it('says what was uplifted, at which density, and by which docket', () => {
    const [uplift] = chained([
      {
        kind: 'fuelUplifted',
        body: {
          amount: { value: 640, unit: 'USgal' },
          density: { value: 6.7, unit: 'lb/USgal' },
          docket: 'D-114',
        },
      },
    ]);
    expect(uplift && plain(entryWords(uplift, sheet))).toBe(
      'Fuel uplift 640 USgal, at 6.7 lb/USgal, D-114',
    );
  });

  it('names a recorder file, its rows and where its clock stood', () => {
    const [told] = chained([
      {
        kind: 'recorderReferenced',
        body: {
          file: 'trace.csv.gz',
          sha256: hashLine('trace'),
          bytes: 125_125,
          rows: 13_201,
          from: epochMs(1_969_825_140_000),
          to: epochMs(1_969_838_340_000),
          channels: ['fuelFlow1', 'mach'],
          offsetS: 12.34,
          offsetDoubtS: 0.8,
        },
      },
    ]);
    expect(told && plain(entryWords(told, sheet))).toBe(
      'Recorder file trace.csv.gz, 13 201 rows, clock +12.3 s',
    );
  });

  it('names the engine when only one of two was read, and says why nothing was', () => {
    const [one, none] = chained([
      { kind: 'fuelRead', body: { readings: [{ instrument: 'FF2', value: 1040, unit: 'lb/h' }] } },
      { kind: 'fuelRead', body: { readings: [{ instrument: 'FF2', blank: 'unserviceable' }] } },
    ]);
    expect(one && plain(entryWords(one, sheet))).toBe('Fuel engine 2 1 040 lb/h');
    expect(none && entryWords(none, sheet)).toBe('Fuel engine 2 unserviceable');
  });

  it('shows a kind from a newer release by its own name', () => {
    const [entry] = chained([{ kind: 'balloonSeen', body: { colour: 'grey' } }]);
    expect(entry && entryWords(entry, null)).toBe('Unknown entry (kept): balloonSeen');
  });

  it('has a name for every kind', () => {
    expect(KNOWN_KINDS.map(kindWords).filter((words) => words.trim() === '')).toEqual([]);
    expect(new Set(KNOWN_KINDS.map(kindWords)).size).toBe(KNOWN_KINDS.length);
  });

  it('amends a time in hours, minutes and seconds', () => {
    const [entry] = chained([
      {
        kind: 'entryAmended',
        body: {
          target: '0'.repeat(64),
          replaces: [],
          // 2032-06-02T22:26:04Z and a minute before.
          changes: [{ field: 'at', old: 1_969_827_964_000, new: 1_969_827_904_000 }],
          code: 'backDated',
          reason: '',
        },
      },
    ]);
    expect(entry && entryWords(entry, null)).toBe('Amended time 22:26:04 to 22:25:04');
  });
});

describe('numbers in words', () => {
  it.each([
    [1220, null, '1 220'],
    [-0.0002, 4, '\u22120.0002'],
    [-0.00001, 4, '0.0000'],
    [1_234_567.5, null, '1 234 567.5'],
    [1e21, null, '1e+21'],
  ])('%d with %s places is "%s"', (value, decimals, words) => {
    expect(plain(numberWords(value, decimals))).toBe(words);
  });
});
