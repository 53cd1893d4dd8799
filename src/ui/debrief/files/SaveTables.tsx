import { useMemo } from 'react';
import { timelineFileName } from '../../../file/names.ts';
import { entriesTable, readingsTable } from '../../../file/tables.ts';
import { headerOf } from '../../../file/timelineFile.ts';
import type { Desk } from '../context.ts';
import { meaningOf } from './meaning.ts';
import { useBytesOf } from './useBytesOf.ts';
import styles from './Files.module.css';

/** Tables for a spreadsheet, made from the record as it stands. The timeline file is the record; these are views of it. */
export function SaveTables({ desk }: { readonly desk: Desk }) {
  const { view, base, journal } = desk;
  const entries = journal.entries();
  const { standing, state } = view;
  const meaning = useMemo(() => meaningOf({ view, base }), [view, base]);
  const entriesText = useMemo(
    () => entriesTable(standing, state.sheet, meaning),
    [standing, state, meaning],
  );
  const readingsText = useMemo(
    () => readingsTable(standing, state.sheet, meaning),
    [standing, state, meaning],
  );
  const name = entries.length === 0 ? null : timelineFileName(headerOf(entries));
  return name === null ? null : (
    <section aria-label="Save tables" className={styles.part}>
      <h2>Save tables for a spreadsheet</h2>
      <p>One header row, times in UTC, as read beside as amended. Withdrawn entries are marked.</p>
      <Table
        act="save-entries-table"
        words="every entry"
        name={name.replace(/jsonl$/, 'entries.csv')}
        text={entriesText}
      />
      <Table
        act="save-readings-table"
        words="every reading"
        name={name.replace(/jsonl$/, 'readings.csv')}
        text={readingsText}
      />
    </section>
  );
}

function Table(props: {
  readonly act: string;
  readonly words: string;
  readonly name: string;
  readonly text: string;
}) {
  const bytes = useMemo(() => new TextEncoder().encode(props.text), [props.text]);
  const link = useBytesOf(bytes, 'text/csv;charset=utf-8');
  return (
    <a
      data-act={props.act}
      className={styles.key}
      href={`#${props.name}`}
      ref={link}
      download={props.name}
    >
      Save {props.words}
    </a>
  );
}
