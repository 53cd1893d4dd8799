import { parse } from 'csv-parse/sync';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  recorderHead,
  splitCells,
  type RecorderHead,
} from '../../../src/file/recorder/recorderHead.ts';
import { recorderReader, type RecorderRows } from '../../../src/file/recorder/recorderReader.ts';
import { timeFormOf, type TimeForm } from '../../../src/file/recorder/recorderTimes.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const DAY = Date.UTC(2032, 5, 2);

function headOf(text: string): RecorderHead {
  const head = recorderHead(text);
  if (typeof head === 'string') throw new RangeError(head);
  return head;
}

function read(
  text: string,
  form: TimeForm = 'iso',
  { pieces = [], startMs = DAY }: { pieces?: readonly number[]; startMs?: number } = {},
): RecorderRows {
  const head = headOf(text);
  const reader = recorderReader(head, {
    time: { column: 0, form, startMs },
    columns: head.headers.slice(1).map((_, index) => ({ column: index + 1, factor: 1, zero: 0 })),
  });
  const bytes = bytesOf(text);
  let from = 0;
  for (const piece of pieces) {
    reader.push(bytes.subarray(from, Math.min(bytes.length, from + piece)));
    from = Math.min(bytes.length, from + piece);
  }
  reader.push(bytes.subarray(from));
  return reader.end();
}

const numbers = (column: Float32Array | undefined): readonly number[] => [...(column ?? [])];
const iso = (...secs: readonly number[]): readonly number[] =>
  secs.map((second) => Date.UTC(2032, 5, 2, 22, 0, second));

describe('the first lines of a recorder file', () => {
  it('give delimiter, names and where data begin, past a title and a line of units', () => {
    const head = headOf(
      '\uFEFFRecorder 7, flight of the second of June\nTime;Mach;Height\n;;ft\n12:00:00;0,720;37000\n12:00:01;0,721;37010\n12:00:02;',
    );
    expect(head.delimiter).toBe(';');
    expect(head.headers).toEqual(['Time', 'Mach', 'Height']);
    expect(head.linesBefore).toBe(3);
    expect(head.time).toEqual({ column: 0, form: 'clock' });
  });

  it('are refused where there is no table, and where the columns have no names', () => {
    expect(recorderHead('a letter\nwith two lines\n')).toBe('noTable');
    expect(recorderHead('1,2,3\n4,5,6\n7,8,9\n')).toBe('noHeader');
  });

  it('have cells as another reader of RFC 4180 cuts them', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '1', ',', '"', ';', '.') });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1, maxLength: 6 }), (cells) => {
        const line = cells.map((text) => `"${text.replaceAll('"', '""')}"`).join(',');
        expect(splitCells(line, ',')).toEqual(parse(line)[0]);
      }),
    );
  });
});

describe('forms of a time column', () => {
  const instants: readonly [form: TimeForm, cell: string, atMs: number][] = [
    ['iso', '2032-06-02T22:00:01Z', Date.UTC(2032, 5, 2, 22, 0, 1)],
    ['iso', '2032-06-02 22:00:01.250', Date.UTC(2032, 5, 2, 22, 0, 1, 250)],
    ['iso', '2032-06-02T16:00:01-06:00', Date.UTC(2032, 5, 2, 22, 0, 1)],
    // 2 June is day 154 of a leap year: 31 + 29 + 31 + 30 + 31 + 2.
    ['dayOfYear', '154:22:00:01.5', Date.UTC(2032, 5, 2, 22, 0, 1, 500)],
    ['dayOfYear', '2032-154 22:00:01', Date.UTC(2032, 5, 2, 22, 0, 1)],
    ['clock', '22:00:01', Date.UTC(2032, 5, 2, 22, 0, 1)],
    ['secondsOfDay', '79201.5', Date.UTC(2032, 5, 2, 22, 0, 1, 500)],
    ['elapsed', '12.5', DAY + 12_500],
    ['unix', '1969826401', 1_969_826_401_000],
  ];
  it.each(instants)('%s reads %s', (form, cell, atMs) => {
    const rows = read(`t,a\n${cell},1\n`, form);
    expect([...rows.timesMs]).toEqual([atMs]);
    expect(timeFormOf([cell])).toBe(form);
  });

  it('a clock without a date goes on past midnight, and over New Year', () => {
    expect([...read('t,a\n23:59:59,1\n00:00:00,2\n00:00:01,3\n', 'clock').timesMs]).toEqual([
      DAY + 86_399_000,
      DAY + 86_400_000,
      DAY + 86_401_000,
    ]);
    const year = read('t,a\n366:23:59:59,1\n001:00:00:00,2\n', 'dayOfYear', {
      startMs: Date.UTC(2032, 11, 31),
    });
    expect([...year.timesMs]).toEqual([Date.UTC(2032, 11, 31, 23, 59, 59), Date.UTC(2033, 0, 1)]);
  });

  it('reads as the platform does, any instant of a century', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: Date.UTC(2000, 0, 1), max: Date.UTC(2099, 11, 31) }),
        (atMs) => {
          expect([...read(`t,a\n${new Date(atMs).toISOString()},1\n`).timesMs]).toEqual([atMs]);
        },
      ),
    );
  });
});

