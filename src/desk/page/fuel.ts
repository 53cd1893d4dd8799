import type { SpanSaving, SuctionSpan } from '../../analysis/fuel/spanResults.ts';
import { noGrossWords, noNetWords, noSpanWords, spanGateWords } from '../../analysis/words/fuel.ts';
import { massIn } from '../../analysis/sheetUnits.ts';
import { provisionalWords } from '../../analysis/words/reasons.ts';
import { lengthWords } from '../pageTime.ts';
import { intervalFigure, percent } from './figures.ts';
import { headed, note, wrapped } from './layout.ts';
import type { Paper } from './paper.ts';

/** Q5: what the suction was worth over the whole of its time. */
export function savingSection(paper: Paper): readonly string[] {
  const { suctionSpans } = paper.results;
  return headed(
    'Fuel saved over the time with suction on',
    suctionSpans.length === 0
      ? ['Suction was never on.']
      : suctionSpans.flatMap((span) => spanLines(paper, span)),
  );
}

function spanLines(paper: Paper, span: SuctionSpan): readonly string[] {
  const { from, to, wings, saving } = span;
  const entries = saving.kind === 'answer' ? saving.how.entries : saving.entries;
  const [first] = entries;
  const head = `${paper.clock(from, first)} to ${paper.clock(to, first)}, ${lengthWords(to - from)}, ${wings.join(' and ')}`;
  if (saving.kind === 'noAnswer') {
    return wrapped(`${head}: none, ${noSpanWords(saving.because)} ${paper.cite(saving.entries)}`);
  }
  const { value, how } = saving;
  const struck = how.broken.length > 0 ? 'struck, ' : '';
  return [
    ...wrapped(`${head}: ${struck}${savingWords(paper, value)}`, { hanging: '  ' }),
    ...note(
      [
        ...(how.broken.length > 0 ? [`gates: ${how.broken.map(spanGateWords).join(', ')}`] : []),
        `baseline ${value.baselineRuns.join(' ')}`,
        ...(value.borrowedFrom === null ? [] : [`borrowed from ${value.borrowedFrom}`]),
        ...(value.provisional.length === 0
          ? []
          : [`provisional: ${value.provisional.map(provisionalWords).join(', ')}`]),
        `rests on ${entries.length} entries, the first ${paper.cite(entries.slice(0, 2))}`,
      ].join('; '),
    ),
  ];
}

function savingWords(paper: Paper, value: SpanSaving): string {
  const { massUnit } = paper;
  const scale = massIn(massUnit, 1);
  const figure = ({ kg, interval95, fraction }: SpanSaving['turbulent']): string =>
    `${intervalFigure(kg, interval95, { scale })} ${massUnit}, ${percent(fraction, 1)} %`;
  const { turbulent, countedKg, gross, suctionKg, suctionFrom, net } = value;
  return [
    `with suction off ${intervalFigure(turbulent.kg, turbulent.interval95, { scale })} ${massUnit}`,
    `counted ${paper.mass(countedKg)} ${massUnit}`,
    `gross ${'because' in gross ? noGrossWords(gross.because) : figure(gross)}`,
    suctionKg === null
      ? 'suction not measured'
      : `suction ${paper.mass(suctionKg)} ${massUnit}${suctionFrom === null ? '' : ` by ${FROM[suctionFrom]}`}`,
    `net ${'because' in net ? noNetWords(net.because) : figure(net)}`,
  ].join('; ');
}

const FROM: Readonly<Record<NonNullable<SpanSaving['suctionFrom']>, string>> = {
  counter: 'its counter',
  gauge: 'its gauge',
  bleedSlope: 'the cost of bleed',
};
