import { useState } from 'react';
import type { EntryId } from '../../../record/brand.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { whyReadOnly, type Desk } from '../context.ts';
import page from '../Debrief.module.css';
import { NoteForm } from '../detail/NoteForm.tsx';
import { CalibratedForm } from './CalibratedForm.tsx';
import styles from './Forms.module.css';
import { HandoverForm } from './HandoverForm.tsx';
import { InspectionForm } from './InspectionForm.tsx';
import { LabForm } from './LabForm.tsx';
import { LateForm } from './LateForm.tsx';
import { MaintenanceForm } from './MaintenanceForm.tsx';
import { SquawkForm } from './SquawkForm.tsx';
import { PenName } from './PenName.tsx';
import { UpliftForm } from './UpliftForm.tsx';
import { Written } from './Written.tsx';

const FORMS = [
  { id: 'handover', words: 'Samples handed over' },
  { id: 'inspection', words: 'Panel inspection' },
  { id: 'squawk', words: 'Squawk' },
  { id: 'maintenance', words: 'Maintenance' },
  { id: 'lab', words: 'Lab result' },
  { id: 'calibration', words: 'Calibration' },
  { id: 'uplift', words: 'Fuel uplift' },
  { id: 'late', words: 'Late entry' },
  { id: 'note', words: 'Note' },
] as const;
type FormId = (typeof FORMS)[number]['id'];

/** What is written after the flight; each form adds one entry, and after a signature that entry is an addendum. */
export function FormsTab({
  desk,
  onOpen,
}: {
  readonly desk: Desk;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const [form, setForm] = useState<FormId>('handover');
  const [written, setWritten] = useState(0);
  const readOnly = whyReadOnly(desk.journal);
  const done = (): void => setWritten((count) => count + 1);
  const isSigned = desk.view.state.signed.length > 0;
  return (
    <div className={page.twoColumns}>
      <section aria-label="Forms">
        <div className={styles.chooser} role="group" aria-label="Which form">
          {FORMS.map(({ id, words }) => (
            <GroundButton
              key={id}
              act={`form-${id}`}
              pressed={id === form}
              onPress={() => setForm(id)}
            >
              {words}
            </GroundButton>
          ))}
        </div>
        {isSigned ? (
          <p className={styles.quiet}>
            The log is signed: what is written now stands as an addendum.
          </p>
        ) : null}
        {readOnly === null ? (
          <Form key={written} form={form} desk={desk} onDone={done} />
        ) : (
          <p>{readOnly}</p>
        )}
      </section>
      <div className={page.side}>
        <Written desk={desk} form={form} onOpen={onOpen} />
        <PenName desk={desk} />
      </div>
    </div>
  );
}

function Form({
  form,
  desk,
  onDone,
}: {
  readonly form: FormId;
  readonly desk: Desk;
  readonly onDone: () => void;
}) {
  switch (form) {
    case 'handover':
      return <HandoverForm desk={desk} onDone={onDone} />;
    case 'inspection':
      return <InspectionForm desk={desk} onDone={onDone} />;
    case 'squawk':
      return <SquawkForm desk={desk} onDone={onDone} />;
    case 'maintenance':
      return <MaintenanceForm desk={desk} onDone={onDone} />;
    case 'lab':
      return <LabForm desk={desk} onDone={onDone} />;
    case 'calibration':
      return <CalibratedForm desk={desk} onDone={onDone} />;
    case 'uplift':
      return <UpliftForm desk={desk} onDone={onDone} />;
    case 'late':
      return <LateForm desk={desk} onDone={onDone} />;
    case 'note':
      return <NoteForm desk={desk} target={null} onDone={onDone} />;
  }
}
