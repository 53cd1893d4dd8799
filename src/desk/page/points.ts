import type { PointOfFlight } from '../../analysis/flightResults.ts';
import { gateWords, leftOutWords } from '../../analysis/words/gates.ts';
import { baselineMethodWords, dragByWords, stateWords } from '../../analysis/words/points.ts';
import { noGrossWords, noNetWords } from '../../analysis/words/fuel.ts';
import { stabilityItemWords } from '../../analysis/words/stability.ts';
import type { FlowFigure } from '../../analysis/results.ts';
import { missingWords, noDragWords, provisionalWords } from '../../analysis/words/reasons.ts';
import { percent, percentFigure, signed } from './figures.ts';
import { headed, item, table, wrapped, type Column } from './layout.ts';
import type { Paper } from './paper.ts';

/** Q1: what each point says, with its interval, what was left out of it and why. */
export function pointsSection(paper: Paper): readonly string[] {
  const { points } = paper.results;
  if (points.length === 0) return headed('Points', ['No test point was started.']);
  const baseline = sharedBaseline(points);
  const rows = points.map((point) => ({
    cells: cellsOf(paper, point),
    notes: [noteOf(paper, point, baseline)],
  }));
  return headed('Points: less than with suction off at the same weight (95 % intervals)', [
    ...table(columns(paper), rows),
    ...(baseline === null ? [] : wrapped(`All ${baseline}.`)),
    ...comparisonLines(paper),
  ]);
}

function columns({ flowUnit }: Paper): readonly Column[] {
  return [
    { head: 'Point', side: 'left' },
    { head: 'State', side: 'left' },
    { head: 'n', side: 'right' },
    { head: 'Fuel flow, % less', side: 'left' },
    { head: 'Drag, % less', side: 'left' },
    { head: `Gross ${flowUnit}`, side: 'right' },
    { head: 'Suction', side: 'right' },
    { head: `Net ${flowUnit}`, side: 'right' },
  ];
}

function cellsOf(paper: Paper, point: PointOfFlight): readonly string[] {
  const { result } = point;
  const head = [
    `${point.point} r${point.run}`,
    stateWords(point),
    String(point.readingsUsed.length),
  ];
  switch (result.kind) {
    case 'none':
      return [...head, `none: ${missingWords(result.because)}`];
    case 'baseline':
      return [...head, `baseline ${paper.flow(result.flowAtCardKgPerS)} ${paper.flowUnit}`];
    case 'valid':
    case 'indicative': {
      const isStruck = result.broken.length > 0;
      return [
        ...head,
        isStruck ? `struck ${percentFigure(result.fuel)}` : percentFigure(result.fuel),
        'because' in result.drag ? 'not given' : percentFigure(result.drag),
        'because' in result.gross ? 'none' : flowFigure(paper, result.gross),
        result.suction === null ? 'none' : paper.flow(result.suction.kgPerS),
        'because' in result.net ? 'none' : flowFigure(paper, result.net),
      ];
    }
  }
}

/** `637 ± 14`, with half of the 95 % interval. */
function flowFigure(paper: Paper, { kgPerS, interval95KgPerS: { low, high } }: FlowFigure): string {
  return `${paper.flow(kgPerS)} ± ${paper.flow((high - low) / 2)}`;
}

/** One note a row: what was read, what was left out of it and why, what strikes or doubts the number. */
function noteOf(paper: Paper, point: PointOfFlight, baseline: string | null): string {
  const { result } = point;
  const notes = [
    point.setting,
    point.readingsUsed.length === 0 ? '' : `read ${paper.citeReadings(point.readingsUsed)}`,
    steadyWords(point),
    ...point.readingsLeftOut.map(
      ({ broken, ...reading }) =>
        `left out ${paper.citeReadings([reading])} ${broken.map(leftOutWords).join(', ')}`,
    ),
    ...(result.kind === 'valid' || result.kind === 'indicative'
      ? reductionNotes(result, baseline)
      : []),
  ];
  return notes.filter((words) => words !== '').join('; ');
}

/** Steady is what a point should be; anything else is said. */
function steadyWords({ stability }: PointOfFlight): string {
  if (stability.kind === 'noAnswer') return '';
  const { kind, failing } = stability.value;
  return kind === 'stable' ? '' : `${STEADY[kind]}: ${failing.map(stabilityItemWords).join(', ')}`;
}

const STEADY = { correctable: 'not quite steady, corrected', unstable: 'not steady' } as const;

type Reduction = Extract<PointOfFlight['result'], { readonly fuel: unknown }>;

/** @param baseline what is said of the baseline of all points together; null where each says its own */
function reductionNotes(result: Reduction, baseline: string | null): readonly string[] {
  const { broken, drag, gross, net, netReduction, provisional } = result;
  return [
    result.kind === 'indicative' ? 'indicative only: the run was not finished' : '',
    broken.length === 0 ? '' : `struck by the gate ${broken.map(gateWords).join(', ')}`,
    netReduction === null ? '' : `net ${percentFigure(netReduction)} %`,
    'because' in drag ? `drag not given, ${noDragWords(drag.because)}` : '',
    'because' in gross ? `gross ${noGrossWords(gross.because)}` : '',
    'because' in net ? `net ${noNetWords(net.because)}` : '',
    baseline === null ? baselineWords(result) : '',
    provisional.length === 0 ? '' : `provisional: ${provisional.map(provisionalWords).join(', ')}`,
  ];
}

function baselineWords({ madeOf }: Reduction): string {
  const borrowed = madeOf.borrowedFrom === null ? '' : `, borrowed from ${madeOf.borrowedFrom}`;
  const drag = madeOf.dragBy === null ? '' : `; ${dragByWords(madeOf)}`;
  return `${baselineMethodWords(madeOf)}, runs ${madeOf.baselineRuns.join(' ')}${borrowed}${drag}`;
}

/** What all reductions say of their baseline, when they say the same. */
function sharedBaseline(points: readonly PointOfFlight[]): string | null {
  const said = points.flatMap(({ result }) => ('fuel' in result ? [baselineWords(result)] : []));
  const [first] = said;
  return first !== undefined && said.every((words) => words === first) ? first : null;
}

/** Per cent rises as fuel burns off while the flow saved does not, so settings are told apart by the flow saved. */
function comparisonLines(paper: Paper): readonly string[] {
  const { comparisons } = paper.results;
  const [first] = comparisons;
  if (first === undefined) return [];
  const { flowUnit, flow } = paper;
  return [
    '',
    `Flow saved against ${first.against.point} r${first.against.run}, ± 2 u of the difference:`,
    ...comparisons.flatMap((one) => {
      const verdict = one.savingDiffers ? 'differs' : 'cannot be told apart';
      return item(
        `${one.point} r${one.run} ${paper.flowChange(one.savedDifferenceKgPerS)} ± ${flow(one.savedTwoUKgPerS)} ${flowUnit}, ` +
          `${verdict} (${signed(100 * one.differenceFraction, 1)} ± ${percent(one.twoUFraction, 1)} points of per cent)`,
      );
    }),
  ];
}
