import { JUNK, numberCell, textCell } from './recorderCells.ts';
import type { RecorderHead } from './recorderHead.ts';
import { timeReader, type TimeForm } from './recorderTimes.ts';

/** A column to keep: the value is what stands in the cell times `factor`, plus `zero`. */
export interface KeptColumn {
  readonly column: number;
  readonly factor: number;
  readonly zero: number;
}

export interface RecorderPlan {
  readonly time: { readonly column: number; readonly form: TimeForm; readonly startMs: number };
  readonly columns: readonly KeptColumn[];
}

/** What was left out or looked odd, with the line of the first of each. */
export interface RecorderTroubles {
  readonly blankLines: number;
  /** Another number of cells than the header has: left out. */
  readonly brokenRows: Counted;
  readonly unreadableTimes: Counted;
  /** Earlier than the row before, or more than a day after it: left out. */
  readonly backwardTimes: Counted;
  /** The same time as the row before: kept. */
  readonly repeatedTimes: Counted;
  /** One a kept column. */
  readonly columns: readonly { readonly missing: number; readonly junk: Counted }[];
}

export interface Counted {
  readonly count: number;
  /** Line of the file, 1 is the first; null where there is none. */
  readonly firstLine: number | null;
  readonly firstText: string | null;
}

export interface RecorderRows {
  /** UTC milliseconds by the recorder's clock, never falling. */
  readonly timesMs: Float64Array;
  /** One a kept column; NaN where nothing was recorded. Seven digits are more than a gauge has. */
  readonly columns: readonly Float32Array[];
  readonly troubles: RecorderTroubles;
}

export interface RecorderReader {
  /** The next bytes of the file, cut anywhere. */
  readonly push: (bytes: Uint8Array) => void;
  /** What follows the last line break, and the columns. To be called once. */
  readonly end: () => RecorderRows;
  readonly rows: () => number;
}

const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
const QUOTE = 34;
const BLOCK_ROWS = 65_536;
const DAY_MS = 86_400_000;

/** Reads rows as their bytes arrive; only the kept columns take up room. */
export function recorderReader(head: RecorderHead, plan: RecorderPlan): RecorderReader {
  const delimiter = head.delimiter.charCodeAt(0);
  const width = head.headers.length;
  const wanted = wantedCells(width, plan);
  const readTime = timeReader(plan.time.form, plan.time.startMs);
  const kept = plan.columns;
  const timeBlocks: Float64Array[] = [];
  const valueBlocks: Float32Array[][] = [];
  let times = new Float64Array(0);
  let values: readonly Float32Array[] = [];
  /** Rows in the last block. */
  let place = BLOCK_ROWS;
  const cellFrom = new Int32Array(width);
  const cellTo = new Int32Array(width);
  const blank = { count: 0 };
  const brokenRows = counter();
  const unreadableTimes = counter();
  const backwardTimes = counter();
  const repeatedTimes = counter();
  const missing = kept.map(() => 0);
  const junk = kept.map(counter);
  let carry = new Uint8Array(0);
  let line = 0;
  let lastMs = Number.NaN;
  let beforeLastMs = Number.NaN;

  function push(bytes: Uint8Array): void {
    const all = carry.length === 0 ? bytes : joined(carry, bytes);
    const hasQuotes = all.includes(QUOTE);
    let from = 0;
    for (;;) {
      const to = hasQuotes ? quotedLineEnd(all, from) : all.indexOf(LINE_FEED, from);
      if (to < 0) break;
      takeLine(all, from, to);
      from = to + 1;
    }
    carry = all.slice(from);
  }

  function takeLine(bytes: Uint8Array, from: number, lineEnd: number): void {
    line += 1;
    if (line <= head.linesBefore) return;
    const to = bytes[lineEnd - 1] === CARRIAGE_RETURN && lineEnd > from ? lineEnd - 1 : lineEnd;
    if (to === from) {
      blank.count += 1;
      return;
    }
    if (cutCells(bytes, from, to) !== width) {
      brokenRows.add(line, () => textCell(bytes, from, to));
      return;
    }
    const timeCell = plan.time.column;
    const atMs = readTime(bytes, cellFrom[timeCell] ?? 0, cellTo[timeCell] ?? 0);
    const text = (): string => textCell(bytes, cellFrom[timeCell] ?? 0, cellTo[timeCell] ?? 0);
    if (!Number.isFinite(atMs)) {
      unreadableTimes.add(line, text);
      return;
    }
    if (atMs < lastMs) {
      backwardTimes.add(line, text);
      // One row that ran ahead is the odd one, not all that follow it.
      if (!(atMs >= beforeLastMs) || place === 0) return;
      place -= 1;
      lastMs = beforeLastMs;
    } else if (atMs - lastMs > DAY_MS) {
      backwardTimes.add(line, text);
      return;
    }
    if (atMs === lastMs) repeatedTimes.add(line, text);
    keepRow(bytes, atMs);
  }

  function keepRow(bytes: Uint8Array, atMs: number): void {
    if (place === BLOCK_ROWS) {
      times = new Float64Array(BLOCK_ROWS);
      values = kept.map(() => new Float32Array(BLOCK_ROWS));
      timeBlocks.push(times);
      valueBlocks.push([...values]);
      place = 0;
    }
    times[place] = atMs;
    for (let index = 0; index < kept.length; index += 1) {
      const column = kept[index];
      const block = values[index];
      if (column === undefined || block === undefined) continue;
      const from = cellFrom[column.column] ?? 0;
      const to = cellTo[column.column] ?? 0;
      const value = numberCell(bytes, from, to);
      block[place] = value === JUNK ? Number.NaN : value * column.factor + column.zero;
      if (value === JUNK) junk[index]?.add(line, () => textCell(bytes, from, to));
      else if (Number.isNaN(value)) missing[index] = (missing[index] ?? 0) + 1;
    }
    beforeLastMs = lastMs;
    lastMs = atMs;
    place += 1;
  }

  const rows = (): number => Math.max(0, timeBlocks.length - 1) * BLOCK_ROWS + lastRows();
  const lastRows = (): number => (timeBlocks.length === 0 ? 0 : place);

  /** Marks where the wanted cells stand and gives how many there are. */
  function cutCells(bytes: Uint8Array, from: number, to: number): number {
    let cell = 0;
    let start = from;
    let isQuoted = false;
    for (let at = from; at <= to; at += 1) {
      const byte = at === to ? delimiter : bytes[at];
      if (byte === QUOTE) isQuoted = !isQuoted;
      if (byte !== delimiter || (isQuoted && at < to)) continue;
      if (wanted[cell] === 1) {
        const isInQuotes = bytes[start] === QUOTE && bytes[at - 1] === QUOTE && at - start > 1;
        cellFrom[cell] = isInQuotes ? start + 1 : start;
        cellTo[cell] = isInQuotes ? at - 1 : at;
      }
      cell += 1;
      start = at + 1;
    }
    return cell;
  }

  return {
    push,
    rows,
    end: () => {
      if (carry.length > 0) takeLine(carry, 0, carry.length);
      carry = new Uint8Array(0);
      return {
        timesMs: joinedBlocks(timeBlocks, new Float64Array(rows())),
        columns: kept.map((_, index) =>
          joinedBlocks(takenFrom(valueBlocks, index), new Float32Array(rows())),
        ),
        troubles: {
          blankLines: blank.count,
          brokenRows: brokenRows.counted(),
          unreadableTimes: unreadableTimes.counted(),
          backwardTimes: backwardTimes.counted(),
          repeatedTimes: repeatedTimes.counted(),
          columns: kept.map((_, index) => ({
            missing: missing[index] ?? 0,
            junk: junk[index]?.counted() ?? counter().counted(),
          })),
        },
      };
    },
  };
}

