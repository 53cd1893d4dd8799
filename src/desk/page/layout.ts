/** Columns of the page: what a printer sets on a sheet of paper without breaking a line. */
export const PAGE_COLUMNS = 96;

/** A heading with a rule under it. */
export function headed(heading: string, lines: readonly string[]): readonly string[] {
  return ['', heading, '-'.repeat(PAGE_COLUMNS), ...lines];
}

/** Words broken at spaces, every line after the first set in by `hanging`. */
export function wrapped(text: string, { first = '', hanging = '' } = {}): readonly string[] {
  const lines: string[] = [];
  let line = first;
  for (const word of text.split(' ')) {
    const isFresh = line === first || line === hanging;
    if (!isFresh && line.length + 1 + word.length > PAGE_COLUMNS) {
      lines.push(line);
      line = `${hanging}${word}`;
    } else {
      line = isFresh ? `${line}${word}` : `${line} ${word}`;
    }
  }
  return [...lines, line];
}

/** A point of a list. */
export function item(text: string): readonly string[] {
  return wrapped(text, { first: '  - ', hanging: '    ' });
}

/** A note under a row of a table. */
export function note(text: string): readonly string[] {
  return wrapped(text, { first: '      ', hanging: '      ' });
}

export interface Column {
  readonly head: string;
  readonly side: 'left' | 'right';
}

/** Rows under heads, each column as wide as its widest cell. Notes stand under their row. */
export function table(
  columns: readonly Column[],
  rows: readonly { readonly cells: readonly string[]; readonly notes?: readonly string[] }[],
): readonly string[] {
  const widths = columns.map(({ head }, index) =>
    Math.max(lengthOf(head), ...rows.map(({ cells }) => lengthOf(cells[index] ?? ''))),
  );
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ side }, index) => padded(cells[index] ?? '', widths[index] ?? 0, side))
      .join('  ')
      .trimEnd();
  return [
    line(columns.map(({ head }) => head)),
    ...rows.flatMap(({ cells, notes = [] }) => [line(cells), ...notes.flatMap(note)]),
  ];
}

function padded(cell: string, width: number, side: Column['side']): string {
  const space = ' '.repeat(Math.max(0, width - lengthOf(cell)));
  return side === 'left' ? cell + space : space + cell;
}

const CHARACTERS = new Intl.Segmenter('en');

/** In characters as the eye counts them, not in code units. */
export function lengthOf(text: string): number {
  return Array.from(CHARACTERS.segment(text)).length;
}
