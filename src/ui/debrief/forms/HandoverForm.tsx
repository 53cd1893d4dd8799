import { useState } from 'react';
import { items } from '../../../record/trail.ts';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import { FormFoot, optional } from './FormFoot.tsx';
import styles from './Forms.module.css';

/** Which samples left the crew's hands, to whom, and in what state the seals were. */
export function HandoverForm({
  desk,
  onDone,
}: {
  readonly desk: Desk;
  readonly onDone: () => void;
}) {
  const taken = [...new Set([...items(desk.view.state.samples)].map(({ sample }) => sample))];
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [others, setOthers] = useState('');
  const [to, setTo] = useState('');
  const [seals, setSeals] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const typed = others.split(/[\s,;]+/).filter((word) => word !== '');
  const samples = [...taken.filter((id) => chosen.includes(id)), ...typed];

  const save = (): void => {
    if (samples.length === 0 || to.trim() === '') {
      setFault(samples.length === 0 ? 'Choose the samples first.' : 'Say to whom.');
      return;
    }
    void desk.writer
      .write(
        (stamp) => ({
          kind: 'sampleHandedOver',
          stamp,
          body: { samples, to: to.trim(), ...optional('seals', seals) },
        }),
        `Handed over: ${samples.join(', ')}.`,
      )
      .then((entry) => (entry === null ? undefined : onDone()));
  };
  return (
    <div className={styles.form}>
      <fieldset className={styles.toggles}>
        <legend>Samples of this flight</legend>
        {taken.map((id) => (
          <GroundButton
            key={id}
            act={`sample-${id}`}
            pressed={chosen.includes(id)}
            onPress={() =>
              setChosen(chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id])
            }
          >
            {id}
          </GroundButton>
        ))}
        {taken.length === 0 ? <span className={styles.quiet}>No sample was taken.</span> : null}
      </fieldset>
      <TextField act="samples-other" label="Other samples" value={others} onChange={setOthers} />
      <TextField act="to" label="To (needed)" value={to} onChange={setTo} />
      <TextField act="seals" label="Seals" value={seals} onChange={setSeals} />
      <FormFoot
        fault={fault}
        words="Write handover"
        isSaving={desk.writer.isSaving}
        onSave={save}
      />
    </div>
  );
}
