import { useState } from 'react';
import { readTimeline } from '../../../file/readTimeline.ts';
import type { TimelineReading } from '../../../file/timelineReading.ts';
import { findingWords, lineRefusalWords, wholeRefusalWords } from '../../../file/words.ts';
import type { Shelf } from '../../../journal/journal.ts';
import { FilePick } from '../../kit/FilePick.tsx';
import { GroundButton } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import styles from './Files.module.css';

interface Opened {
  readonly name: string;
  readonly reading: TimelineReading;
}

/** Reads a timeline file, damaged ones included, says what was kept and what was put aside, and merges it when told to. */
export function OpenFile({ desk, shelf }: { readonly desk: Desk; readonly shelf: Shelf }) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const [taken, setTaken] = useState<string | null>(null);

  const read = async (file: File): Promise<void> => {
    setTaken(null);
    const text = new TextDecoder().decode(await file.arrayBuffer());
    setOpened({ name: file.name, reading: readTimeline(text, file.size) });
  };
  const takeIn = async (reading: TimelineReading & { readonly kind: 'read' }): Promise<void> => {
    try {
      const { flight, outcome } = await shelf.takeIn(reading.entries);
      const here = flight === desk.journal.flight;
      setTaken(
        `${outcome.added} added, ${outcome.known} known already. ${
          here
            ? 'This flight holds them now.'
            : 'It is kept as another flight of this tablet; open it on Brief.'
        }`,
      );
    } catch {
      setTaken('Not taken in: this tablet could not save them. The file is as it was; try again.');
    }
  };
  return (
    <section aria-label="Open a file" className={styles.part}>
      <h2>Open a timeline file</h2>
      <p>
        From another tablet or from the ground. Reading changes nothing; the own record is never
        altered.
      </p>
      <FilePick
        act="open-file"
        label="Choose a file"
        accept=".jsonl,.txt,.json,application/x-ndjson"
        onFiles={([file]) => {
          if (file !== undefined) void read(file);
        }}
      />
      {opened === null ? null : (
        <Reading
          name={opened.name}
          reading={opened.reading}
          isThisFlight={
            opened.reading.kind === 'read' && opened.reading.header.flight === desk.journal.flight
          }
          onTakeIn={(reading) => void takeIn(reading)}
        />
      )}
      <p role="status" className={styles.taken}>
        {taken}
      </p>
    </section>
  );
}

function Reading(props: {
  readonly name: string;
  readonly reading: TimelineReading;
  readonly isThisFlight: boolean;
  readonly onTakeIn: (reading: TimelineReading & { readonly kind: 'read' }) => void;
}) {
  const { reading } = props;
  if (reading.kind === 'refused') {
    const lines = reading.refusal.reason === 'noEntry' ? reading.refusal.refused : [];
    return (
      <div className={styles.reading} data-act="file-refused">
        <h3>{props.name}</h3>
        <p role="alert">
          <b>{wholeRefusalWords(reading.refusal)}</b>
        </p>
        <Sentences words={lines.map(lineRefusalWords)} />
      </div>
    );
  }
  const { header, entries, refused, findings } = reading;
  const nature = header.nature === 'flight' ? '' : `${header.nature}: `;
  return (
    <div className={styles.reading} data-act="file-read">
      <h3>{props.name}</h3>
      <p>
        <b>
          {nature}
          {header.title || 'no title'}, {header.date || 'no date'}.
        </b>{' '}
        {entries.length} entries kept, {refused.length} lines put aside.{' '}
        {props.isThisFlight ? 'It is this flight.' : 'It is another flight.'}
      </p>
      <Sentences words={[...findings.map(findingWords), ...refused.map(lineRefusalWords)]} />
      <GroundButton act="take-in" strong onPress={() => props.onTakeIn(reading)}>
        {props.isThisFlight ? 'Merge into this flight' : 'Keep as a flight of this tablet'}
      </GroundButton>
    </div>
  );
}

const SENTENCES_AT_MOST = 200;

function Sentences({ words }: { readonly words: readonly string[] }) {
  return words.length === 0 ? null : (
    <ul className={styles.sentences}>
      {words.slice(0, SENTENCES_AT_MOST).map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
      {words.length > SENTENCES_AT_MOST ? (
        <li>And {words.length - SENTENCES_AT_MOST} more of the same kinds.</li>
      ) : null}
    </ul>
  );
}
