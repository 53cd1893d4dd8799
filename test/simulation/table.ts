import type { Tally } from './classes.ts';
import type { Control } from './simulation.ts';

const HEAD = [
  'result',
  'class',
  'repeatability',
  'n',
  'flights',
  'held %',
  '± %',
  'error/u',
  'spread',
  'verdict',
];
const WIDTHS = [15, 36, 14, 7, 8, 7, 6, 8, 7, 0];
/** Words first, numbers after. */
const WORDS = 3;

/** The table as a page of text. */
export function tableOf(rows: readonly Tally[]): string {
  return [HEAD, ...rows.map(cellsOf)].map(lineOf).join('\n');
}

/** Two rows a fault: with its gate, and without it, where the intervals must fail. */
export function controlTableOf(rows: readonly Control[]): string {
  const lines = rows.flatMap(({ fault, letIn, asItIs, turnedOff }) => [
    lineOf([...cellsOf({ ...asItIs, name: `${fault}, gate as it is` }), percent(letIn)]),
    lineOf([...cellsOf({ ...turnedOff, name: `${fault}, gate turned off` }), '']),
  ]);
  return [lineOf([...HEAD, 'bad let in %']), ...lines].join('\n');
}

function cellsOf(tally: Tally): readonly string[] {
  return [
    tally.result,
    tally.name,
    DECLARED[String(tally.declared)] ?? '',
    String(tally.count),
    String(tally.flights),
    percent(tally.coverage),
    percent(tally.samplingDoubt),
    tally.meanErrorOverU.toFixed(2),
    tally.spreadOfErrorOverU.toFixed(2),
    VERDICTS[tally.verdict],
  ];
}

const DECLARED: Readonly<Record<string, string>> = {
  true: 'declared',
  false: 'undeclared',
  null: 'either',
};

const VERDICTS = {
  holds: 'holds',
  withinDoubt: 'within its doubt',
  tooLow: 'TOO LOW',
  tooHigh: 'TOO HIGH',
  tooFew: 'too few flights',
} as const satisfies Record<Tally['verdict'], string>;

function percent(share: number): string {
  return (100 * share).toFixed(1);
}

function lineOf(cells: readonly string[]): string {
  return cells
    .map((cell, at) => {
      const width = WIDTHS[at] ?? 0;
      return at < WORDS ? cell.padEnd(width) : cell.padStart(width);
    })
    .join(' ')
    .trimEnd();
}
