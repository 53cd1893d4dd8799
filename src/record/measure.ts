import * as v from 'valibot';
import type { Immutable } from './brand.ts';

/** What flight sheets and entries are made of: bounded numbers and names, and a number with its unit. */

/** Units that a gauge or a form may show. Inches of water name their convention. */
export const UNITS = [
  'lb/h',
  'kg/h',
  'lb',
  'kg',
  'ft',
  'm',
  'ft2',
  'm2',
  'ft/min',
  'm/s',
  'kt',
  'degC',
  'K',
  '1',
  '1/min',
  'inH2O',
  'inH2O@39.2F',
  'inH2O@60F',
  'inH2O@20C',
  'mbar',
  'lbf',
  'N',
  'lb/h/lbf',
  'kg/h/N',
  's',
  'lb/USgal',
  'kg/l',
  'USgal',
  'l',
] as const;
export const unitSchema = v.picklist(UNITS);
export type Unit = v.InferOutput<typeof unitSchema>;

export const finite = v.pipe(v.number(), v.finite());
export const count = v.pipe(v.number(), v.integer(), v.minValue(0));
export const name = v.pipe(v.string(), v.maxLength(200));
/** A name that becomes a key in lookups by name, so it must not be the one key that is none. */
export const idSchema = v.pipe(
  v.string(),
  v.minLength(1),
  v.maxLength(40),
  v.check((text) => text !== '__proto__'),
);
export const measureSchema = v.object({ value: finite, unit: unitSchema });
export type Measure = Immutable<v.InferOutput<typeof measureSchema>>;
