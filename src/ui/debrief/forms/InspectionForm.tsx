import { useState } from 'react';
import { NOT_YET_INSPECTED } from '../../../analysis/encounters/surface.ts';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import { FormFoot } from './FormFoot.tsx';
import styles from './Forms.module.css';

/** What was found on each panel before anything was wiped. Not yet inspected is said, never left blank. */
export function InspectionForm({
  desk,
  onDone,
}: {
  readonly desk: Desk;
  readonly onDone: () => void;
}) {
  const panels = desk.view.state.sheet?.panels ?? [];
  const [found, setFound] = useState<ReadonlyMap<string, string>>(new Map());
  const [fault, setFault] = useState<string | null>(null);
  const set = (panel: string, words: string): void => setFound(new Map(found).set(panel, words));

  const save = (): void => {
    if ([...found.values()].every((words) => words.trim() === '')) {
      setFault('Say what was found on one panel at least.');
      return;
    }
    const findings = panels.map(({ id }) => ({
      panel: id,
      finding: (found.get(id) ?? '').trim() || NOT_YET_INSPECTED,
    }));
    void desk.writer
      .write(
        (stamp) => ({ kind: 'panelsInspected', stamp, body: { findings } }),
        'Inspection written.',
      )
      .then((entry) => (entry === null ? undefined : onDone()));
  };
  return (
    <div className={styles.form}>
      <p className={styles.quiet}>A panel left empty is written as “{NOT_YET_INSPECTED}”.</p>
      {panels.map(({ id }) => (
        <div key={id} className={styles.panelRow}>
          <TextField
            act={`finding-${id}`}
            label={`Panel ${id}`}
            value={found.get(id) ?? ''}
            onChange={(words) => set(id, words)}
          />
          <GroundButton
            act={`clean-${id}`}
            pressed={found.get(id) === 'clean'}
            onPress={() => set(id, 'clean')}
          >
            clean
          </GroundButton>
          <GroundButton
            act={`not-yet-${id}`}
            pressed={found.get(id) === NOT_YET_INSPECTED}
            onPress={() => set(id, NOT_YET_INSPECTED)}
          >
            not yet
          </GroundButton>
        </div>
      ))}
      <FormFoot
        fault={fault}
        words="Write inspection"
        isSaving={desk.writer.isSaving}
        onSave={save}
      />
    </div>
  );
}
