import type { FlightResults } from '../../../../analysis/flightResults.ts';
import { cardStateWords, missWords } from '../../../../analysis/words/completion.ts';
import { reflyWords, stateWords } from '../../../../analysis/words/points.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { figure } from '../../../kit/number.ts';
import { AnswerPage } from '../AnswerPage.tsx';
import type { AnswerDesk } from '../answerDesk.ts';
import { headlineOf } from '../headlines.ts';
import { RowPlot } from '../plot/RowPlot.tsx';

type Card = FlightResults['completion']['cards'][number];
type Run = Card['runs'][number];

const minutes = (seconds: number): string => figure(seconds / 60, 1);

/** Q6: what was flown of what was planned, how long it held, why a card is not complete, and what to fly again. */
export function CompletionPage({ of }: { readonly of: AnswerDesk }) {
  const { cards, unplanned, refly } = of.results.completion;
  const runs = [...cards.flatMap((card) => card.runs), ...unplanned];
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(6, of)}
      plot={
        <RowPlot
          title="Minutes in tolerance, of minutes flown"
          scale="filled: in tolerance; outline: the run"
          summary={`Minutes in tolerance of ${runs.length} runs; the table below has each.`}
          rows={runs.map((run) => ({
            key: `${run.point} ${run.run}`,
            name: `${run.point} r${run.run}`,
            bar: { value: run.inToleranceS / 60, of: run.durationS / 60 },
            told: run.state === 'complete' ? '' : stateWords(run),
          }))}
        />
      }
      parts={
        <>
          <GroundTable
            caption="To fly again, most wanted first"
            rows={refly}
            keyOf={({ point }) => point}
            empty="Nothing: every card is complete."
            columns={[
              { key: 'point', head: 'Card', cell: ({ point }) => <b>{point}</b> },
              { key: 'priority', head: 'Priority', cell: ({ priority }) => priority },
              { key: 'because', head: 'Because', cell: (one) => reflyWords(one) },
            ]}
          />
          <GroundTable
            caption="Cards of the flight sheet"
            rows={cards}
            keyOf={({ point }) => point}
            empty="The flight sheet has no test card."
            columns={[
              { key: 'card', head: 'Card', cell: ({ point }) => <b>{point}</b> },
              { key: 'title', head: 'Title', cell: ({ title }) => title },
              { key: 'state', head: 'State', cell: ({ state }) => cardStateWords(state) },
              {
                key: 'runs',
                head: 'In tolerance, of run, min',
                cell: (card) => card.runs.map(runWords).join('; '),
              },
              {
                key: 'missed',
                head: 'Missed',
                cell: ({ missed }) => missed.map(missWords).join('; '),
              },
            ]}
          />
        </>
      }
      method={[
        'A card is complete when one run has the readings that the card asks for, in tolerance and long enough.',
        'Minutes in tolerance go by the air data keyed during the run; what nobody saw is told apart.',
      ]}
      gates={runs
        .filter(({ unobservedS }) => unobservedS >= LEAST_TOLD_S)
        .map((run) => `${run.point} r${run.run}: ${minutes(run.unobservedS)} min not seen.`)}
      steps={runs.map((run) => ({
        words: `${run.point} r${run.run}: ${runWords(run)} min, ${run.usableReadings === 1 ? '1 reading' : `${run.usableReadings} readings`} usable`,
        entries: run.entries,
      }))}
    />
  );
}

/** Less than this is 0.0 of a minute. */
const LEAST_TOLD_S = 3;

function runWords({ inToleranceS, durationS }: Run): string {
  return `${minutes(inToleranceS)} of ${minutes(durationS)}`;
}
