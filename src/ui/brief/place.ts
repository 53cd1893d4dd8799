import * as v from 'valibot';
import { SHEET_SECTIONS } from '../../record/sheetCheck.ts';

/** Where on Brief somebody is. It survives a reload. */
export const placeSchema = v.variant('at', [
  v.object({ at: v.literal('days') }),
  v.object({ at: v.literal('flight') }),
  v.object({ at: v.literal('hack') }),
  v.object({ at: v.literal('cautions') }),
  v.object({ at: v.literal('size') }),
  v.object({ at: v.literal('forms'), form: v.picklist(['brief', 'calibration', 'preflight']) }),
  v.object({
    at: v.literal('sheet'),
    sheet: v.string(),
    section: v.picklist(SHEET_SECTIONS),
    item: v.nullable(v.number()),
  }),
  v.object({ at: v.literal('open'), sheet: v.string() }),
  v.object({ at: v.literal('pad'), sheet: v.string() }),
  v.object({ at: v.literal('join'), flight: v.string() }),
]);
export type Place = v.InferOutput<typeof placeSchema>;
