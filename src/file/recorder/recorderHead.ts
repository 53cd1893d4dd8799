import { timeFormOf, type TimeForm } from './recorderTimes.ts';

/** What the first lines of a recorder's file say about the rest. */
export interface RecorderHead {
  readonly delimiter: string;
  /** A name a column; one that the file leaves blank is called by its place. */
  readonly headers: readonly string[];
  /** Lines before the first row of data, the header among them. */
  readonly linesBefore: number;
  /** The first rows of data as text. */
  readonly samples: readonly (readonly string[])[];
  readonly time: { readonly column: number; readonly form: TimeForm } | null;
}

export type NoHead =
  /** Nothing that looks like rows of numbers under a line of names. */
  'noTable' | 'noHeader';

const DELIMITERS = [',', ';', '\t', '|'] as const;
const SAMPLES = 20;

/** @param text the beginning of the file, whole lines and perhaps a part of one more */
export function recorderHead(text: string): RecorderHead | NoHead {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  // The last line may be cut off where the look ended.
  if (lines.length > 2) lines.pop();
  const delimiter = likeliestDelimiter(lines);
  const rows = lines.map((line) => splitCells(line, delimiter));
  const first = rows.findIndex((cells, index) => isData(cells) && isLikeTheNext(rows, index));
  if (first < 0) return 'noTable';
  const width = rows[first]?.length ?? 0;
  const head = rows.slice(0, first).findLast((cells) => cells.length >= width && isNames(cells));
  if (head === undefined) return 'noHeader';
  const samples = rows.slice(first, first + SAMPLES).filter((cells) => cells.length === width);
  return {
    delimiter,
    headers: Array.from({ length: width }, (_, place) => head[place] || `column ${place + 1}`),
    linesBefore: first,
    samples,
    time: timeColumn(samples, width),
  };
}

/** The cells of one line, RFC 4180: quotes taken off, a doubled quote is one. */
export function splitCells(line: string, delimiter: string): readonly string[] {
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (let place = 0; place < line.length; place += 1) {
    const sign = line.charAt(place);
    if (sign === '"') {
      if (isQuoted && line.charAt(place + 1) === '"') {
        cell += '"';
        place += 1;
      } else {
        isQuoted = !isQuoted;
      }
    } else if (sign === delimiter && !isQuoted) {
      cells.push(cell.trim());
      cell = '';
    } else {
      cell += sign;
    }
  }
  return [...cells, cell.trim()];
}

function likeliestDelimiter(lines: readonly string[]): string {
  const middle = lines.slice(Math.floor(lines.length / 2), Math.floor(lines.length / 2) + 5);
  const count = (delimiter: string): number =>
    Math.min(...middle.map((line) => splitCells(line, delimiter).length));
  return [...DELIMITERS].sort((a, b) => count(b) - count(a))[0] ?? ',';
}

const isNumber = (cell: string): boolean => /^[+-]?(\d+[.,]?\d*|[.,]\d+)(e[+-]?\d+)?$/i.test(cell);

/** At least two cells, and half of those that hold something are numbers or begin with a digit, as a time does. */
function isData(cells: readonly string[]): boolean {
  const full = cells.filter((cell) => cell !== '');
  const numbers = full.filter((cell) => isNumber(cell) || /^[+-]?\d/.test(cell));
  return cells.length >= 2 && full.length >= 1 && 2 * numbers.length >= full.length;
}

function isLikeTheNext(rows: readonly (readonly string[])[], index: number): boolean {
  const next = rows[index + 1];
  return next === undefined || next.length <= 1 || next.length === rows[index]?.length;
}

function isNames(cells: readonly string[]): boolean {
  return cells.filter((cell) => /\p{L}/u.test(cell)).length * 2 >= cells.length;
}

function timeColumn(samples: readonly (readonly string[])[], width: number): RecorderHead['time'] {
  for (let column = 0; column < width; column += 1) {
    const form = timeFormOf(samples.map((cells) => cells[column] ?? ''));
    if (form !== null && (column === 0 || form !== 'elapsed')) return { column, form };
  }
  return null;
}