function wantedCells(width: number, { time, columns }: RecorderPlan): Uint8Array {
  const wanted = new Uint8Array(width);
  for (const { column } of [time, ...columns]) {
    if (!(Number.isInteger(column) && column >= 0 && column < width)) {
      throw new RangeError(`a column must be 0 to ${width - 1}, got ${column}`);
    }
    wanted[column] = 1;
  }
  return wanted;
}

/** End of the line that begins at `from`, line breaks within quotes passed over; −1 where it has not come yet. */
function quotedLineEnd(bytes: Uint8Array, from: number): number {
  let isQuoted = false;
  for (let at = from; at < bytes.length; at += 1) {
    if (bytes[at] === QUOTE) isQuoted = !isQuoted;
    else if (bytes[at] === LINE_FEED && !isQuoted) return at;
  }
  return -1;
}

function joined(before: Uint8Array, after: Uint8Array): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(before.length + after.length);
  all.set(before);
  all.set(after, before.length);
  return all;
}

interface Counter {
  readonly add: (line: number, text: () => string) => void;
  readonly counted: () => Counted;
}

function counter(): Counter {
  let count = 0;
  let firstLine: number | null = null;
  let firstText: string | null = null;
  return {
    add: (line, text) => {
      count += 1;
      if (firstLine === null) {
        firstLine = line;
        firstText = text().slice(0, 60);
      }
    },
    counted: () => ({ count, firstLine, firstText }),
  };
}

/** One column's blocks, let go from the rest so that no column is held twice for long. */
function takenFrom(blocks: Float32Array[][], index: number): readonly Float32Array[] {
  return blocks.flatMap((block) => {
    const column = block[index];
    block[index] = new Float32Array(0);
    return column === undefined ? [] : [column];
  });
}

function joinedBlocks<Column extends Float64Array | Float32Array>(
  blocks: readonly Column[],
  into: Column,
): Column {
  for (const [index, block] of blocks.entries()) {
    const from = index * BLOCK_ROWS;
    if (from < into.length) into.set(block.subarray(0, into.length - from), from);
  }
  return into;
}
