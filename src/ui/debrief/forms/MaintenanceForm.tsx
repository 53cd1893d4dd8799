import { useState } from 'react';
import { ChoiceField, NumberField, readNumber, TextField } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import { FormFoot, optional } from './FormFoot.tsx';
import styles from './Forms.module.css';
import { PanelToggles, placesOf } from './PanelToggles.tsx';

/** What the ground crew did, on which panels, with what and for how long. */
export function MaintenanceForm({
  desk,
  onDone,
}: {
  readonly desk: Desk;
  readonly onDone: () => void;
}) {
  const [squawk, setSquawk] = useState('');
  const [panels, setPanels] = useState<readonly string[]>([]);
  const [other, setOther] = useState('');
  const [action, setAction] = useState('');
  const [material, setMaterial] = useState('');
  const [labour, setLabour] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const raised = desk.view.standing.flatMap(({ effective, standing }) =>
    standing === 'stands' && effective.kind === 'squawkRaised' ? [effective.body.squawk] : [],
  );

  const save = (): void => {
    const labourH = readNumber(labour);
    if (action.trim() === '') {
      setFault('Say what was done.');
    } else if (labourH.kind === 'fault') {
      setFault('Labour is a number of hours, as 4.5.');
    } else {
      const hours = labourH.kind === 'number' ? { labourH: labourH.value } : {};
      void desk.writer
        .write(
          (stamp) => ({
            kind: 'maintenanceDone',
            stamp,
            body: {
              panels: placesOf(desk, panels, other),
              action: action.trim(),
              ...optional('squawk', squawk),
              ...optional('material', material),
              ...hours,
            },
          }),
          'Maintenance written.',
        )
        .then((entry) => (entry === null ? undefined : onDone()));
    }
  };
  return (
    <div className={styles.form}>
      <ChoiceField
        act="squawk"
        label="Closes squawk"
        value={squawk}
        onChange={setSquawk}
        choices={[{ value: '', label: 'none' }, ...raised.map((id) => ({ value: id, label: id }))]}
      />
      <PanelToggles desk={desk} chosen={panels} onChange={setPanels} />
      <TextField act="panels-other" label="Or where" value={other} onChange={setOther} />
      <TextField
        act="action"
        label="What was done (needed)"
        long
        value={action}
        onChange={setAction}
      />
      <div className={styles.pair}>
        <TextField act="material" label="Material" value={material} onChange={setMaterial} />
        <NumberField act="labour" label="Labour" unit="h" value={labour} onChange={setLabour} />
      </div>
      <FormFoot
        fault={fault}
        words="Write maintenance"
        isSaving={desk.writer.isSaving}
        onSave={save}
      />
    </div>
  );
}
