import { useState } from 'react';
import type { StandingEntry } from '../../../record/flightState.ts';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import styles from './EntryDetail.module.css';

/** Strikes an entry out of the standing record; it stays readable in the audit. */
export function WithdrawForm(props: {
  readonly desk: Desk;
  readonly standing: StandingEntry;
  readonly onDone: () => void;
}) {
  const [reason, setReason] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const save = (): void => {
    if (reason.trim() === '') {
      setFault('Say why in a few words.');
      return;
    }
    void props.desk.writer
      .write(
        (stamp) => ({
          kind: 'entryWithdrawn',
          stamp,
          body: { target: props.standing.entry.id, reason: reason.trim() },
        }),
        'Withdrawn. It stays readable in the audit.',
      )
      .then((entry) => {
        if (entry !== null) {
          props.onDone();
        }
      });
  };
  return (
    <section className={styles.form} aria-label="Withdraw">
      <h3 className={styles.sub}>Withdraw</h3>
      <TextField act="reason" label="Why" value={reason} fault={fault} onChange={setReason} />
      <div className={styles.actions}>
        {['wrong button', 'entered twice', 'did not happen'].map((words) => (
          <GroundButton
            key={words}
            act={`reason-${words.replaceAll(' ', '-')}`}
            onPress={() => setReason(words)}
          >
            {words}
          </GroundButton>
        ))}
      </div>
      <div className={styles.actions}>
        <GroundButton act="save" strong disabled={props.desk.writer.isSaving} onPress={save}>
          Write withdrawal
        </GroundButton>
        <GroundButton act="form-cancel" onPress={props.onDone}>
          Cancel
        </GroundButton>
      </div>
    </section>
  );
}
