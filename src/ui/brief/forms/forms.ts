import { useState } from 'react';
import type { Journal } from '../../../journal/journal.ts';
import type { Draft } from '../../../record/entry.ts';
import type { Measure, Unit } from '../../../record/measure.ts';
import { numberText, typedNumber } from '../numberText.ts';
import type { KeptTexts } from '../useKept.ts';

/** Writes into the record. The journal keeps what it cannot save and tries again; only a second window is refused. */
export function useWrite(journal: Journal): {
  readonly write: (draft: Draft) => void;
  readonly refused: string | null;
} {
  const [refused, setRefused] = useState<string | null>(null);
  return {
    refused,
    write: (draft) => {
      setRefused(null);
      journal.append(draft).catch(() => setRefused('Not written: another window holds the pen.'));
    },
  };
}

export interface FormNumber {
  readonly text: string;
  /** Null while blank or not a number. */
  readonly value: number | null;
  readonly fault: string | null;
}

/** A number of a form. Blank is left out; a fault stops the writing until it is mended or cleared. */
export function formNumber(
  texts: KeptTexts,
  name: string,
  label: string,
  first?: number,
): FormNumber {
  const text = texts.of(name, first === undefined ? '' : numberText(first));
  const read = typedNumber(text, label);
  return read.kind === 'fault'
    ? { text, value: null, fault: read.words }
    : { text, value: read.kind === 'blank' ? null : read.value, fault: null };
}

export interface FormMeasure extends FormNumber {
  readonly unit: Unit;
  readonly measure: Measure | null;
}

export function formMeasure(
  texts: KeptTexts,
  name: string,
  label: string,
  given: { readonly first?: Measure | undefined; readonly units: readonly [Unit, ...Unit[]] },
): FormMeasure {
  const number = formNumber(texts, name, label, given.first?.value);
  const chosen = texts.of(`${name}.unit`);
  const unit = given.units.find((one) => one === chosen) ?? given.first?.unit ?? given.units[0];
  return { ...number, unit, measure: number.value === null ? null : { value: number.value, unit } };
}