describe('rows of a recorder file', () => {
  it('hold what another reader and the platform make of the same cells, cut into any pieces', () => {
    const cell = fc.oneof(
      fc.double({ noNaN: true, min: -1e9, max: 1e9 }).map(String),
      fc.integer({ min: -99_999, max: 99_999 }).map((whole) => (whole / 1000).toFixed(3)),
      fc.constantFrom('', ' 7 ', '+3.', '-.5', '1e-7', '"12.5"', '123456789012345678'),
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 30 }),
        fc.array(fc.integer({ min: 1, max: 50 }), { maxLength: 20 }),
        fc.constantFrom('\n', '\r\n'),
        (cells, pieces, lineBreak) => {
          const lines = cells.map(([a, b], index) => `${1000 + index},${a},${b}`);
          const text = ['time s,first,second', ...lines, ''].join(lineBreak);
          const rows = read(text, 'elapsed', { pieces });
          const theirs = parse(text).slice(1) as readonly (readonly string[])[];
          const column = (index: number): readonly number[] =>
            theirs.map((row) => {
              const shown = (row[index] ?? '').trim();
              return shown === '' ? Number.NaN : Math.fround(Number(shown));
            });
          expect(numbers(rows.columns[0])).toEqual(column(1));
          expect(numbers(rows.columns[1])).toEqual(column(2));
        },
      ),
    );
  });

  it('keep a place for what was not recorded, and count what is no number with its line', () => {
    const rows = read(
      't,a\n2032-06-02T22:00:00Z,\n2032-06-02T22:00:01Z,NaN\n2032-06-02T22:00:02Z,FAIL\n2032-06-02T22:00:03Z,5\n',
    );
    expect(numbers(rows.columns[0])).toEqual([Number.NaN, Number.NaN, Number.NaN, 5]);
    expect(rows.troubles.columns).toEqual([
      { missing: 2, junk: { count: 1, firstLine: 4, firstText: 'FAIL' } },
    ]);
  });

  it('leave out broken rows, unreadable times and times that go back, and say how many', () => {
    const at = (second: number): string => `2032-06-02T22:00:0${second}Z`;
    const rows = read(
      [
        't,a',
        `${at(0)},1`,
        '',
        `${at(1)},2,9`,
        'later,3',
        `${at(2)},4`,
        `${at(2)},5`,
        `${at(1)},6`,
        `${at(3)},7`,
        '',
      ].join('\n'),
    );
    expect([...rows.timesMs]).toEqual(iso(0, 2, 2, 3));
    expect(numbers(rows.columns[0])).toEqual([1, 4, 5, 7]);
    const { troubles } = rows;
    expect(troubles.blankLines).toBe(1);
    expect(troubles.brokenRows).toMatchObject({ count: 1, firstLine: 4 });
    expect(troubles.unreadableTimes).toEqual({ count: 1, firstLine: 5, firstText: 'later' });
    expect(troubles.repeatedTimes).toMatchObject({ count: 1, firstLine: 7 });
    expect(troubles.backwardTimes).toMatchObject({ count: 1, firstLine: 8 });
  });

  it('drop the one row that ran ahead, not all that follow it', () => {
    const rows = read(
      't,a\n2032-06-02T22:00:00Z,1\n2032-06-02T22:00:01Z,2\n2032-06-02T23:00:02Z,3\n2032-06-02T22:00:03Z,4\n',
    );
    expect([...rows.timesMs]).toEqual(iso(0, 1, 3));
    expect(numbers(rows.columns[0])).toEqual([1, 2, 4]);
  });

  it('a column that the file does not have is our mistake', () => {
    const head = headOf('t,a\n2032-06-02T22:00:00Z,1\n2032-06-02T22:00:01Z,1\n');
    expect(() =>
      recorderReader(head, {
        time: { column: 0, form: 'iso', startMs: 0 },
        columns: [{ column: 2, factor: 1, zero: 0 }],
      }),
    ).toThrow('a column must be 0 to 1, got 2');
  });

  it('more rows than a block holds stay in order', () => {
    const count = 140_000;
    const lines = Array.from({ length: count }, (_, index) => `${index},${index % 1000}`);
    const rows = read(['time s,a', ...lines].join('\n'), 'elapsed');
    expect(rows.timesMs).toHaveLength(count);
    expect(rows.timesMs[131_072]).toBe(DAY + 131_072_000);
    expect(rows.columns[0]?.[count - 1]).toBe(999);
  });
});
