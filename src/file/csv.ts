/** A cell of a table; `null` is blank, which is not zero. */
export type Cell = string | number | null;

/** One header row, one unit a column, named in the header. */
export interface Table {
  /** For the name of its file. */
  readonly name: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

const STRICT_NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:e[+-]?\d+)?$/i;
const OPENS_A_FORMULA = /^[=+\-@\t\r]/;

/**
 * A table as RFC 4180 text: every field quoted, lines ended by CR LF, one header row. A text cell that a spreadsheet
 * would run as a formula gets a leading apostrophe; numbers, negative ones included, pass as they are.
 *
 * @throws RangeError when a row is not as long as the header
 */
export function writeCsv({ header, rows }: Omit<Table, 'name'>): string {
  for (const row of rows) {
    if (row.length !== header.length) {
      throw new RangeError(`a row must have ${header.length} cells, got ${row.length}`);
    }
  }
  return [header, ...rows].map((row) => `${row.map(quoted).join(',')}\r\n`).join('');
}

function quoted(cell: Cell): string {
  const text = cell === null ? '' : String(cell);
  const safe = OPENS_A_FORMULA.test(text) && !STRICT_NUMBER.test(text) ? `'${text}` : text;
  return `"${safe.replaceAll('"', '""')}"`;
}
