import { useState } from 'react';
import { unitWords } from '../../../record/sheetMeasure.ts';
import { ChoiceField, NumberField, TextField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import type { Desk } from '../context.ts';
import { certificateOf, type TypedCertificate } from './calibrated.ts';
import { FormFoot } from './FormFoot.tsx';
import styles from './Forms.module.css';

const CONDITIONS = [
  { value: 'asFound', label: 'as found' },
  { value: 'asLeft', label: 'as left' },
] as const;

const BLANK: TypedCertificate = {
  instrument: '',
  condition: 'asFound',
  calibratedOn: '',
  dueOn: '',
  correction: '',
  table: '',
  common: '',
  independent: '',
  reason: '',
};

/** A certificate that came after the flight: every number is worked out anew, and what was said before stays readable. */
export function CalibratedForm({
  desk,
  onDone,
}: {
  readonly desk: Desk;
  readonly onDone: () => void;
}) {
  const { sheet, date } = desk.view.state;
  const [typed, setTyped] = useState<TypedCertificate>(BLANK);
  const [fault, setFault] = useState<string | null>(null);
  const instruments = sheet?.instruments ?? [];
  const chosen = instruments.find(({ id }) => id === typed.instrument);
  const unit = chosen === undefined ? '' : unitWords(chosen.unit);
  const put =
    (name: keyof TypedCertificate) =>
    (text: string): void =>
      setTyped({ ...typed, [name]: text });
  const isOfLater =
    typed.condition === 'asLeft' && date !== null && typed.calibratedOn.trim() > date;

  const save = (): void => {
    const body = certificateOf(typed);
    if (!body.ok) {
      setFault(body.error);
      return;
    }
    void desk.writer
      .write(
        (stamp) => ({ kind: 'instrumentCalibrated', stamp, body: body.value }),
        `Calibration of ${body.value.instrument} written; the numbers are worked out anew.`,
      )
      .then((entry) => (entry === null ? undefined : onDone()));
  };
  return (
    <div className={styles.form}>
      <p className={styles.quiet}>
        One certificate of one instrument. What is left empty stays as it was; readings are never
        changed, only what they come to.
      </p>
      <div className={styles.pair}>
        <ChoiceField
          act="instrument"
          label="Instrument"
          value={typed.instrument}
          onChange={put('instrument')}
          choices={[
            { value: '', label: 'choose' },
            ...instruments.map(({ id, name }) => ({ value: id, label: `${id} ${name}` })),
          ]}
        />
        <ChipField
          act="condition"
          label="Found how"
          value={typed.condition}
          choices={CONDITIONS}
          onChange={put('condition')}
          hint={
            isOfLater
              ? 'As left after the flight says nothing of this flight.'
              : 'As found speaks of the flights before it too.'
          }
        />
      </div>
      <div className={styles.pair}>
        <TextField
          act="calibrated-on"
          label="Calibrated on (needed)"
          hint="YYYY-MM-DD"
          value={typed.calibratedOn}
          onChange={put('calibratedOn')}
        />
        <TextField
          act="due-on"
          label="Due on"
          hint="YYYY-MM-DD"
          value={typed.dueOn}
          onChange={put('dueOn')}
        />
      </div>
      <div className={styles.three}>
        <NumberField
          act="correction"
          label="Correction, added to the reading"
          unit={unit}
          value={typed.correction}
          onChange={put('correction')}
        />
        <NumberField
          act="common"
          label="Doubt shared by all readings, 1 σ"
          unit={unit}
          value={typed.common}
          onChange={put('common')}
        />
        <NumberField
          act="independent"
          label="Doubt new with each, 1 σ"
          unit={unit}
          value={typed.independent}
          onChange={put('independent')}
        />
      </div>
      <TextField
        act="table"
        label="Or a table of corrections"
        hint="One line a row: reading and correction, as 800 −3"
        long
        value={typed.table}
        onChange={put('table')}
      />
      <TextField
        act="reason"
        label="Why (needed)"
        hint="as certificate 117, gauge read high on the bench"
        value={typed.reason}
        onChange={put('reason')}
      />
      <FormFoot
        fault={fault}
        words="Write calibration"
        isSaving={desk.writer.isSaving}
        onSave={save}
      />
    </div>
  );
}
