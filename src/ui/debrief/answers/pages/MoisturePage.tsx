import type { FlightResults } from '../../../../analysis/flightResults.ts';
import {
  cautionWords,
  notCountedWords,
  noTestWords,
  questionWords,
} from '../../../../analysis/words/associations.ts';
import {
  lostGateWords,
  noLossWords,
  noRecoveryWords,
  nothingLostWords,
} from '../../../../analysis/words/encounters.ts';
import { noResultWords } from '../../../../analysis/words/samples.ts';
import { WINGS } from '../../../../record/sheet.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { figure } from '../../../kit/number.ts';
import { spokenLength } from '../../timeWords.ts';
import { AnswerPage } from '../AnswerPage.tsx';
import { percent, timeOf, type AnswerDesk } from '../answerDesk.ts';
import { headlineOf } from '../headlines.ts';
import type { Step } from '../HowMade.tsx';
import { figureFromU } from '../plot/figures.ts';
import { RowPlot, type PlotRow } from '../plot/RowPlot.tsx';
import { XyPlot } from '../plot/XyPlot.tsx';
import { SamplesTable } from './SamplesTable.tsx';

type Encounter = FlightResults['encounters'][number];
type WingLag =
  Encounter['wings']['L']['loss']['first'] | Encounter['wings']['L']['recovery']['toCount'];

const nameOf = ({ label }: Encounter): string => (label === '' ? 'unnamed' : label);

/** Q3: each stay in moisture, when flow went and came back, and what was caught in it. */
export function MoisturePage({ of }: { readonly of: AnswerDesk }) {
  const { encounters } = of.results;
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(3, of)}
      plot={
        <RowPlot
          title="Time to loss, and back to count after leaving"
          scale="s, 68 and 95 %"
          summary={`Lags of ${encounters.length} encounters, wing by wing; the table below has each.`}
          rows={encounters.flatMap(lagRows)}
        />
      }
      parts={
        <>
          <EncounterTable of={of} />
          <ParticlePlot of={of} />
          <SamplesTable of={of} />
          <Associations of={of} />
        </>
      }
      method={[
        'Loss: first loss less entry. Back: return to the count before entry less exit. The doubts of both times are combined.',
        'First loss and whole loss are never mixed; a loss that a valve made is none of these.',
        'Samples are joined to an encounter by the share of their exposure inside it.',
      ]}
      gates={encounters.flatMap(gatesOf)}
      steps={encounters.flatMap((encounter) => stepsOf(of, encounter))}
    />
  );
}

function lagRows(encounter: Encounter): readonly PlotRow[] {
  return WINGS.flatMap((wing) => {
    const { loss, recovery } = encounter.wings[wing];
    return [
      lagRow(`${nameOf(encounter)} loss ${wing}`, loss.first),
      lagRow(`${nameOf(encounter)} back ${wing}`, recovery.toCount),
    ];
  });
}

function lagRow(name: string, lag: WingLag): PlotRow {
  if (lag.kind === 'noAnswer') return { key: name, name, words: whyNot(lag.because) };
  const { lagS, lagStandardUncertaintyS } = lag.value;
  return {
    key: name,
    name,
    figure: figureFromU(lagS, lagStandardUncertaintyS, { isHollow: lag.how.broken.length > 0 }),
    told: figure(lagS, 0),
  };
}

type NoLag = Extract<WingLag, { readonly kind: 'noAnswer' }>['because'];
type NoLoss = Parameters<typeof noLossWords>[0];

/** Reasons for no loss and for no return are two sets; each is said in its own words. */
function whyNot(because: NoLag): string {
  return isNoLoss(because) ? noLossWords(because) : noRecoveryWords(because);
}

function isNoLoss(because: NoLag): because is NoLoss {
  return ['notAssessedAtEntry', 'suctionOff', 'turbulentAtEntry'].includes(because);
}

function EncounterTable({ of }: { readonly of: AnswerDesk }) {
  const { encounters } = of.results;
  const { massUnit, mass } = of.units;
  return (
    <GroundTable
      caption="Encounters"
      rows={encounters}
      keyOf={({ entry }) => entry.by}
      empty="No moisture was written down."
      columns={[
        { key: 'name', head: 'Name', cell: (one) => <b>{nameOf(one)}</b> },
        { key: 'entry', head: 'Entered', cell: ({ entry }) => timeOf(of.desk, entry.at, entry.by) },
        {
          key: 'inside',
          head: 'Inside, s',
          cell: ({ inMoisture }) =>
            inMoisture.kind === 'answer' ? figure(inMoisture.value.durationS, 0) : 'still open',
        },
        { key: 'seen', head: 'As seen', cell: sightWords },
        {
          key: 'area',
          head: 'Laminar area before, while lost',
          cell: ({ area }) =>
            area.kind === 'answer'
              ? `${percent(area.value.before.byAreaFraction)} %, ${percent(area.value.during.byAreaFraction)} %`
              : nothingLostWords(area.because),
        },
        {
          key: 'lost',
          head: 'Lost for, s',
          cell: ({ lost }) =>
            lost.kind === 'answer'
              ? figure(lost.value.lostForS, 0)
              : nothingLostWords(lost.because),
        },
        {
          key: 'fuel',
          head: `Saving forgone, ${massUnit}`,
          cell: ({ fuelForgone }) =>
            fuelForgone.kind === 'answer'
              ? mass(fuelForgone.value.fuelKg)
              : nothingLostWords(fuelForgone.because),
        },
      ]}
    />
  );
}

