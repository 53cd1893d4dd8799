import { SKETCH_NUMBERS_MAX, SKETCH_SIDE } from '../../record/sketch.ts';

/** Points nearer than this to the last one say nothing that an eye could see. */
const LEAST_STEP = 5;

interface CardBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Where on the card a contact is, in its units; null beside the card. */
export function onCard(
  box: CardBox,
  at: { readonly clientX: number; readonly clientY: number },
): readonly [x: number, y: number] | null {
  const x = Math.round(((at.clientX - box.left) / box.width) * SKETCH_SIDE);
  const y = Math.round(((at.clientY - box.top) / box.height) * SKETCH_SIDE);
  return x >= 0 && y >= 0 && x <= SKETCH_SIDE && y <= SKETCH_SIDE ? [x, y] : null;
}

/** The stroke with one more point, as far as the card has room; the same stroke where the point adds nothing. */
export function longer(
  stroke: readonly number[],
  [x, y]: readonly [number, number],
  drawnBefore: number,
): readonly number[] {
  const far =
    stroke.length === 0 ||
    Math.hypot(x - (stroke.at(-2) ?? 0), y - (stroke.at(-1) ?? 0)) >= LEAST_STEP;
  const room = drawnBefore + stroke.length + 2 <= SKETCH_NUMBERS_MAX;
  return far && room ? [...stroke, x, y] : stroke;
}
