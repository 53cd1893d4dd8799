/** The boxes of a number pad: as many as the indicator has digits, the point printed between them. */
export interface BoxFormat {
  readonly wholeDigits: number;
  readonly decimals: number;
  readonly signed: boolean;
  /** Every box must be filled, as an indicator shows it; a count or a height keyed by feel need not be. */
  readonly exact: boolean;
}

/** What stands in the boxes, filled from the left. */
export interface Boxes {
  readonly digits: string;
  readonly minus: boolean;
  /** Set when the step keys made it: they start from the last reading. */
  readonly stepped: boolean;
}

export const EMPTY_BOXES: Boxes = { digits: '', minus: false, stepped: false };

export function boxCount(format: BoxFormat): number {
  return format.wholeDigits + format.decimals;
}

export function isFull(boxes: Boxes, format: BoxFormat): boolean {
  return boxes.digits.length === boxCount(format);
}

/** A further digit; full boxes take no more, so a doubled digit shows as a missing last one. */
export function typed(boxes: Boxes, format: BoxFormat, digit: string): Boxes {
  if (boxes.stepped) {
    return { digits: digit, minus: boxes.minus, stepped: false };
  }
  return isFull(boxes, format) ? boxes : { ...boxes, digits: boxes.digits + digit };
}

export function erased(boxes: Boxes): Boxes {
  return boxes.stepped
    ? { ...EMPTY_BOXES, minus: boxes.minus }
    : { ...boxes, digits: boxes.digits.slice(0, -1) };
}

export function signTurned(boxes: Boxes): Boxes {
  return { ...boxes, minus: !boxes.minus };
}

/** The value in the boxes; null when none is filled. Short boxes read as far as they go. */
export function valueOf(boxes: Boxes, format: BoxFormat): number | null {
  if (boxes.digits === '') {
    return null;
  }
  const whole = boxes.digits.slice(0, format.wholeDigits);
  const part = boxes.digits.slice(format.wholeDigits);
  // From the digits themselves: 0.721 keyed must be the number that 0.721 is.
  const value = Number(part === '' ? whole : `${whole}.${part}`);
  return boxes.minus && value !== 0 ? -value : value;
}

/** The boxes that show this value; null when it has more digits than there are boxes. */
export function boxesOf(value: number, format: BoxFormat): Boxes | null {
  const words = Math.abs(value).toFixed(format.decimals);
  const digits = words.replace('.', '').padStart(boxCount(format), '0');
  return digits.length > boxCount(format) || (value < 0 && !format.signed)
    ? null
    : { digits, minus: value < 0, stepped: false };
}

/** One step from what stands there, or from the last reading when nothing does. */
export function stepped(boxes: Boxes, format: BoxFormat, step: number, last: number | null): Boxes {
  const from = valueOf(boxes, format) ?? last;
  const next =
    from === null ? null : boxesOf(Number((from + step).toFixed(format.decimals)), format);
  return next === null ? boxes : { ...next, stepped: true };
}

/** The step keys, smaller first: one display step and ten. */
export function stepsOf(
  resolution: number,
  decimals: number,
): readonly [small: number, large: number] {
  const small = resolution > 0 ? resolution : 10 ** -decimals;
  return [small, small * 10];
}
