import { useState } from 'react';
import type { Measure } from '../../../record/measure.ts';
import { valueAt, type SheetPath } from '../../../record/sheetEdit.ts';
import { numberText, typedNumber } from '../numberText.ts';
import type { SheetDraft } from './sheetDraft.ts';

export interface NumberAt {
  readonly path: SheetPath;
  readonly label: string;
  /** Absent from the sheet when blank; others are 0 there, which reads as not given. */
  readonly optional?: boolean;
  /** What is typed is the stored number times this: 100 for per cent. */
  readonly scale?: number;
  readonly zeroIsBlank?: boolean;
}

/** For changes that the record cannot refuse. */
export const NOTHING = { text: '', words: '' };

/** The text of a number field: as typed while it is typed, from the flight sheet otherwise. */
export function useNumberText(draft: SheetDraft, props: NumberAt) {
  const { path, label, scale = 1 } = props;
  const at = valueAt(draft.sheet, path);
  const stored = typeof at === 'number' ? at : isMeasure(at) ? at.value : null;
  const [typed, setTyped] = useState<{ text: string; value: number | null } | null>(null);
  const blank = stored === null || (stored === 0 && props.zeroIsBlank === true);
  const text =
    draft.keptAt(path)?.text ??
    (typed !== null && typed.value === stored
      ? typed.text
      : blank
        ? ''
        : numberText(stored * scale));
  return {
    text,
    onText: (next: string) => {
      const read = typedNumber(next, label);
      const nothing = props.optional === true ? undefined : 0;
      const refuse = (words: string) => {
        // What was typed on the way to this text is not what was meant: the field holds no number meanwhile.
        draft.put(path, nothing, NOTHING);
        draft.keep(path, { text: next, words });
      };
      if (read.kind === 'fault') {
        refuse(read.words);
        return;
      }
      const value = read.kind === 'blank' ? nothing : Number((read.value / scale).toPrecision(12));
      const words = `${label}: \u201c${next}\u201d is not a whole number, 0 or more.`;
      setTyped({ text: next, value: value ?? null });
      if (!draft.put(path, value, { text: next, words })) {
        refuse(words);
      }
    },
  };
}

export function isMeasure(value: unknown): value is Measure {
  return typeof value === 'object' && value !== null && 'value' in value && 'unit' in value;
}
