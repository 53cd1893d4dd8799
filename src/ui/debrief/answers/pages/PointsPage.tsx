import { useState } from 'react';
import { gateWords, leftOutWords } from '../../../../analysis/words/gates.ts';
import {
  baselineMethodWords,
  dragByWords,
  methodWords,
} from '../../../../analysis/words/points.ts';
import { noDragWords, provisionalWords } from '../../../../analysis/words/reasons.ts';
import type { FlightResults, PointOfFlight } from '../../../../analysis/flightResults.ts';
import type { PointResult } from '../../../../analysis/results.ts';
import { pointResults } from '../../../../analysis/testPoints.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { change, figure } from '../../../kit/number.ts';
import { PointDetail } from '../../points/PointDetail.tsx';
import { PointsTable } from '../../points/PointsTable.tsx';
import { AnswerPage } from '../AnswerPage.tsx';
import { percentWords, type AnswerDesk } from '../answerDesk.ts';
import { headlineOf } from '../headlines.ts';
import type { Step } from '../HowMade.tsx';
import { figureFromU } from '../plot/figures.ts';
import { RowPlot } from '../plot/RowPlot.tsx';

const keyOf = ({ point, run }: { point: string; run: number }): string => `${point} r${run}`;

/** Q1: every run on one axis, settings ranked by the flow saved, and the chosen run down to its readings. */
export function PointsPage({ of }: { readonly of: AnswerDesk }) {
  const { desk, results } = of;
  const [chosenKey, setChosenKey] = useState<string | null>(null);
  const points = pointResults(desk.view);
  const chosen =
    points.find((point) => keyOf(point) === chosenKey) ??
    points.find(({ result }) => result.kind === 'valid') ??
    points[0] ??
    null;
  const told =
    chosen === null ? undefined : results.points.find((point) => keyOf(point) === keyOf(chosen));
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(1, of)}
      plot={
        <PointsTable
          points={points}
          sheet={desk.view.state.sheet}
          chosen={chosen}
          onChoose={(point) => setChosenKey(keyOf(point))}
        />
      }
      parts={
        <>
          {chosen === null ? null : <PointDetail desk={desk} point={chosen} />}
          <Ranking of={of} />
        </>
      }
      method={methodOf(chosen)}
      gates={told === undefined ? [] : gatesOf(told)}
      steps={told === undefined ? [] : stepsOf(of, told)}
    />
  );
}

/** Per cent rises as fuel burns off while the flow saved does not, so settings are told apart by the flow saved. */
function Ranking({ of }: { readonly of: AnswerDesk }) {
  const { comparisons } = of.results;
  const [first] = comparisons;
  if (first === undefined) return null;
  const { flowUnit, flowScale, flow, flowChange } = of.units;
  const ranked = comparisons.toSorted((a, b) => b.savedDifferenceKgPerS - a.savedDifferenceKgPerS);
  const against = keyOf(first.against);
  return (
    <>
      <RowPlot
        title={`Flow saved against ${against}`}
        scale={`${flowUnit}, 68 and 95 %; zero is no difference`}
        summary={`Settings ranked by the flow saved against ${against}: ${ranked.map((one) => `${keyOf(one)} ${flowChange(one.savedDifferenceKgPerS)} ${flowUnit}`).join(', ')}.`}
        rows={ranked.map((one) => ({
          key: keyOf(one),
          name: keyOf(one),
          figure: figureFromU(one.savedDifferenceKgPerS, one.savedTwoUKgPerS / 2, {
            scale: flowScale,
            isHollow: !one.savingDiffers,
          }),
          told: one.savingDiffers ? 'differs' : 'no difference',
        }))}
      />
      <GroundTable
        caption="Ranked by flow saved at equal weight"
        rows={ranked}
        keyOf={keyOf}
        columns={[
          { key: 'point', head: 'Point', cell: (one) => <b>{keyOf(one)}</b> },
          {
            key: 'setting',
            head: 'Setting',
            cell: (one) => of.results.points.find((point) => keyOf(point) === keyOf(one))?.setting,
          },
          {
            key: 'flow',
            head: `Flow saved, ${flowUnit} ± 2 u`,
            cell: (one) =>
              `${flowChange(one.savedDifferenceKgPerS)} ± ${flow(one.savedTwoUKgPerS)}`,
          },
          {
            key: 'percent',
            head: 'Points of per cent',
            cell: (one) =>
              `${change(100 * one.differenceFraction, 1)} ± ${figure(100 * one.twoUFraction, 1)}`,
          },
          {
            key: 'verdict',
            head: '',
            cell: (one) => (one.savingDiffers ? <b>differs</b> : 'cannot be told apart'),
          },
        ]}
      />
    </>
  );
}

