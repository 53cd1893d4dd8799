import { useState } from 'react';
import type { Unit } from '../../../record/measure.ts';
import { valueAt, type SheetPath } from '../../../record/sheetEdit.ts';
import { unitWords } from '../../../record/sheetMeasure.ts';
import { NumberField, TextField, TickField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { numberText, typedNumber } from '../numberText.ts';
import { useDraft } from './sheetDraft.ts';
import { isMeasure, NOTHING, useNumberText, type NumberAt } from './useNumberText.ts';
import styles from '../Brief.module.css';

interface AtProps {
  readonly path: SheetPath;
  readonly label: string;
  readonly hint?: string;
}

/** A text of the flight sheet. `optional` ones are absent when empty; the record keeps no empty ids. */
export function SheetText(
  props: AtProps & { readonly optional?: boolean; readonly long?: boolean },
) {
  const draft = useDraft();
  const { path, label } = props;
  const stored = valueAt(draft.sheet, path);
  const put = (text: string) =>
    draft.put(path, text === '' && props.optional === true ? undefined : text, {
      text,
      words:
        text.trim() === ''
          ? `${label}: wants at least one letter.`
          : `${label}: \u201c${text.slice(0, 20)}\u2026\u201d is too long.`,
    });
  return (
    <TextField
      act={`sheet.${path}`}
      label={label}
      value={draft.keptAt(path)?.text ?? (typeof stored === 'string' ? stored : '')}
      onChange={put}
      fault={draft.faultAt(path)}
      {...(props.hint !== undefined && { hint: props.hint })}
      {...(props.long !== undefined && { long: props.long })}
    />
  );
}

interface NumberProps extends AtProps, NumberAt {
  readonly unit?: string;
}

/** A number of the flight sheet, kept as typed while it is typed. */
export function SheetNumber(props: NumberProps) {
  const draft = useDraft();
  const field = useNumberText(draft, props);
  return (
    <NumberField
      act={`sheet.${props.path}`}
      label={props.label}
      value={field.text}
      onChange={field.onText}
      fault={draft.faultAt(props.path)}
      {...(props.unit !== undefined && { unit: props.unit })}
      {...(props.hint !== undefined && { hint: props.hint })}
    />
  );
}

/** A number in a row of a list; the label is for readers, the head of the column says it to the eye. */
export function SheetCell(props: NumberProps) {
  const draft = useDraft();
  const field = useNumberText(draft, props);
  const fault = draft.faultAt(props.path);
  return (
    <input
      className={styles.cell}
      data-act={`sheet.${props.path}`}
      aria-label={props.label}
      aria-invalid={fault !== null}
      title={fault ?? undefined}
      inputMode="decimal"
      autoComplete="off"
      value={field.text}
      onChange={(event) => field.onText(event.target.value)}
    />
  );
}

/** A measure: the number beside the units that it may be given in. The unit may be chosen before the number. */
export function SheetMeasure(
  props: AtProps & {
    readonly units: readonly Unit[];
    readonly unit: Unit;
    readonly optional?: boolean;
  },
) {
  const draft = useDraft();
  const { path, label, optional = false } = props;
  const at = valueAt(draft.sheet, path);
  const stored = isMeasure(at) ? at : null;
  const [chosen, setChosen] = useState<Unit | null>(null);
  // A blank measure is 0 where the record wants one: its unit is still free to follow the units of the sheet.
  const isBlank = stored === null || (stored.value === 0 && !optional);
  const unit = isBlank ? (chosen ?? props.unit) : stored.unit;
  const [typed, setTyped] = useState<{ text: string; value: number | null } | null>(null);
  const value = isBlank ? null : stored.value;
  const text =
    draft.keptAt(path)?.text ??
    (typed !== null && typed.value === value
      ? typed.text
      : value === null
        ? ''
        : numberText(value));
  const putText = (next: string) => {
    const read = typedNumber(next, label);
    if (read.kind === 'fault') {
      setChosen(unit);
      draft.put(path, optional ? undefined : { value: 0, unit }, NOTHING);
      draft.keep(path, { text: next, words: read.words });
      return;
    }
    const number = read.kind === 'blank' ? null : read.value;
    setTyped({ text: next, value: number === 0 && !optional ? null : number });
    draft.put(path, number === null && optional ? undefined : { value: number ?? 0, unit }, {
      text: next,
      words: `${label}: \u201c${next}\u201d is not a number.`,
    });
  };
  const putUnit = (next: Unit) => {
    setChosen(next);
    if (stored !== null) {
      draft.put(path, { value: stored.value, unit: next }, { text, words: '' });
    }
  };
  const units = props.units.includes(unit) ? props.units : [...props.units, unit];
  return (
    <div className={units.length > 2 ? styles.wideMeasure : styles.measure}>
      <NumberField
        act={`sheet.${path}`}
        label={label}
        value={text}
        onChange={putText}
        fault={draft.faultAt(path)}
        {...(props.hint !== undefined && { hint: props.hint })}
      />
      <ChipField
        act={`sheet.${path}.unit`}
        label={`Unit of ${label}`}
        quiet
        value={unit}
        choices={units.map((one) => ({ value: one, label: unitWords(one) }))}
        onChange={putUnit}
      />
    </div>
  );
}

export function SheetChoice<Value extends string>(
  props: AtProps & {
    readonly choices: readonly { readonly value: Value; readonly label: string }[];
  },
) {
  const draft = useDraft();
  const stored = valueAt(draft.sheet, props.path);
  return (
    <ChipField
      act={`sheet.${props.path}`}
      label={props.label}
      value={props.choices.find((choice) => choice.value === stored)?.value ?? null}
      choices={props.choices}
      onChange={(value) =>
        draft.put(props.path, value, { text: value, words: `${props.label}: not taken.` })
      }
      fault={draft.faultAt(props.path)}
      {...(props.hint !== undefined && { hint: props.hint })}
    />
  );
}

/** A choice that is stored as a number: engine count, boxes on a pad. */
export function SheetCount(props: AtProps & { readonly from: number; readonly to: number }) {
  const draft = useDraft();
  const stored = valueAt(draft.sheet, props.path);
  const choices = Array.from({ length: props.to - props.from + 1 }, (_, index) =>
    String(props.from + index),
  );
  return (
    <ChipField
      act={`sheet.${props.path}`}
      label={props.label}
      value={choices.find((choice) => choice === String(stored)) ?? null}
      choices={choices.map((value) => ({ value, label: value }))}
      onChange={(value) =>
        draft.put(props.path, Number(value), { text: value, words: `${props.label}: not taken.` })
      }
      fault={draft.faultAt(props.path)}
    />
  );
}

export function SheetTick(props: AtProps) {
  const draft = useDraft();
  return (
    <TickField
      act={`sheet.${props.path}`}
      label={props.label}
      value={valueAt(draft.sheet, props.path) === true}
      onChange={(value) => draft.put(props.path, value, { text: '', words: '' })}
    />
  );
}
