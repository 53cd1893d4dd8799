import type { Instrument, Wing } from '../../record/sheet.ts';
import type { BoxFormat } from './boxes.ts';

/** A value that goes into an entry: JSON, as the record keeps it. `null` takes the field away. */
export type Json =
  string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** Fields of one entry and what each becomes. */
export interface Change {
  readonly field: string;
  readonly value: Json;
}

export interface Choice {
  readonly label: string;
  readonly changes: readonly Change[];
}

export interface NumberSpec {
  readonly title: string;
  readonly unit: string;
  readonly format: BoxFormat;
  /** What stood there before, shown beside the boxes. */
  readonly last: number | null;
  readonly step: number;
  /** Boxes are grouped as a clock: 13 42 07. */
  readonly clock?: boolean;
}

/** One thing that the detail panel can ask about an entry. Nothing in it is needed for the event to stand. */
export type Field =
  | {
      readonly form: 'choose';
      readonly id: string;
      readonly label: string;
      readonly choices: readonly Choice[];
      /** Path that free text goes to, by the system keyboard. */
      readonly textTo?: string;
    }
  | {
      readonly form: 'number';
      readonly id: string;
      readonly label: string;
      readonly spec: NumberSpec;
      readonly changes: (value: number, digits: string) => readonly Change[];
    }
  | {
      readonly form: 'reading';
      readonly id: string;
      readonly label: string;
      readonly instrument: Instrument;
    }
  /** The same touch written as another kind: the first is withdrawn, the second keeps its time. */
  | {
      readonly form: 'instead';
      readonly id: string;
      readonly label: string;
      readonly acts: readonly { readonly label: string; readonly act: string }[];
    }
  | { readonly form: 'probes'; readonly id: string; readonly label: string }
  | { readonly form: 'pressures'; readonly id: string; readonly label: string }
  /** A card to draw on, about this entry. */
  | { readonly form: 'sketch'; readonly id: string; readonly label: string }
  | { readonly form: 'tubes'; readonly id: string; readonly label: string }
  | {
      readonly form: 'covers';
      readonly id: string;
      readonly label: string;
      readonly wing: Wing | 'both';
    }
  | { readonly form: 'time'; readonly id: string; readonly label: string }
  | {
      readonly form: 'clock';
      readonly id: string;
      readonly label: string;
      readonly clock: string | null;
    };

export const change = (field: string, value: Json): Change => ({ field, value });

/** Chips that each set one field to their own word. */
export function words(
  id: string,
  label: string,
  path: string,
  phrases: readonly string[],
  textTo?: string,
): Field {
  const choices = phrases.map((phrase) => ({ label: phrase, changes: [change(path, phrase)] }));
  return textTo === undefined
    ? { form: 'choose', id, label, choices }
    : { form: 'choose', id, label, choices, textTo };
}

export function choose(
  id: string,
  label: string,
  path: string,
  options: readonly (readonly [label: string, value: Json])[],
): Field {
  return {
    form: 'choose',
    id,
    label,
    choices: options.map(([name, value]) => ({ label: name, changes: [change(path, value)] })),
  };
}
