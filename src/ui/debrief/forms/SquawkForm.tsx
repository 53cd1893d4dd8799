import { useState } from 'react';
import { NumberField, readNumber, TextField } from '../../kit/Ground.tsx';
import type { EntryId } from '../../../record/brand.ts';
import type { Desk } from '../context.ts';
import { EvidenceToggles } from './EvidenceToggles.tsx';
import { FormFoot, optional } from './FormFoot.tsx';
import styles from './Forms.module.css';
import { PanelToggles, placesOf } from './PanelToggles.tsx';

/** A fault for the ground crew: where, what, how bad, and the labour it is thought to take. */
export function SquawkForm({ desk, onDone }: { readonly desk: Desk; readonly onDone: () => void }) {
  const [squawk, setSquawk] = useState(() => nextSquawk(desk));
  const [panels, setPanels] = useState<readonly string[]>([]);
  const [other, setOther] = useState('');
  const [words, setWords] = useState('');
  const [severity, setSeverity] = useState('');
  const [labour, setLabour] = useState('');
  const [evidence, setEvidence] = useState<readonly EntryId[]>([]);
  const [fault, setFault] = useState<string | null>(null);
  const places = placesOf(desk, panels, other);

  const save = (): void => {
    const labourH = readNumber(labour);
    if (squawk.trim() === '' || words.trim() === '' || places.length === 0) {
      setFault('Give its number, where it is and what is wrong.');
    } else if (labourH.kind === 'fault') {
      setFault('Labour is a number of hours, as 4.5.');
    } else {
      const hours = labourH.kind === 'number' ? { labourH: labourH.value } : {};
      void desk.writer
        .write(
          (stamp) => ({
            kind: 'squawkRaised',
            stamp,
            body: {
              squawk: squawk.trim(),
              panels: places,
              words: words.trim(),
              ...optional('severity', severity),
              ...hours,
              ...(evidence.length === 0 ? {} : { evidence }),
            },
          }),
          `Squawk ${squawk.trim()} written.`,
        )
        .then((entry) => (entry === null ? undefined : onDone()));
    }
  };
  return (
    <div className={styles.form}>
      <TextField act="squawk" label="Squawk (needed)" value={squawk} onChange={setSquawk} />
      <PanelToggles desk={desk} chosen={panels} onChange={setPanels} />
      <TextField
        act="panels-other"
        label="Or where"
        hint="as cabin, or all"
        value={other}
        onChange={setOther}
      />
      <TextField
        act="words"
        label="What is wrong, what to do (needed)"
        long
        value={words}
        onChange={setWords}
      />
      <EvidenceToggles desk={desk} panels={places} chosen={evidence} onChange={setEvidence} />
      <div className={styles.pair}>
        <TextField act="severity" label="Severity" value={severity} onChange={setSeverity} />
        <NumberField act="labour" label="Labour" unit="h" value={labour} onChange={setLabour} />
      </div>
      <FormFoot fault={fault} words="Write squawk" isSaving={desk.writer.isSaving} onSave={save} />
    </div>
  );
}

/** The next free number, in the form that the last squawk had. */
function nextSquawk(desk: Desk): string {
  let last = 'SQ-0';
  for (const { effective, standing } of desk.view.standing) {
    if (standing === 'stands' && effective.kind === 'squawkRaised') {
      last = effective.body.squawk;
    }
  }
  const [, head = 'SQ-', number = '0'] = /^(.*?)(\d+)$/.exec(last) ?? [];
  return `${head}${Number(number) + 1}`;
}