function methodOf(chosen: PointResult | null): readonly string[] {
  const words = chosen === null ? '' : methodWords(chosen);
  return [
    ...(words === '' || chosen === null ? [] : [`${keyOf(chosen)}: ${words}.`]),
    'Each reading is calibrated, brought to level and steady, referred to the card, and held against the flow with suction off at the same weight.',
    'Settings are ranked by the flow saved, since per cent rises as fuel burns off.',
  ];
}

function gatesOf({ result, stability }: PointOfFlight): readonly string[] {
  const isSteady = stability.kind === 'noAnswer' || stability.value.kind === 'stable';
  return [
    ...('broken' in result ? result.broken.map((gate) => `Struck: ${gateWords(gate)}.`) : []),
    ...(result.kind === 'indicative' ? ['Indicative: the run was not finished.'] : []),
    ...('provisional' in result
      ? result.provisional.map((reason) => `Provisional: ${provisionalWords(reason)}.`)
      : []),
    ...(isSteady ? [] : ['Not quite steady over the run; corrected where it can be.']),
  ];
}

function stepsOf(of: AnswerDesk, point: PointOfFlight): readonly Step[] {
  const { flow, flowUnit } = of.units;
  const { result, readingsUsed, readingsLeftOut } = point;
  const count = readingsUsed.length;
  const readings = `${count === 1 ? '1 reading' : `${count} readings`} used`;
  return [
    { words: 'Started and ended', entries: point.entries },
    {
      words:
        'madeOf' in result
          ? `${readings}, ${flow(result.madeOf.flowKgPerS)} ${flowUnit} in the mean`
          : readings,
      entries: readingsUsed.flatMap(({ entries }) => entries),
    },
    ...readingsLeftOut.map(({ entries, broken }) => ({
      words: `Left out: ${broken.map(leftOutWords).join(', ')}`,
      entries,
    })),
    ...(result.kind === 'baseline'
      ? [
          {
            words: `Calibrated and brought to the card: ${flow(result.flowAtCardKgPerS)} ${flowUnit}`,
            entries: result.entries,
          },
        ]
      : []),
    ...('madeOf' in result ? reductionSteps(of, result) : []),
  ];
}

type Reduction = Extract<FlightResults['points'][number]['result'], { readonly madeOf: unknown }>;

function reductionSteps(of: AnswerDesk, result: Reduction): readonly Step[] {
  const { flow, flowUnit } = of.units;
  const { madeOf, fuel, drag } = result;
  const baseline = of.results.points.filter(
    (point) => point.result.kind === 'baseline' && madeOf.baselineRuns.includes(point.point),
  );
  return [
    {
      words: `Calibrated and brought to the card: ${flow(madeOf.flowAtCardKgPerS)} ${flowUnit}`,
      entries: madeOf.entries,
    },
    {
      words: `With suction off at the same weight ${flow(madeOf.baselineAtThatWeightKgPerS)} ${flowUnit}, ${baselineMethodWords(madeOf)}${madeOf.borrowedFrom === null ? '' : `, borrowed from ${madeOf.borrowedFrom}`}`,
      entries: baseline.flatMap(({ result: run }) => ('entries' in run ? run.entries : [])),
    },
    { words: `Fuel flow: ${percentWords(fuel)} % less`, entries: [] },
    {
      words:
        'because' in drag
          ? `Drag not given: ${noDragWords(drag.because)}`
          : `Drag: ${percentWords(drag)} % less, ${dragByWords(madeOf)}`,
      entries: [],
    },
  ];
}
