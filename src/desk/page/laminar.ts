import type { ExpectedDrag } from '../../analysis/coverage/expectedResults.ts';
import type { LaminarTimeAnswer } from '../../analysis/coverage/laminarResults.ts';
import {
  expectedMethodWords,
  laminarGateWords,
  noExpectedWords,
  noLaminarWords,
  toCheckWords,
} from '../../analysis/words/coverage.ts';
import { WINGS } from '../../record/sheet.ts';
import { lengthWords } from '../pageTime.ts';
import { percent, percentFigure } from './figures.ts';
import { headed, item, table, wrapped } from './layout.ts';
import type { Paper } from './paper.ts';

/** Q4: laminar share by area and time, and what so much area should have saved. */
export function laminarSection(paper: Paper): readonly string[] {
  const { laminar, expectedDrag } = paper.results;
  const wings = WINGS.flatMap((wing) => {
    const shares = laminar.wings[wing];
    return shares === null ? [] : [{ words: `wing ${wing}`, ...shares }];
  });
  const rows = [{ words: 'both wings', ...laminar }, ...wings].map(
    ({ words, allAir, clearAir }) => ({ cells: [words, shareWords(allAir), shareWords(clearAir)] }),
  );
  const broken = [laminar.allAir, laminar.clearAir].flatMap((answer) =>
    answer.kind === 'answer' ? answer.how.broken : [],
  );
  const entries = laminar.allAir.kind === 'answer' ? laminar.allAir.how.entries : [];
  return headed('Laminar share by area and time, suction on and level', [
    ...table(
      [
        { head: '', side: 'left' },
        { head: 'All air', side: 'left' },
        { head: 'Clear air', side: 'left' },
      ],
      rows,
    ),
    ...wrapped(
      [
        'Intermittent counts one half; seen is the share of the area that was called; the rest is left out, not turbulent.',
        ...(broken.length === 0
          ? []
          : [`Read with: ${[...new Set(broken)].map(laminarGateWords).join(', ')}.`]),
        ...(entries.length === 0
          ? []
          : [`Rests on ${entries.length} entries, the first ${paper.cite(entries.slice(0, 2))}.`]),
      ].join(' '),
    ),
    ...expectedLines(expectedDrag),
  ]);
}

function shareWords(answer: LaminarTimeAnswer): string {
  if (answer.kind === 'noAnswer') return `none: ${noLaminarWords(answer.because)}`;
  const { byAreaFraction, observedFraction, durationS } = answer.value;
  return `${percent(byAreaFraction)} % over ${lengthWords(1000 * durationS)}, ${percent(observedFraction)} % seen`;
}

/** Where no run has an expected figure the reason stands once. */
function expectedLines(rows: readonly ExpectedDrag[]): readonly string[] {
  const given = rows.filter(({ expected }) => expected.kind === 'answer');
  if (given.length > 0) {
    return [
      '',
      'Drag that the called area should take off, beside what was measured:',
      ...given.flatMap((row) => item(expectedWords(row))),
    ];
  }
  const because = rows.flatMap(({ expected }) =>
    expected.kind === 'noAnswer' ? [noExpectedWords(expected.because)] : [],
  );
  return because.length === 0
    ? []
    : wrapped(
        `Drag expected from the called area: not given, ${[...new Set(because)].join('; ')}.`,
      );
}

function expectedWords({ point, run, expected, beside }: ExpectedDrag): string {
  const head = `${point} r${run}`;
  if (expected.kind === 'noAnswer') return `${head}: none, ${noExpectedWords(expected.because)}`;
  const { estimateFraction, laminarAreaFraction } = expected.value;
  const estimate = `${percent(estimateFraction, 1)} % expected (${expectedMethodWords(expected.how.method)}, ${percent(laminarAreaFraction)} % laminar)`;
  if (beside.kind === 'noAnswer') {
    return `${head}: ${estimate}; not measured, ${noExpectedWords(beside.because)}`;
  }
  const { measured, verdict, toCheck } = beside.value;
  const check = toCheck.length === 0 ? '' : `; look at ${toCheck.map(toCheckWords).join(', ')}`;
  return `${head}: ${estimate}, ${percentFigure(measured)} % measured: ${verdict}${check}`;
}
