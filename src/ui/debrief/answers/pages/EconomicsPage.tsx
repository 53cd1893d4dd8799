import type { LabourStep } from '../../../../analysis/fuel/labourResults.ts';
import { noLaminarWords } from '../../../../analysis/words/coverage.ts';
import {
  labourGateWords,
  noLabourWords,
  noNetSavingWords,
} from '../../../../analysis/words/labour.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { figure } from '../../../kit/number.ts';
import { AnswerPage } from '../AnswerPage.tsx';
import { percent, type AnswerDesk } from '../answerDesk.ts';
import { headlineOf } from '../headlines.ts';
import { RowPlot } from '../plot/RowPlot.tsx';

const hours = (value: number): string => figure(value, 1);

/** Q8: hours of work by panel and task, for each hour airborne, and what the next flight showed for them. */
export function EconomicsPage({ of }: { readonly of: AnswerDesk }) {
  const { work, perAirborneHour, perBlockHour } = of.results.labour;
  const labour = work.kind === 'answer' ? work.value : null;
  const panels = labour?.byPanel ?? [];
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(8, of)}
      plot={
        <RowPlot
          title="Labour by panel"
          scale="h, written together where the work was"
          summary={`Labour hours by panel: ${panels.map((one) => `${one.panels.join(' ')} ${hours(one.labourH)}`).join(', ') || 'none'}.`}
          rows={panels.map((one) => ({
            key: one.panels.join(' '),
            name: one.panels.join(' '),
            bar: { value: one.labourH },
            told: hours(one.labourH),
          }))}
        />
      }
      parts={
        <>
          <Tasks of={of} />
          <Steps steps={of.across.labour} />
        </>
      }
      method={[
        'Hours of work done, else as the squawk asks for them; what names no hours is said and never guessed.',
        'What the work was worth the next flight shows: its clear-air laminar share and its net saving. So the newest flight is always one late.',
        ...(perBlockHour.kind === 'answer'
          ? [`${hours(perBlockHour.value.labourPerFlownHour)} h for each block hour.`]
          : []),
      ]}
      gates={[
        ...(work.kind === 'answer'
          ? work.how.broken.map((gate) => `Read with: ${labourGateWords(gate)}.`)
          : []),
        ...(labour !== null && labour.asRaisedH > 0
          ? [`${hours(labour.asRaisedH)} h of them as squawks ask for, not booked.`]
          : []),
        ...(of.flightCount < 2
          ? ['No later flight on this device: what it brought is not known yet.']
          : []),
      ]}
      steps={[
        {
          words:
            work.kind === 'answer'
              ? `${hours(work.value.labourH)} h of work`
              : noLabourWords(work.because),
          entries: work.kind === 'answer' ? work.how.entries : work.entries,
        },
        {
          words:
            perAirborneHour.kind === 'answer'
              ? `${hours(perAirborneHour.value.flownH)} h airborne, lift-off to touchdown`
              : `Airborne: ${noLabourWords(perAirborneHour.because)}`,
          entries: milestonesOf(of),
        },
        ...panels.map((one) => ({
          words: `${one.panels.join(' ')}: ${hours(one.labourH)} h`,
          entries: one.entries,
        })),
      ]}
    />
  );
}

function milestonesOf({ results: { flight } }: AnswerDesk) {
  const { liftOff, touchdown } = flight.milestones;
  return [liftOff, touchdown].flatMap((one) => (one === undefined ? [] : [one.by]));
}

function Tasks({ of }: { readonly of: AnswerDesk }) {
  const { work } = of.results.labour;
  return (
    <GroundTable
      caption="Labour by task"
      rows={work.kind === 'answer' ? work.value.byTask : []}
      keyOf={({ at, task }) => `${at} ${task}`}
      empty={work.kind === 'noAnswer' ? `None: ${noLabourWords(work.because)}.` : 'None.'}
      columns={[
        { key: 'squawk', head: 'Squawk', cell: ({ squawk }) => <b>{squawk ?? 'none'}</b> },
        { key: 'panels', head: 'Where', cell: ({ panels }) => panels.join(' ') },
        { key: 'task', head: 'Task', cell: ({ task }) => task },
        {
          key: 'hours',
          head: 'Hours',
          cell: ({ labourH }) => (labourH === null ? 'not given' : hours(labourH)),
        },
        {
          key: 'from',
          head: 'As',
          cell: ({ from }) => (from === 'maintenance' ? 'done' : 'raised'),
        },
      ]}
    />
  );
}

function Steps({ steps }: { readonly steps: readonly LabourStep[] }) {
  return (
    <GroundTable
      caption="Work after each flight, and what the next one showed"
      rows={steps}
      keyOf={({ flight }) => flight}
      columns={[
        { key: 'flight', head: 'After', cell: ({ title }) => <b>{title}</b> },
        {
          key: 'work',
          head: 'Hours',
          cell: ({ work }) =>
            work.kind === 'answer' ? hours(work.value.labourH) : noLabourWords(work.because),
        },
        {
          key: 'perHour',
          head: 'An hour airborne',
          cell: ({ perAirborneHour }) =>
            perAirborneHour.kind === 'answer'
              ? hours(perAirborneHour.value.labourPerFlownHour)
              : noLabourWords(perAirborneHour.because),
        },
        {
          key: 'next',
          head: 'The next flight showed',
          cell: nextWords,
        },
      ]}
    />
  );
}

function nextWords({ next }: LabourStep): string {
  if (next === null) return 'no later flight here yet';
  const clear =
    next.clearAir.kind === 'answer'
      ? `${percent(next.clearAir.value.byAreaFraction)} % laminar in clear air`
      : `clear air: ${noLaminarWords(next.clearAir.because)}`;
  const net =
    next.netSaving.kind === 'answer'
      ? `${percent(next.netSaving.value.fraction, 1)} % net`
      : noNetSavingWords(next.netSaving.because);
  return `${next.title}: ${clear}, ${net}`;
}
