import type { DrillSeen } from './seen.ts';

const HEADER = ['drill', 'rounds', 'faults', 'lost', 'verdict', 'seconds'] as const;

/** One row a drill, in columns; notes below. */
export function tableOf(rows: readonly (DrillSeen & { readonly seconds: number })[]): string {
  const cells = [
    HEADER,
    ...rows.map((row) => [
      row.drill,
      String(row.rounds),
      String(row.faults),
      String(row.lost),
      verdictOf(row),
      row.seconds.toFixed(0),
    ]),
  ];
  const widths = HEADER.map((_, column) =>
    Math.max(...cells.map((line) => line[column]?.length ?? 0)),
  );
  const lines = cells.map((line) =>
    line
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0),
      )
      .join('  '),
  );
  const notes = rows.flatMap(({ drill, note }) =>
    note === undefined ? [] : [`${drill}: ${note}`],
  );
  return [...lines, ...notes].join('\n');
}

function verdictOf({ broken, lost }: DrillSeen): string {
  return broken.length + lost === 0 ? 'held' : 'BROKEN';
}
