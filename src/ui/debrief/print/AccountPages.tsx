import { useMemo } from 'react';
import { accountOf } from '../../../analysis/account/account.ts';
import { chapterWords } from '../../../analysis/words/account.ts';
import type { EntryId } from '../../../record/brand.ts';
import { entryLabel } from './entryLabel.ts';
import type { Printed } from './printed.ts';
import styles from './Print.module.css';
import { SheetHead } from './SheetHead.tsx';

const CITED_AT_MOST = 8;

/** The flight in words; each number in brackets leads to its entry on the timeline. */
export function AccountPages(props: {
  readonly printed: Printed;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const { printed } = props;
  const { view } = printed.desk;
  const chapters = useMemo(() => accountOf(view, printed.results), [view, printed]);
  return (
    <>
      <SheetHead printed={printed} what="The flight in words" />
      {chapters.map(({ chapter, sentences }) => (
        <section key={chapter} className={styles.chapter}>
          <h2>{chapterWords(chapter)}</h2>
          {sentences.map(({ text, entries }, place) => (
            <p key={place}>
              {text}{' '}
              {entries.slice(0, CITED_AT_MOST).map((id) => (
                <button
                  key={id}
                  type="button"
                  data-act="account-entry"
                  data-entry={id}
                  onClick={() => props.onOpen(id)}
                >
                  {entryLabel(view, id)}
                </button>
              ))}
              {entries.length > CITED_AT_MOST ? (
                <span> and {entries.length - CITED_AT_MOST} more</span>
              ) : null}
            </p>
          ))}
        </section>
      ))}
      <p>Numbers in brackets are entries of the full log.</p>
    </>
  );
}
