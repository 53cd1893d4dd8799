import { useState } from 'react';
import { candidateWords } from '../../../../analysis/words/evidence.ts';
import { TextField } from '../../../kit/Ground.tsx';
import { ChipField } from '../../../kit/GroundChips.tsx';
import type { Desk } from '../../context.ts';
import { FormFoot } from '../../forms/FormFoot.tsx';
import styles from '../Answers.module.css';
import type { LossesTogether } from './lossesTogether.ts';

const OTHER = 'other';

/** A person decides the cause of a loss; what was computed stays beside it, and so does every earlier decision. */
export function CauseForm({
  desk,
  group,
  onDone,
}: {
  readonly desk: Desk;
  readonly group: LossesTogether;
  readonly onDone: () => void;
}) {
  const [chosen, setChosen] = useState<string | null>(null);
  const [other, setOther] = useState('');
  const [reason, setReason] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const names = (group.losses[0]?.evidence ?? []).map(({ candidate }) => candidateWords(candidate));
  const choices = [...names, OTHER].map((words) => ({ value: words, label: words }));

  const save = (): void => {
    const cause = chosen === OTHER ? other.trim() : (chosen ?? '');
    if (cause === '' || reason.trim() === '') {
      setFault(cause === '' ? 'Choose the cause, or say another.' : 'Say why, in a few words.');
      return;
    }
    void desk.writer
      .write(
        (stamp) => ({
          kind: 'causeAssigned',
          stamp,
          body: { target: group.by, cause, reason: reason.trim() },
        }),
        `Cause decided: ${cause}.`,
      )
      .then((entry) => (entry === null ? undefined : onDone()));
  };
  return (
    <div className={styles.decide}>
      <ChipField act="cause" label="Cause" value={chosen} choices={choices} onChange={setChosen} />
      {chosen === OTHER ? (
        <TextField act="cause-other" label="Which other" value={other} onChange={setOther} />
      ) : null}
      <TextField
        act="cause-reason"
        label="Because (needed)"
        hint="what you saw that decides it"
        value={reason}
        onChange={setReason}
      />
      <FormFoot fault={fault} words="Write cause" isSaving={desk.writer.isSaving} onSave={save} />
    </div>
  );
}
