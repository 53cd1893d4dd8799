import type { Body } from '../../record/entry.ts';

/** Why a touch may not have been meant. */
export type NotSure = NonNullable<Body<'markMade'>['unconfirmed']>;

/**
 * What kind of target a finger is on. `event`: its time is the record, so a doubtful touch is kept, marked.
 * `key`: acts on release and may be slid off. `digit`: as a key, but quick repeats are meant. `hold`: 0.8 s.
 */
export type TargetForm = 'event' | 'key' | 'digit' | 'hold';

/** Milliseconds and millimetres of the touch rules; reasons and sources in the design notes on cockpit touch. */
export const TOUCH = {
  /** Targets may be left by this much before the touch counts as slid off. */
  grownMm: 8,
  /** Half the dead space between targets: a touch there goes to the nearest centre. */
  halfGapMm: 2,
  briefMs: 40,
  longMs: 2000,
  holdMs: 800,
  holdGapMs: 150,
  twoTilesMs: 300,
  palmContacts: 3,
  palmMs: 100,
  palmSizeMm: 30,
  /** A contact this soon and this near after another one, on what has just taken its place, is the same finger bouncing. */
  afterChangeMs: 300,
  afterChangeMm: 10,
} as const;

/** A repeat on the same target within this time of its release is the finger bouncing. */
export const BOUNCE_MS: Readonly<Record<TargetForm, number>> = {
  event: 500,
  key: 250,
  digit: 120,
  hold: 500,
};

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function inside(box: Box, x: number, y: number, grownPx: number): boolean {
  return (
    x >= box.left - grownPx &&
    x <= box.right + grownPx &&
    y >= box.top - grownPx &&
    y <= box.bottom + grownPx
  );
}

/** Index of the box whose grown area holds the point and whose centre is nearest; null when none does. */
export function nearestBox(
  boxes: readonly Box[],
  x: number,
  y: number,
  grownPx: number,
): number | null {
  let best: number | null = null;
  let bestDistance = Infinity;
  boxes.forEach((box, index) => {
    if (box.right > box.left && inside(box, x, y, grownPx)) {
      const distance = Math.hypot(x - (box.left + box.right) / 2, y - (box.top + box.bottom) / 2);
      if (distance < bestDistance) {
        best = index;
        bestDistance = distance;
      }
    }
  });
  return best;
}

/** What a finished contact was. A keyed press has no length and is always sure. */
export function judgeContact(contact: {
  readonly lastedMs: number;
  readonly endedInside: boolean;
  readonly cancelled: boolean;
  readonly afterOtherTileMs: number | null;
}): 'sure' | NotSure {
  if (contact.cancelled) {
    return 'cancelled';
  }
  if (!contact.endedInside) {
    return 'slippedOff';
  }
  if (contact.lastedMs < TOUCH.briefMs) {
    return 'briefContact';
  }
  if (contact.lastedMs > TOUCH.longMs) {
    return 'heldLong';
  }
  return contact.afterOtherTileMs !== null && contact.afterOtherTileMs < TOUCH.twoTilesMs
    ? 'twoTiles'
    : 'sure';
}
