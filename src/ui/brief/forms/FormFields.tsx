import type { Unit } from '../../../record/measure.ts';
import { unitWords } from '../../../record/sheetMeasure.ts';
import { NumberField, TextField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import type { FormMeasure, FormNumber } from './forms.ts';
import type { KeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

interface Shared {
  readonly texts: KeptTexts;
  /** Name in the kept texts; with the form's name before it also the name of the target. */
  readonly name: string;
  readonly form: string;
  readonly label: string;
}

export function FormText(props: Shared & { readonly first?: string; readonly long?: boolean }) {
  return (
    <TextField
      act={`${props.form}.${props.name}`}
      label={props.label}
      value={props.texts.of(props.name, props.first)}
      onChange={(text) => props.texts.put(props.name, text)}
      {...(props.long !== undefined && { long: props.long })}
    />
  );
}

export function FormNumberField(
  props: Shared & { readonly number: FormNumber; readonly unit?: string },
) {
  return (
    <NumberField
      act={`${props.form}.${props.name}`}
      label={props.label}
      value={props.number.text}
      onChange={(text) => props.texts.put(props.name, text)}
      fault={props.number.fault}
      {...(props.unit !== undefined && { unit: props.unit })}
    />
  );
}

export function FormMeasureField(
  props: Shared & { readonly measure: FormMeasure; readonly units: readonly Unit[] },
) {
  return (
    <div className={styles.measure}>
      <FormNumberField {...props} number={props.measure} />
      <ChipField
        act={`${props.form}.${props.name}.unit`}
        label={`Unit of ${props.label}`}
        quiet
        value={props.measure.unit}
        choices={props.units.map((unit) => ({ value: unit, label: unitWords(unit) }))}
        onChange={(unit) => props.texts.put(`${props.name}.unit`, unit)}
      />
    </div>
  );
}
