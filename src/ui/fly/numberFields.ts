import type { FlightSheet, Instrument } from '../../record/sheet.ts';
import type { Scene } from './act.ts';
import { change, choose, type Change, type Field } from './field.ts';
import { instrumentWords } from './instruments.ts';

export function legs(id: string, label: string, path: string, sheet: FlightSheet | null): Field {
  const names = sheet?.legs ?? [];
  const known = names.length > 0 ? names : ['', '', '', '', '', ''];
  return choose(
    id,
    label,
    path,
    known.map((_, index) => [`Leg ${index + 1}`, index + 1] as const),
  );
}

export function countTo(id: string, label: string, path: string, most: number): Field {
  return choose(
    id,
    label,
    path,
    Array.from({ length: most }, (_, index) => [`${index + 1}`, index + 1] as const),
  );
}

/** A whole number of at most `digits` places. */
export function count(
  id: string,
  label: string,
  unit: string,
  path: string,
  digits: number,
): Field {
  return plain(id, label, unit, { wholeDigits: digits, decimals: 0 }, (value) => [
    change(path, value),
  ]);
}

export function decimal(
  id: string,
  label: string,
  path: string,
  wholeDigits: number,
  decimals: number,
): Field {
  return plain(id, label, '', { wholeDigits, decimals }, (value) => [change(path, value)]);
}

function plain(
  id: string,
  label: string,
  unit: string,
  format: { readonly wholeDigits: number; readonly decimals: number },
  changes: (value: number, digits: string) => readonly Change[],
): Field {
  return {
    form: 'number',
    id,
    label,
    spec: {
      title: label,
      unit,
      format: { ...format, signed: false, exact: false },
      last: null,
      step: 10 ** -format.decimals,
    },
    changes,
  };
}

/** A weight or an amount of fuel in the crew's unit; as many boxes as the ramp weight has digits. */
export function massField(
  id: string,
  label: string,
  path: string,
  scene: Scene,
  last: number | null,
): Field {
  const unit = scene.sheet?.massUnit ?? 'lb';
  const wholeDigits = String(Math.round(scene.sheet?.weights.ramp?.value ?? 10_000)).length;
  return {
    form: 'number',
    id,
    label,
    spec: {
      title: label,
      unit,
      format: { wholeDigits, decimals: 0, signed: false, exact: false },
      last,
      step: 10,
    },
    changes: (value) => [change(path, { value, unit })],
  };
}

export function heightField(scene: Scene): Field {
  const unit = scene.sheet?.heightUnit ?? 'ft';
  const card = scene.sheet?.condition.pressureAltitude;
  return {
    form: 'number',
    id: 'height',
    label: 'Height',
    spec: {
      title: 'Height',
      unit,
      format: { wholeDigits: 5, decimals: 0, signed: false, exact: false },
      last: card !== undefined && card.unit === unit ? card.value : null,
      step: 100,
    },
    changes: (value) => [change('altitude', { value, unit })],
  };
}

/** A runway is two digits as painted: 07, not 7. */
export const runwayField: Field = {
  form: 'number',
  id: 'runway',
  label: 'Runway',
  spec: {
    title: 'Runway',
    unit: '',
    format: { wholeDigits: 2, decimals: 0, signed: false, exact: true },
    last: null,
    step: 1,
  },
  changes: (_value, digits) => [change('runway', digits)],
};

export function readings(instruments: readonly Instrument[], scene: Scene): readonly Field[] {
  return instruments.map((instrument) => ({
    form: 'reading',
    id: `reading-${instrument.id}`,
    label: instrumentWords(instrument, scene.sheet),
    instrument,
  }));
}
