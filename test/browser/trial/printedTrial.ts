import type { TrialRow } from './trialRows.ts';

const HEAD = [
  'Trial of twelve tasks, by a machine. Touches are counted. Time is that of a modelled hand (Card, Moran and Newell 1983;',
  'Fitts at 5.7 bit/s), which no person has confirmed: tasks 8 (reading a print), 10 and gloves are for people.',
];

/** The table of the trial: a line for each task and tablet, what was wrong below it. */
export function printedTrial(rows: readonly TrialRow[]): string {
  const inOrder = rows.toSorted((a, b) => a.task - b.task || a.where.localeCompare(b.where));
  return [...HEAD, ...inOrder.flatMap(linesOf)].join('\n');
}

function linesOf({ task, words, where, touches, seconds, mark, faults }: TrialRow) {
  const time = seconds === null ? '' : `${seconds.toFixed(1)} s`;
  const verdict = faults.length === 0 ? 'passed' : 'NOT PASSED';
  const line = [
    String(task).padStart(2),
    words.padEnd(46),
    where.padEnd(9),
    `${touches} touches`.padStart(10),
    time.padStart(7),
    verdict.padEnd(10),
    mark,
  ].join('  ');
  return [line, ...faults.map((fault) => `      ${fault}`)];
}
