import { useState } from 'react';
import type { StandingEntry } from '../../../record/flightState.ts';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import styles from './EntryDetail.module.css';

/** Words about an entry, or about the flight where there is no target. */
export function NoteForm(props: {
  readonly desk: Desk;
  readonly target: StandingEntry | null;
  readonly onDone: () => void;
}) {
  const [words, setWords] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const save = (): void => {
    if (words.trim() === '') {
      setFault('Write the note first.');
      return;
    }
    const target = props.target === null ? {} : { target: props.target.entry.id };
    void props.desk.writer
      .write(
        (stamp) => ({ kind: 'noted', stamp, body: { words: words.trim(), ...target } }),
        'Note written.',
      )
      .then((entry) => {
        if (entry !== null) {
          props.onDone();
        }
      });
  };
  return (
    <section className={styles.form} aria-label="Note">
      <h3 className={styles.sub}>Note</h3>
      <TextField act="words" label="Note" long value={words} fault={fault} onChange={setWords} />
      <div className={styles.actions}>
        <GroundButton act="save" strong disabled={props.desk.writer.isSaving} onPress={save}>
          Write note
        </GroundButton>
        <GroundButton act="form-cancel" onPress={props.onDone}>
          Cancel
        </GroundButton>
      </div>
    </section>
  );
}
