import type { ReactNode } from 'react';
import styles from './Answers.module.css';
import type { AnswerDesk } from './answerDesk.ts';
import type { Headline } from './headline.ts';
import { HowMade, type Step } from './HowMade.tsx';

/** One answer: the number with its interval, the plot, the parts, the method and its gates, and how it was made. */
export function AnswerPage(props: {
  readonly of: AnswerDesk;
  readonly headline: Headline;
  readonly plot: ReactNode;
  readonly parts: ReactNode;
  /** Sentences: by which method, and what it leaves open. */
  readonly method: readonly string[];
  /** Gates that strike it and why it is provisional; empty where all hold. */
  readonly gates: readonly string[];
  readonly steps: readonly Step[];
}) {
  const { gates, method } = props;
  return (
    <>
      <BigNumber headline={props.headline} />
      <div className={styles.columns}>
        <div className={styles.shown}>
          {props.plot}
          {props.parts}
        </div>
        <div className={styles.aside}>
          <section aria-label="Method">
            <h3>Method</h3>
            {method.map((words) => (
              <p key={words}>{words}</p>
            ))}
          </section>
          <section aria-label="Gates">
            <h3>Gates</h3>
            {gates.length === 0 ? (
              <p>All hold.</p>
            ) : (
              <ul className={styles.gates}>
                {gates.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            )}
          </section>
          <HowMade of={props.of} steps={props.steps} />
        </div>
      </div>
    </>
  );
}

function BigNumber({ headline }: { readonly headline: Headline }) {
  if (headline.kind === 'none') {
    return (
      <p className={styles.none} data-act="headline">
        <b>No number</b> <span>{headline.because}</span>
      </p>
    );
  }
  const { value, unit, intervals, of, isStruck } = headline;
  return (
    <p className={styles.big} data-act="headline">
      <b>{isStruck ? <s>{value}</s> : value}</b> <span className={styles.unit}>{unit}</span>
      <span className={styles.beside}>
        {intervals.map((words) => (
          <span key={words}>{words}</span>
        ))}
        <span>{of}</span>
      </span>
    </p>
  );
}
