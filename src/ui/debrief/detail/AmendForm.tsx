import { useState } from 'react';
import type { StandingEntry } from '../../../record/flightState.ts';
import { ChoiceField, GroundButton, NumberField, TextField } from '../../kit/Ground.tsx';
import { typedTimeOf, type Desk } from '../context.ts';
import { FieldInput } from '../fields/FieldInput.tsx';
import { fieldLabel } from '../fields/labels.ts';
import {
  AMEND_CODES,
  amendFields,
  changesOf,
  keepChange,
  replacesOf,
  typedField,
  unfitField,
  type AmendCode,
  type AmendField,
} from './amendment.ts';
import styles from './EntryDetail.module.css';

/** Amends field by field: the old value stays readable, and who, when and why are written with the new one. */
export function AmendForm(props: {
  readonly desk: Desk;
  readonly standing: StandingEntry;
  readonly onDone: () => void;
}) {
  const { desk, standing } = props;
  const { sheet } = desk.view.state;
  const time = typedTimeOf(desk, desk.base.shown(standing.at, standing.entry.rec));
  const { present, absent } = amendFields(standing.effective, sheet);
  const [typed, setTyped] = useState<ReadonlyMap<string, string>>(new Map());
  const [added, setAdded] = useState<readonly string[]>([]);
  const [kept, setKept] = useState<readonly string[]>([]);
  const [code, setCode] = useState<AmendCode | null>(null);
  const [reason, setReason] = useState('');
  const [evidence, setEvidence] = useState('');
  const [second, setSecond] = useState('');
  const [fault, setFault] = useState<string | null>(null);

  const offered = [...present, ...absent.filter(({ path }) => added.includes(path))];
  const keyed = changesOf(offered, typed, time);
  const keptChanges = offered.flatMap((field) =>
    field.kind === 'reading' &&
    field.isQueried &&
    kept.includes(field.path) &&
    !typed.has(field.path)
      ? [keepChange(field)]
      : [],
  );
  const changes = [...keyed.changes, ...keptChanges];

  const save = (): void => {
    const unfit = unfitField(standing.effective, changes);
    const words = faultOf(
      keyed.faults.size > 0,
      changes.length,
      code,
      unfit && fieldLabel(unfit, sheet),
    );
    setFault(words);
    if (words !== null || code === null) {
      return;
    }
    const codeWords = AMEND_CODES.find((one) => one.code === code)?.words ?? '';
    void desk.writer
      .write(
        (stamp) => ({
          kind: 'entryAmended',
          stamp,
          body: {
            target: standing.entry.id,
            replaces: replacesOf(standing),
            changes,
            code,
            reason: reason.trim() === '' ? codeWords : reason.trim(),
            ...(evidence.trim() === '' ? {} : { basisWords: evidence.trim() }),
            ...(second.trim() === '' ? {} : { countersignedBy: second.trim() }),
          },
        }),
        `Amended: ${changes.map(({ field }) => fieldLabel(field, sheet)).join(', ')}.`,
      )
      .then((entry) => {
        if (entry !== null) {
          props.onDone();
        }
      });
  };

  return (
    <section className={styles.form} aria-label="Amend">
      <h3 className={styles.sub}>Amend</h3>
      <div className={styles.fields}>
        {offered.map((field) => (
          <AmendInput
            key={field.path}
            field={field}
            label={fieldLabel(field.path, sheet)}
            typed={typed.get(field.path) ?? typedField(field, time)}
            fault={keyed.faults.get(field.path) ?? null}
            onTyped={(text) => setTyped(new Map(typed).set(field.path, text))}
          />
        ))}
      </div>
      {offered.map((field) =>
        field.kind === 'reading' && field.isQueried ? (
          <GroundButton
            key={field.path}
            act={`keep-${field.instrument}`}
            pressed={kept.includes(field.path)}
            onPress={() => {
              setKept([...kept, field.path]);
              setCode('kept');
            }}
          >
            Keep {field.instrument} as read
          </GroundButton>
        ) : null,
      )}
      <ChoiceField
        act="amend-add"
        label="Another field"
        value=""
        onChange={(path) => setAdded([...added, path])}
        choices={[
          { value: '', label: 'choose' },
          ...absent
            .filter(({ path }) => !added.includes(path))
            .map(({ path }) => ({ value: path, label: fieldLabel(path, sheet) })),
        ]}
      />
      <fieldset className={styles.codes}>
        <legend>Why</legend>
        {AMEND_CODES.map((one) => (
          <GroundButton
            key={one.code}
            act={`code-${one.code}`}
            pressed={code === one.code}
            onPress={() => setCode(one.code)}
          >
            {one.words}
          </GroundButton>
        ))}
      </fieldset>
      <div className={styles.fields}>
        <TextField act="reason" label="In words" value={reason} onChange={setReason} />
        <TextField
          act="basis"
          label="Evidence"
          hint="as photo panel frame"
          value={evidence}
          onChange={setEvidence}
        />
        <TextField act="countersigned" label="Agreed by" value={second} onChange={setSecond} />
      </div>
      {fault === null ? null : (
        <p className={styles.fault} role="alert">
          {fault}
        </p>
      )}
      <div className={styles.actions}>
        <GroundButton act="save" strong disabled={desk.writer.isSaving} onPress={save}>
          Write amendment
        </GroundButton>
        <GroundButton act="form-cancel" onPress={props.onDone}>
          Cancel
        </GroundButton>
      </div>
    </section>
  );
}

function AmendInput(props: {
  readonly field: AmendField;
  readonly label: string;
  readonly typed: string;
  readonly fault: string | null;
  readonly onTyped: (typed: string) => void;
}) {
  const { field } = props;
  return field.kind === 'reading' ? (
    <NumberField
      act={`field-${field.path}`}
      label={props.label}
      value={props.typed}
      onChange={props.onTyped}
      fault={props.fault}
    />
  ) : (
    <FieldInput {...props} form={{ ...field.form, isRequired: false }} />
  );
}

function faultOf(
  hasFaults: boolean,
  changeCount: number,
  code: AmendCode | null,
  unfit: string | null,
): string | null {
  if (hasFaults) {
    return 'Put the marked field right first.';
  }
  if (changeCount === 0) {
    return 'Nothing was changed yet.';
  }
  if (code === null) {
    return 'Say why: choose a reason.';
  }
  return unfit === null ? null : `${unfit} cannot stand so.`;
}
