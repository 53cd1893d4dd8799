import type { EntryOf, KnownEntry } from '../../record/entry.ts';
import type { Scene } from './act.ts';
import { change, choose, words, type Field } from './field.ts';
import { DOUBTS_S, PHRASES } from './phrases.ts';

/** Who called it, how sure its time is, when it was, from where that is known, and a note: the same for every event. */
export function commonFields(entry: KnownEntry, scene: Scene): readonly Field[] {
  if (entry.kind === 'entryWithdrawn' || entry.kind === 'entryAmended') {
    return [];
  }
  const people = [...new Set((scene.sheet?.people ?? []).map((person) => person.role))];
  const note: Field = words('note', 'Note', 'note', PHRASES.note, 'note');
  return [
    words('who', 'Who', 'calledBy', people, 'calledBy'),
    { form: 'time', id: 'time', label: 'Time' },
    choose(
      'doubt',
      'Doubt',
      'doubtS',
      DOUBTS_S.map((doubtS) => [`\u00b1${doubtS}\u00a0s`, doubtS] as const),
    ),
    lateField,
    ...(entry.kind === 'markMade' || entry.kind === 'noted' ? [] : [note]),
    ...(entry.kind === 'sketchDrawn' || entry.kind === 'noted' ? [] : [DRAW]),
  ];
}

export const DRAW: Field = { form: 'sketch', id: 'sketch', label: 'Draw' };

const lateField: Field = {
  form: 'choose',
  id: 'basis',
  label: 'Basis',
  textTo: 'basisWords',
  choices: [
    ...(['seen', 'heard', 'instrument', 'late'] as const).map((basis) => ({
      label: basis,
      changes: [change('basis', basis)],
    })),
    ...PHRASES.lateBasis.map((phrase) => ({
      label: phrase,
      changes: [change('basis', 'late'), change('basisWords', phrase)],
    })),
  ],
};

/** Of a withdrawal and of an amendment: why, and on what grounds. */
export function afterFields(entry: EntryOf<'entryWithdrawn' | 'entryAmended'>): readonly Field[] {
  const reason = words(
    'reason',
    'Reason',
    'reason',
    entry.kind === 'entryWithdrawn' ? PHRASES.withdrawn : PHRASES.amended,
    'reason',
  );
  const basis = words('basisWords', 'Basis', 'basisWords', PHRASES.basis, 'basisWords');
  return entry.kind === 'entryWithdrawn' ? [reason] : [reason, frameField, basis];
}

const frameField: Field = {
  form: 'number',
  id: 'frame',
  label: 'Photo frame',
  spec: {
    title: 'Photo panel frame',
    unit: '',
    format: { wholeDigits: 4, decimals: 0, signed: false, exact: false },
    last: null,
    step: 1,
  },
  changes: (value) => [change('basisWords', `photo panel frame ${value}`)],
};
