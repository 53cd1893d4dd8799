import styles from './Answers.module.css';
import type { AnswerDesk } from './answerDesk.ts';
import type { Headline } from './headline.ts';
import { headlineOf } from './headlines.ts';
import { QUESTIONS, type QuestionId } from './questions.ts';

/** All ten at a glance: each number with its interval, or why it cannot be given. */
export function AnswerIndex(props: {
  readonly of: AnswerDesk;
  readonly onQuestion: (question: QuestionId) => void;
}) {
  return (
    <ol className={styles.index} aria-label="The ten answers">
      {QUESTIONS.map(({ id, name }) => (
        <li key={id}>
          <button type="button" data-act={`answer-${id}`} onClick={() => props.onQuestion(id)}>
            <span className={styles.number}>{id}</span>
            <span className={styles.name}>{name}</span>
            <Glance headline={headlineOf(id, props.of)} />
          </button>
        </li>
      ))}
    </ol>
  );
}

function Glance({ headline }: { readonly headline: Headline }) {
  if (headline.kind === 'none') {
    return <span className={styles.noValue}>{headline.because}</span>;
  }
  const { value, unit, intervals, of, isStruck } = headline;
  const [widest] = intervals;
  return (
    <>
      <span className={styles.value}>
        {isStruck ? <s>{value}</s> : value} <span>{unit}</span>
      </span>
      <span className={styles.of}>
        {widest === undefined ? '' : `${widest}; `}
        {of}
      </span>
    </>
  );
}
