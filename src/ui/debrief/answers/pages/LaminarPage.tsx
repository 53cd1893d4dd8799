import type { ExpectedDrag } from '../../../../analysis/coverage/expectedResults.ts';
import type { LaminarTimeAnswer } from '../../../../analysis/coverage/laminarResults.ts';
import {
  expectedMethodWords,
  laminarGateWords,
  noExpectedWords,
  noLaminarWords,
  toCheckWords,
} from '../../../../analysis/words/coverage.ts';
import { WINGS } from '../../../../record/sheet.ts';
import { GroundTable } from '../../../kit/GroundTable.tsx';
import { spokenLength } from '../../timeWords.ts';
import { AnswerPage } from '../AnswerPage.tsx';
import { percent, percentWords, type AnswerDesk } from '../answerDesk.ts';
import { headlineOf } from '../headlines.ts';
import type { Step } from '../HowMade.tsx';
import { barLane, panelLanes, shareLane, State, suctionWindow } from '../plot/flightLanes.tsx';
import plot from '../plot/Plot.module.css';
import { Hatch, TimePlot } from '../plot/TimePlot.tsx';

const WING_WORDS = { L: 'left wing', R: 'right wing' } as const;
const STATES = [
  ['laminar', 'laminar'],
  ['intermittent', 'intermittent'],
  ['turbulent', 'turbulent'],
  ['notAssessed', 'not assessed'],
] as const;

/** Q4: both wings panel by panel over time, and the share of area and time that was laminar. */
export function LaminarPage({ of }: { readonly of: AnswerDesk }) {
  const { laminar } = of.results;
  const { sheet } = of.desk.view.state;
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(4, of)}
      plot={sheet === null ? <p>No flight sheet: no panel is known.</p> : <WingMap of={of} />}
      parts={
        <>
          <Shares of={of} />
          <Expected of={of} />
        </>
      }
      method={[
        'Share of area and time called laminar with suction on and level; intermittent counts one half.',
        'What was not called is left out: it is not assessed, never turbulent. No interval: states are called, not measured.',
        'Clear air: from the last gain while flow took hold, less first loss to last gain of each cloud.',
      ]}
      gates={[
        ...new Set(
          [laminar.allAir, laminar.clearAir].flatMap((answer) =>
            answer.kind === 'answer' ? answer.how.broken : [],
          ),
        ),
      ].map((gate) => `Read with: ${laminarGateWords(gate)}.`)}
      steps={stepsOf(of)}
    />
  );
}

function WingMap({ of }: { readonly of: AnswerDesk }) {
  const { sheet } = of.desk.view.state;
  if (sheet === null) return null;
  const lanes = [
    barLane(of, 'moisture', 'Moisture'),
    barLane(of, 'suction', 'Suction'),
    ...WINGS.flatMap((wing) => [shareLane(of, sheet, wing), ...panelLanes(of, sheet, wing)]),
  ];
  return (
    <div>
      <TimePlot
        title="Both wings by time"
        scale="UTC; root panel first; share of area above its panels"
        summary={summaryOf(of)}
        window={suctionWindow(of)}
        lanes={lanes}
      />
      <ul className={plot.legend} aria-label="What the fills mean">
        {STATES.map(([state, words]) => (
          <li key={state}>
            <svg className={plot.swatch} width="34" height="15" aria-hidden="true">
              <Hatch />
              <State state={state} box={[0.5, 0.5, 33, 14]} />
            </svg>
            {words}
          </li>
        ))}
      </ul>
    </div>
  );
}

function summaryOf({ results: { laminar } }: AnswerDesk): string {
  const wings = WINGS.flatMap((wing) => {
    const shares = laminar.wings[wing];
    return shares === null ? [] : [`${WING_WORDS[wing]} ${shareWords(shares.allAir)}`];
  });
  return `Panels of both wings by time. All air: ${wings.join('; ')}. The table below has the shares, the timeline each call.`;
}

function Shares({ of }: { readonly of: AnswerDesk }) {
  const { laminar } = of.results;
  const wings = WINGS.flatMap((wing) => {
    const shares = laminar.wings[wing];
    return shares === null ? [] : [{ words: WING_WORDS[wing] as string, ...shares }];
  });
  return (
    <GroundTable
      caption="Laminar share by area and time, suction on and level"
      rows={[{ words: 'both wings', ...laminar }, ...wings]}
      keyOf={({ words }) => words}
      columns={[
        { key: 'wing', head: '', cell: ({ words }) => <b>{words}</b> },
        { key: 'all', head: 'All air', cell: ({ allAir }) => shareWords(allAir) },
        { key: 'clear', head: 'Clear air', cell: ({ clearAir }) => shareWords(clearAir) },
      ]}
    />
  );
}

function shareWords(answer: LaminarTimeAnswer): string {
  if (answer.kind === 'noAnswer') return `none: ${noLaminarWords(answer.because)}`;
  const { byAreaFraction, observedFraction, durationS } = answer.value;
  const minutes = spokenLength(60_000 * Math.round(durationS / 60));
  return `${percent(byAreaFraction)} % over ${minutes}, ${percent(observedFraction)} % called`;
}

/** What so much laminar area should have taken off the drag, beside what was measured. */
function Expected({ of }: { readonly of: AnswerDesk }) {
  const { expectedDrag } = of.results;
  const given = expectedDrag.filter(({ expected }) => expected.kind === 'answer');
  if (given.length === 0) {
    const because = new Set(
      expectedDrag.flatMap(({ expected }) =>
        expected.kind === 'noAnswer' ? [noExpectedWords(expected.because)] : [],
      ),
    );
    return because.size === 0 ? null : (
      <p>Drag expected from the called area: not given, {[...because].join('; ')}.</p>
    );
  }
  return (
    <GroundTable
      caption="Drag that the called area should take off, beside what was measured"
      rows={given}
      keyOf={({ point, run }) => `${point} r${run}`}
      columns={[
        { key: 'point', head: 'Point', cell: ({ point, run }) => <b>{`${point} r${run}`}</b> },
        { key: 'expected', head: 'Expected, %', cell: estimateWords },
        { key: 'measured', head: 'Measured, %', cell: besideWords },
      ]}
    />
  );
}

function estimateWords({ expected }: ExpectedDrag): string {
  return expected.kind === 'noAnswer'
    ? noExpectedWords(expected.because)
    : `${percent(expected.value.estimateFraction, 1)}, ${expectedMethodWords(expected.how.method)}`;
}

function besideWords({ beside }: ExpectedDrag): string {
  if (beside.kind === 'noAnswer') return noExpectedWords(beside.because);
  const { measured, verdict, toCheck } = beside.value;
  const look = toCheck.length === 0 ? '' : `; look at ${toCheck.map(toCheckWords).join(', ')}`;
  return `${percentWords(measured)}: ${verdict}${look}`;
}

function stepsOf(of: AnswerDesk): readonly Step[] {
  const { laminar } = of.results;
  const step = (words: string, answer: LaminarTimeAnswer): Step => ({
    words: `${words}: ${shareWords(answer)}`,
    entries: answer.kind === 'answer' ? answer.how.entries : answer.entries,
  });
  return [
    step('All air', laminar.allAir),
    step('Clear air', laminar.clearAir),
    ...WINGS.flatMap((wing) => {
      const shares = laminar.wings[wing];
      return shares === null
        ? []
        : [
            step(`All air, ${WING_WORDS[wing]}`, shares.allAir),
            step(`Clear air, ${WING_WORDS[wing]}`, shares.clearAir),
          ];
    }),
  ];
}
