import { useState } from 'react';
import { items } from '../../../record/trail.ts';
import { ChoiceField, NumberField, readNumber, TextField } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import { FormFoot, optional } from './FormFoot.tsx';
import styles from './Forms.module.css';

/** Size and number of the particles in a sample, often days later. A size nobody measured is left out, never zero. */
export function LabForm({ desk, onDone }: { readonly desk: Desk; readonly onDone: () => void }) {
  const taken = [...new Set([...items(desk.view.state.samples)].map(({ sample }) => sample))];
  const [sample, setSample] = useState('');
  const [other, setOther] = useState('');
  const [size, setSize] = useState('');
  const [number, setNumber] = useState('');
  const [method, setMethod] = useState('');
  const [analyst, setAnalyst] = useState('');
  const [fault, setFault] = useState<string | null>(null);

  const save = (): void => {
    const id = other.trim() === '' ? sample : other.trim();
    const meanSize = readNumber(size);
    const perLitre = readNumber(number);
    if (id === '') {
      setFault('Choose the sample first.');
    } else if (meanSize.kind === 'fault' || perLitre.kind === 'fault') {
      setFault('Size and number are figures, as 34 and 0.6.');
    } else {
      void desk.writer
        .write(
          (stamp) => ({
            kind: 'labResultReceived',
            stamp,
            body: {
              sample: id,
              ...(meanSize.kind === 'number' ? { meanSizeMicrometre: meanSize.value } : {}),
              ...(perLitre.kind === 'number' ? { numberPerLitre: perLitre.value } : {}),
              ...optional('method', method),
              ...optional('analyst', analyst),
            },
          }),
          `Lab result of ${id} written.`,
        )
        .then((entry) => (entry === null ? undefined : onDone()));
    }
  };
  return (
    <div className={styles.form}>
      <div className={styles.pair}>
        <ChoiceField
          act="sample"
          label="Sample"
          value={sample}
          onChange={setSample}
          choices={[
            { value: '', label: 'choose' },
            ...taken.map((id) => ({ value: id, label: id })),
          ]}
        />
        <TextField act="sample-other" label="Or another" value={other} onChange={setOther} />
      </div>
      <div className={styles.pair}>
        <NumberField act="size" label="Mean size" unit="µm" value={size} onChange={setSize} />
        <NumberField
          act="number"
          label="Number"
          unit="a litre"
          value={number}
          onChange={setNumber}
        />
      </div>
      <TextField act="method" label="Method" value={method} onChange={setMethod} />
      <TextField act="analyst" label="Analyst" value={analyst} onChange={setAnalyst} />
      <FormFoot
        fault={fault}
        words="Write lab result"
        isSaving={desk.writer.isSaving}
        onSave={save}
      />
    </div>
  );
}
