import { useState } from 'react';
import type { EntryId } from '../../../record/brand.ts';
import { entryWords } from '../../../record/lang.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { isStruck } from '../standing.ts';
import styles from './Answers.module.css';
import { timeOf, type AnswerDesk } from './answerDesk.ts';

/** One step from touches to the number. */
export interface Step {
  readonly words: string;
  readonly entries: readonly EntryId[];
}

/** How a number was made, step by step, each down to the entries that it rests on. */
export function HowMade({
  of,
  steps,
}: {
  readonly of: AnswerDesk;
  readonly steps: readonly Step[];
}) {
  const [opened, setOpened] = useState<string | null>(null);
  return (
    <section className={styles.how} aria-label="How this was made">
      <h3>How this was made</h3>
      <ol>
        {steps.map(({ words, entries }, index) => {
          const key = `${index} ${words}`;
          const isOpen = opened === key;
          return (
            <li key={key}>
              <div className={styles.step}>
                <p>{words}</p>
                {entries.length === 0 ? null : (
                  <button
                    type="button"
                    className={styles.entriesKey}
                    data-act={`step-${index + 1}`}
                    aria-expanded={isOpen}
                    onClick={() => setOpened(isOpen ? null : key)}
                  >
                    {isOpen
                      ? 'Hide'
                      : entries.length === 1
                        ? '1 entry'
                        : `${entries.length} entries`}
                  </button>
                )}
              </div>
              {isOpen ? <EntryList of={of} entries={entries} /> : null}
            </li>
          );
        })}
      </ol>
      {steps.length === 0 ? (
        <p className={styles.quiet}>Nothing was written that it could rest on.</p>
      ) : null}
    </section>
  );
}

/** Entries in order of time, in the words of the log, each a way to its place on the timeline. */
function EntryList({
  of,
  entries,
}: {
  readonly of: AnswerDesk;
  readonly entries: readonly EntryId[];
}) {
  const { view } = of.desk;
  const found = [...new Set(entries)]
    .flatMap((id) => view.byId(id) ?? [])
    .toSorted((a, b) => a.at - b.at);
  return (
    <ul className={styles.entries} aria-label="Entries">
      {found.map((standing) => (
        <li key={standing.entry.id}>
          <span>{timeOf(of.desk, standing.at, standing.entry.id)}</span>
          <span>
            {entryWords(standing.effective, view.state.sheet)}
            {standing.amendedBy.length > 0 ? <small> as amended</small> : null}
            {isStruck(standing) ? <small> withdrawn</small> : null}
          </span>
          <GroundButton act="open-entry" onPress={() => of.onOpen(standing.entry.id)}>
            Open
          </GroundButton>
        </li>
      ))}
      {found.length < new Set(entries).size ? (
        <li>
          <span />
          <span className={styles.quiet}>
            {new Set(entries).size - found.length} more in other flights
          </span>
        </li>
      ) : null}
    </ul>
  );
}
