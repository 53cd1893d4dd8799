import * as v from 'valibot';

/** A card is a square of so many units a side; a unit is about a tenth of a millimetre under the finger. */
export const SKETCH_SIDE = 1000;
export const SKETCH_STROKES_MAX = 100;
/** Of all strokes together, x and y counted apart: a line of the log stays far below the longest that is read. */
export const SKETCH_NUMBERS_MAX = 6000;

const coordinate = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(SKETCH_SIDE));
const strokeSchema = v.pipe(
  v.array(coordinate),
  v.minLength(2),
  v.check((numbers) => numbers.length % 2 === 0),
);

/** Each stroke is x, y, x, y, ... from the upper left corner of the card, in the order of drawing. */
export const strokesSchema = v.pipe(
  v.array(strokeSchema),
  v.minLength(1),
  v.maxLength(SKETCH_STROKES_MAX),
  v.check((strokes) => numbersIn(strokes) <= SKETCH_NUMBERS_MAX),
);

export type Strokes = readonly (readonly number[])[];

export function numbersIn(strokes: Strokes): number {
  return strokes.reduce((sum, stroke) => sum + stroke.length, 0);
}
