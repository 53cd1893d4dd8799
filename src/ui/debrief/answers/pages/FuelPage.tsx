import type { FuelFigure, SpanSaving, SuctionSpan } from '../../../../analysis/fuel/spanResults.ts';
import {
  noGrossWords,
  noNetWords,
  noSpanWords,
  spanGateWords,
} from '../../../../analysis/words/fuel.ts';
import { baselineMethodWords } from '../../../../analysis/words/points.ts';
import { provisionalWords } from '../../../../analysis/words/reasons.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { figure } from '../../../kit/number.ts';
import { spokenLength } from '../../timeWords.ts';
import { AnswerPage } from '../AnswerPage.tsx';
import { percent, rangeWords, timeOf, type AnswerDesk } from '../answerDesk.ts';
import { headlineOf, longestSpan } from '../headlines.ts';
import type { Step } from '../HowMade.tsx';
import { figureFrom95 } from '../plot/figures.ts';
import { RowPlot, type PlotRow } from '../plot/RowPlot.tsx';

/** Q5: what suction was worth over its whole time: gross, its own fuel, and net, side by side. */
export function FuelPage({ of }: { readonly of: AnswerDesk }) {
  const { suctionSpans } = of.results;
  const longest = longestSpan(of.results);
  const { massUnit } = of.units;
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(5, of)}
      plot={
        longest === undefined || longest.saving.kind === 'noAnswer' ? null : (
          <RowPlot
            title={`Fuel over ${spanWords(of, longest)}`}
            scale={`${massUnit}, 68 and 95 %`}
            summary={`With suction off, counted, gross, suction and net in ${massUnit}; the table below has each.`}
            rows={rowsOf(of, longest.saving.value)}
          />
        )
      }
      parts={suctionSpans.map((span) => (
        <SpanTable key={`${span.from} ${span.wings.join()}`} of={of} span={span} />
      ))}
      method={[
        'With suction off: the baseline flow at each weight, added up over the time with suction on. Gross is that less what the engines’ counters say; net is gross less the fuel of the suction itself.',
        'The baseline is gauged and the burn counted, so calibration does not cancel here as it does in a point.',
        'Carrying the weight of the system and time lost in cloud are not in it. Bleed-driven suction is never taken off twice.',
      ]}
      gates={suctionSpans.flatMap(gatesOf)}
      steps={suctionSpans.flatMap((span) => stepsOf(of, span))}
    />
  );
}

function spanWords(of: AnswerDesk, { from, to, wings, saving }: SuctionSpan): string {
  const [by] = saving.kind === 'answer' ? saving.how.entries : saving.entries;
  return `${timeOf(of.desk, from, by)} to ${timeOf(of.desk, to, by)}, ${wings.join(' and ')}`;
}

function rowsOf(of: AnswerDesk, value: SpanSaving): readonly PlotRow[] {
  const { massScale: scale, mass } = of.units;
  const row = (name: string, one: FuelFigure | { readonly because: string }): PlotRow =>
    'because' in one
      ? { key: name, name, words: one.because }
      : {
          key: name,
          name,
          figure: figureFrom95(one.kg, one.interval95, { scale }),
          told: mass(one.kg),
        };
  const counted = (name: string, kg: number | null): PlotRow =>
    kg === null
      ? { key: name, name, words: 'not measured' }
      : { key: name, name, bar: { value: scale * kg }, told: mass(kg) };
  const { gross, net } = value;
  return [
    row('Suction off', value.turbulent),
    counted('Counted', value.countedKg),
    row('Gross', 'because' in gross ? { because: noGrossWords(gross.because) } : gross),
    counted('Suction itself', value.suctionKg),
    row('Net', 'because' in net ? { because: noNetWords(net.because) } : net),
  ];
}

function SpanTable({ of, span }: { readonly of: AnswerDesk; readonly span: SuctionSpan }) {
  const { saving } = span;
  const { mass, massUnit, massScale: scale } = of.units;
  const caption = `Suction on ${spanWords(of, span)}, ${spokenLength(60_000 * Math.round((span.to - span.from) / 60_000))}`;
  if (saving.kind === 'noAnswer') {
    return (
      <p>
        {caption}: none, {noSpanWords(saving.because)}.
      </p>
    );
  }
  const { turbulent, countedKg, gross, suctionKg, suctionFrom, net } = saving.value;
  const figureRow = (name: string, one: FuelFigure | null, because: string) => ({
    name,
    value: one === null ? because : mass(one.kg),
    range: one === null ? '' : rangeWords(one.interval95, scale, 0),
    share: one === null ? '' : `${percent(one.fraction, 1)} %`,
  });
  const rows = [
    figureRow('With suction off', turbulent, ''),
    { name: 'Counted by the engines', value: mass(countedKg), range: '', share: '' },
    'because' in gross
      ? figureRow('Gross saving', null, noGrossWords(gross.because))
      : figureRow('Gross saving', gross, ''),
    {
      name: 'Suction itself',
      value:
        suctionKg === null
          ? 'not measured'
          : `${mass(suctionKg)}${suctionFrom === null ? '' : ` by ${FROM[suctionFrom]}`}`,
      range: '',
      share: '',
    },
    'because' in net
      ? figureRow('Net saving', null, noNetWords(net.because))
      : figureRow('Net saving', net, ''),
  ];
  return (
    <GroundTable
      caption={caption}
      rows={rows}
      keyOf={({ name }) => name}
      columns={[
        { key: 'name', head: '', cell: ({ name }) => <b>{name}</b> },
        { key: 'value', head: massUnit, cell: ({ value }) => value },
        { key: 'range', head: '95 %', cell: ({ range }) => range },
        { key: 'share', head: 'Of suction off', cell: ({ share }) => share },
      ]}
    />
  );
}

const FROM: Readonly<Record<NonNullable<SpanSaving['suctionFrom']>, string>> = {
  counter: 'its counter',
  gauge: 'its gauge',
  bleedSlope: 'the cost of bleed',
};

function gatesOf({ saving }: SuctionSpan): readonly string[] {
  return saving.kind === 'noAnswer'
    ? []
    : [
        ...saving.how.broken.map((gate) => `Struck: ${spanGateWords(gate)}.`),
        ...saving.value.provisional.map((reason) => `Provisional: ${provisionalWords(reason)}.`),
      ];
}

function stepsOf(of: AnswerDesk, span: SuctionSpan): readonly Step[] {
  const { saving } = span;
  const { mass, massUnit } = of.units;
  if (saving.kind === 'noAnswer') {
    return [
      { words: `Looked at in vain: ${noSpanWords(saving.because)}`, entries: saving.entries },
    ];
  }
  const { value, how } = saving;
  const parts = Object.entries(value.uncertaintyPartsKg)
    .map(([name, kg]) => `${name} ${figure(of.units.massScale * kg, 1)}`)
    .join(', ');
  const baseline = of.results.points.flatMap(({ point, result }) =>
    result.kind === 'baseline' && value.baselineRuns.includes(point) ? result.entries : [],
  );
  return [
    {
      words: `Baseline ${value.baselineRuns.join(' ')}, ${baselineMethodWords(how)}${value.borrowedFrom === null ? '' : `, borrowed from ${value.borrowedFrom}`}`,
      entries: baseline,
    },
    {
      words: `Counters ${value.countersAtOn} at suction on, ${value.countersAtOff} at off: ${mass(value.countedKg)} ${massUnit}`,
      entries: how.entries,
    },
    { words: `Doubt of the saving, 1 σ, ${massUnit}: ${parts}`, entries: [] },
  ];
}
