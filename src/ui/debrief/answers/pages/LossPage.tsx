import { useState } from 'react';
import type { Loss } from '../../../../analysis/encounters/losses.ts';
import { countWords } from '../../../../analysis/words/encounters.ts';
import { candidateWords, evidenceWords } from '../../../../analysis/words/evidence.ts';
import { WINGS } from '../../../../record/sheet.ts';
import { GroundButton } from '../../../kit/Ground.tsx';
import { whyReadOnly } from '../../context.ts';
import { AnswerPage } from '../AnswerPage.tsx';
import styles from '../Answers.module.css';
import { timeOf, type AnswerDesk } from '../answerDesk.ts';
import { headlineOf } from '../headlines.ts';
import { barLane, shareLane, suctionWindow } from '../plot/flightLanes.tsx';
import { TimePlot } from '../plot/TimePlot.tsx';
import { CauseForm } from './CauseForm.tsx';
import { lossesTogether } from './lossesTogether.ts';

/** Q2: where flow was lost and what speaks for which cause; what people decided stands beside it. */
export function LossPage({ of }: { readonly of: AnswerDesk }) {
  const { losses } = of.results;
  const { sheet } = of.desk.view.state;
  const groups = lossesTogether(losses);
  return (
    <AnswerPage
      of={of}
      headline={headlineOf(2, of)}
      plot={
        sheet === null ? null : (
          <TimePlot
            title="Laminar share of each wing, and losses"
            scale="% of area as called; filled: lost, hollow: never came"
            summary={`${losses.length} losses on the laminar share of both wings by time; the list below has each with its evidence.`}
            window={suctionWindow(of)}
            lanes={[
              barLane(of, 'moisture', 'Moisture'),
              barLane(of, 'suction', 'Suction'),
              ...WINGS.map((wing) => shareLane(of, sheet, wing)),
            ]}
          />
        )
      }
      parts={
        <section aria-label="Losses">
          <ol className={styles.lossList}>
            {groups.map((group) => (
              <LossGroup key={`${group.by} ${group.kind}`} of={of} group={group} />
            ))}
          </ol>
        </section>
      }
      method={[
        'Each loss is tried against the candidates in one fixed order: moisture open or left less than 300 s ago, suction moved within 60 s, off condition, a wedge of neighbours, the same probe on earlier flights, root first.',
        'Evidence, never a verdict: a person decides the cause, and “unexplained” is an answer.',
      ]}
      gates={groups
        .filter(({ losses: together }) => together.some(({ inReading }) => inReading))
        .map(({ at, by }) => `${timeOf(of.desk, at, by)}: found in a reading, so then or before.`)}
      steps={groups.map(({ at, by, kind, losses: together }) => ({
        words: `${timeOf(of.desk, at, by)} ${kind === 'lost' ? 'lost' : 'never laminar'}: ${[...new Set(together.map(({ wing }) => wing))].join(' and ')}`,
        entries: [
          by,
          ...together.flatMap(({ evidence }) => evidence.flatMap(({ entries }) => entries)),
        ],
      }))}
    />
  );
}

type Group = ReturnType<typeof lossesTogether>[number];

function LossGroup({ of, group }: { readonly of: AnswerDesk; readonly group: Group }) {
  const [isDeciding, setDeciding] = useState(false);
  const { at, by, kind, losses } = group;
  const causes = losses[0]?.causes ?? [];
  const readOnly = whyReadOnly(of.desk.journal);
  return (
    <li>
      <div className={styles.lossHead}>
        <h4>
          {timeOf(of.desk, at, by)} {kind === 'lost' ? 'lost' : 'never laminar since suction on'}
        </h4>
        <span className={styles.keys}>
          <GroundButton act="open-loss" onPress={() => of.onOpen(by)}>
            Open
          </GroundButton>
          {readOnly === null ? (
            <GroundButton
              act="decide-cause"
              pressed={isDeciding}
              onPress={() => setDeciding(!isDeciding)}
            >
              Decide cause
            </GroundButton>
          ) : null}
        </span>
      </div>
      {losses.map((loss) => (
        <EvidenceOf key={`${loss.wing} ${loss.probes.join()}`} of={of} loss={loss} />
      ))}
      <p>
        {causes.length === 0 ? (
          'No cause is decided.'
        ) : (
          <b>
            {causes
              .map(({ cause, reason, role }) => `Decided by ${role}: ${cause}, ${reason}.`)
              .join(' ')}
          </b>
        )}
      </p>
      {isDeciding ? (
        <CauseForm desk={of.desk} group={group} onDone={() => setDeciding(false)} />
      ) : null}
    </li>
  );
}

function EvidenceOf({ of, loss }: { readonly of: AnswerDesk; readonly loss: Loss }) {
  const { sheet } = of.desk.view.state;
  const speaks = loss.evidence.flatMap((one) => evidenceWords(one, sheet) ?? []);
  const named = (wanted: 'silent' | 'unknown'): string =>
    loss.evidence
      .filter(({ finding, candidate }) => finding === wanted && candidate !== 'unexplained')
      .map(({ candidate }) => candidateWords(candidate))
      .join(', ');
  const rows = [
    [`${loss.wing} wing`, whereWords(loss)],
    ['Speaks for', speaks.join('; ')],
    ['Silent', named('silent')],
    ['Cannot be told', named('unknown')],
  ].filter(([, words]) => words !== '');
  return (
    <dl className={styles.evidence}>
      {rows.map(([head, words]) => (
        <div key={head} className={styles.evidenceRow}>
          <dt>{head}</dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  );
}

function whereWords({ from, to, probes, panels }: Loss): string {
  const where = probes.length > 0 ? probes : panels;
  const count = [from, to].flatMap((one) => (one === null ? [] : [countWords(one)])).join(' to ');
  return [...(count === '' ? [] : [count]), ...(where.length === 0 ? [] : [where.join(' ')])].join(
    '; ',
  );
}