function sightWords({ look, cover, iceSeen }: Encounter): string {
  const ice = iceSeen === null ? null : iceSeen ? 'ice seen' : 'no ice seen';
  return [look, cover, ice].filter((part) => part !== null).join(', ');
}

/** Size against the time to loss, as far as the laboratory has answered. */
function ParticlePlot({ of }: { readonly of: AnswerDesk }) {
  const points = of.results.particles.flatMap((one) =>
    one.meanSize.kind === 'answer' && one.firstLoss.kind === 'answer'
      ? [
          {
            key: `${one.encounter}`,
            x: 1e6 * one.meanSize.value.meanSizeM,
            y: one.firstLoss.value.lagS,
            name: particleWords(one),
          },
        ]
      : [],
  );
  return points.length === 0 ? null : (
    <XyPlot
      title="Time to first loss, s, against particle size"
      scale={`${points.length} encounters; so few prove nothing`}
      xTitle="mean size, µm"
      summary={`Particle size against time to first loss: ${points.map(({ x, y, name }) => `${name} ${figure(x, 0)} µm ${figure(y, 0)} s`).join('; ')}.`}
      points={points}
    />
  );
}

function particleWords({ label, number, depth }: FlightResults['particles'][number]): string {
  return [
    label,
    number.kind === 'answer' ? `${figure(number.value.numberPerM3 / 1000, 0)}/l` : null,
    depth.kind === 'answer' ? `${percent(depth.value.lostFraction)} % lost` : null,
  ]
    .filter((part) => part !== null)
    .join(', ');
}

function Associations({ of }: { readonly of: AnswerDesk }) {
  const { associations } = of.results;
  return associations.length === 0 ? null : (
    <GroundTable
      caption="What went together; association is not cause"
      rows={associations}
      keyOf={({ question }) => question}
      columns={[
        { key: 'question', head: 'Question', cell: (one) => questionWords(one) },
        {
          key: 'table',
          head: 'Counts',
          cell: ({ table }) =>
            table === null ? 'none' : table.map((row) => row.join(' to ')).join(' against '),
        },
        {
          key: 'test',
          head: 'Fisher exact, two-sided',
          cell: ({ test }) =>
            test.kind === 'answer'
              ? `p = ${Number(test.value.pTwoSided.toPrecision(2))}`
              : noTestWords(test.because),
        },
        {
          key: 'care',
          head: 'With care',
          cell: ({ leftOut, cautions }) =>
            [
              ...leftOut.filter(({ count }) => count > 0).map(notCountedWords),
              ...cautions.map(cautionWords),
            ].join('; '),
        },
      ]}
    />
  );
}

function gatesOf(encounter: Encounter): readonly string[] {
  const { lost, wings } = encounter;
  const broken = [
    ...(lost.kind === 'answer' ? lost.how.broken : []),
    ...WINGS.flatMap((wing) => {
      const { first } = wings[wing].loss;
      return first.kind === 'answer' ? first.how.broken : [];
    }),
  ];
  return [...new Set(broken)].map((gate) => `${nameOf(encounter)}: ${lostGateWords(gate)}.`);
}

function stepsOf(of: AnswerDesk, encounter: Encounter): readonly Step[] {
  const { entry, exit, wings, inMoisture } = encounter;
  const joined = of.results.samples.samples.filter(({ joins }) =>
    joins.some(({ encounter: place }) => of.results.encounters[place] === encounter),
  );
  return [
    {
      words: `${nameOf(encounter)}: inside ${inMoisture.kind === 'answer' ? spokenLength(1000 * inMoisture.value.durationS) : 'and never left'}`,
      entries: exit === null ? [entry.by] : [entry.by, exit.by],
    },
    ...WINGS.map((wing) => {
      const { loss, recovery, lostByCommand } = wings[wing];
      const times = [loss.first, recovery.toCount].map((lag) =>
        lag.kind === 'answer' ? `${figure(lag.value.lagS, 0)} s` : whyNot(lag.because),
      );
      return {
        words: `${nameOf(encounter)} ${wing}: loss ${times[0]}; back ${times[1]}`,
        entries: [
          ...(loss.first.kind === 'answer' ? loss.first.how.entries : loss.first.entries),
          ...(recovery.toCount.kind === 'answer'
            ? recovery.toCount.how.entries
            : recovery.toCount.entries),
          ...lostByCommand,
        ],
      };
    }),
    ...joined.map(({ sample, exposure, lab }) => ({
      words: `${nameOf(encounter)}: sample ${sample}, ${lab.kind === 'answer' ? 'answered by the laboratory' : noResultWords(lab.because)}`,
      entries: [
        ...(exposure.kind === 'answer' ? exposure.how.entries : exposure.entries),
        ...(lab.kind === 'answer' ? lab.how.entries : lab.entries),
      ],
    })),
  ];
}
