import { useState } from 'react';
import type { EpochMs } from '../../../record/brand.ts';
import type { Draft } from '../../../record/entry.ts';
import type { KnownKind } from '../../../record/kinds.ts';
import { kindWords } from '../../../record/kindWords.ts';
import { items } from '../../../record/trail.ts';
import { ChoiceField, NumberField, readNumber, TextField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { isoDate } from '../../kit/time.ts';
import { typedTimeOf, type Desk } from '../context.ts';
import { FieldInput } from '../fields/FieldInput.tsx';
import { fieldLabel } from '../fields/labels.ts';
import { typedInstant } from '../timeWords.ts';
import { FormFoot } from './FormFoot.tsx';
import styles from './Forms.module.css';
import { LATE_KINDS, lateBody, lateDraft, lateFields, type LateFault } from './lateEntry.ts';
import { LateReadings, readingsOf } from './LateReadings.tsx';

const BASES = [
  { value: 'late', label: 'late' },
  { value: 'seen', label: 'seen' },
  { value: 'heard', label: 'heard' },
  { value: 'instrument', label: 'instrument' },
  { value: 'transcribed', label: 'transcribed' },
] as const;

/** An event that nobody wrote at the time: its own time, the doubt of it, and what it is known from. */
export function LateForm({ desk, onDone }: { readonly desk: Desk; readonly onDone: () => void }) {
  const { state } = desk.view;
  const [kind, setKind] = useState<KnownKind>('moistureEntered');
  const [date, setDate] = useState(() => isoDate(flightDayOf(desk)));
  const [clock, setClock] = useState('');
  const [doubt, setDoubt] = useState(String(state.sheet?.timeDoubts.lateS ?? ''));
  const [basis, setBasis] = useState<(typeof BASES)[number]['value']>('late');
  const [basisWords, setBasisWords] = useState('');
  const [typed, setTyped] = useState<ReadonlyMap<string, string>>(new Map());
  const [figures, setFigures] = useState<ReadonlyMap<string, string>>(new Map());
  const [fault, setFault] = useState<LateFault | null>(null);

  const save = (): void => {
    const shown = typedInstant(date, clock);
    const doubtS = readNumber(doubt);
    const readings = readingsOf(state.sheet, figures);
    if (shown === null) {
      setFault({ path: 'time', words: 'A time is HH:MM:SS, in UTC.' });
      return;
    }
    if (doubtS.kind === 'fault' || readings === null) {
      setFault({ path: 'doubt', words: 'Doubt and readings are figures.' });
      return;
    }
    const time = typedTimeOf(desk, shown);
    const fixed = {
      at: time.raw(shown),
      basis,
      ...(doubtS.kind === 'number' ? { doubtS: doubtS.value } : {}),
      ...(basisWords.trim() === '' ? {} : { basisWords: basisWords.trim() }),
      ...(readings.length === 0 ? {} : { readings }),
    };
    const body = lateBody({ kind, typed, fixed, time });
    if (!body.ok) {
      setFault(body.error);
      return;
    }
    void desk.writer
      .write(
        (stamp): Draft => lateDraft(kind, body.value, stamp),
        `Late entry written: ${kindWords(kind)}.`,
      )
      .then((entry) => (entry === null ? undefined : onDone()));
  };
  const fields = lateFields(kind);
  const faultAt = (path: string): string | null => (fault?.path === path ? fault.words : null);
  const isShown =
    fault !== null && ['time', 'doubt', ...fields.map(({ path }) => path)].includes(fault.path);
  return (
    <div className={styles.form}>
      <ChoiceField
        act="kind"
        label="Event"
        value={kind}
        onChange={(value) => {
          const chosen = LATE_KINDS.find((one) => one === value);
          if (chosen !== undefined) {
            setKind(chosen);
            setFault(null);
          }
        }}
        choices={LATE_KINDS.map((one) => ({ value: one, label: kindWords(one) }))}
      />
      <div className={styles.three}>
        <TextField act="date" label="Date, UTC" value={date} onChange={setDate} />
        <TextField
          act="time"
          label="Time, Z (needed)"
          hint="HH:MM:SS"
          value={clock}
          fault={faultAt('time')}
          onChange={setClock}
        />
        <NumberField
          act="doubt"
          label="Doubt"
          unit="s"
          value={doubt}
          fault={faultAt('doubt')}
          onChange={setDoubt}
        />
      </div>
      <ChipField act="basis" label="Basis" value={basis} choices={BASES} onChange={setBasis} />
      <TextField
        act="basis-words"
        label="Known from"
        hint="as intercom and photo panel"
        value={basisWords}
        onChange={setBasisWords}
      />
      <div className={styles.fields}>
        {fields.map((form) => (
          <FieldInput
            key={form.path}
            form={form}
            label={fieldLabel(form.path, state.sheet)}
            typed={typed.get(form.path) ?? ''}
            choices={choicesFor(desk, form.path)}
            fault={faultAt(form.path)}
            onTyped={(text) => setTyped(new Map(typed).set(form.path, text))}
          />
        ))}
      </div>
      <LateReadings sheet={state.sheet} kind={kind} figures={figures} onFigures={setFigures} />
      <FormFoot
        fault={
          fault === null || isShown
            ? null
            : `${fieldLabel(fault.path, state.sheet)}: ${fault.words}`
        }
        words="Write late entry"
        isSaving={desk.writer.isSaving}
        onSave={save}
      />
    </div>
  );
}

/** The day of lift-off: a late entry is nearly always of the flight, not of the day it is written on. */
function flightDayOf({ view, clock }: Desk): EpochMs {
  const { milestones, openedAt } = view.state;
  return milestones.liftOff?.at ?? milestones.blocksOff?.at ?? openedAt ?? clock.now();
}

/** What the flight sheet and the record already know, where a field names one of them. */
function choicesFor(desk: Desk, path: string): readonly string[] | undefined {
  const { sheet, samples } = desk.view.state;
  switch (path) {
    case 'point':
      return sheet?.testCards.map(({ id }) => id);
    case 'panel':
      return sheet?.panels.map(({ id }) => id);
    case 'sample':
      return samples.length === 0 ? undefined : [...items(samples)].map(({ sample }) => sample);
    default:
      return undefined;
  }
}
