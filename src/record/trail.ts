const CHUNK = 64;

/**
 * A list that only grows at its end, or has one item replaced, and shares what did not change with the list it came
 * from. A touch costs a chunk and its spine, never a copy of the flight; earlier states stay valid for checkpoints.
 */
export interface Trail<Item> {
  readonly length: number;
  readonly chunks: readonly (readonly Item[])[];
}

const EMPTY: Trail<never> = { length: 0, chunks: [] };

export function emptyTrail<Item>(): Trail<Item> {
  return EMPTY;
}

export function appended<Item>(trail: Trail<Item>, item: Item): Trail<Item> {
  const last = trail.chunks.at(-1);
  const chunks =
    last === undefined || last.length === CHUNK
      ? [...trail.chunks, [item]]
      : trail.chunks.with(-1, [...last, item]);
  return { length: trail.length + 1, chunks };
}

/** @throws RangeError when there is no item at `index` (0 to length - 1). */
export function replaced<Item>(trail: Trail<Item>, index: number, item: Item): Trail<Item> {
  const chunk = trail.chunks[Math.floor(index / CHUNK)];
  if (chunk === undefined || !(index >= 0 && index < trail.length)) {
    throw new RangeError(`index must be 0 to ${trail.length - 1}, got ${index}`);
  }
  return {
    length: trail.length,
    chunks: trail.chunks.with(Math.floor(index / CHUNK), chunk.with(index % CHUNK, item)),
  };
}

/** The item at `index`, counted from the end when negative; `undefined` outside. */
export function itemAt<Item>(trail: Trail<Item>, index: number): Item | undefined {
  const from0 = index < 0 ? trail.length + index : index;
  return from0 < 0 ? undefined : trail.chunks[Math.floor(from0 / CHUNK)]?.[from0 % CHUNK];
}

export function* items<Item>(trail: Trail<Item>): Generator<Item, void, undefined> {
  for (const chunk of trail.chunks) {
    yield* chunk;
  }
}

/** From the last to the first: what a live display needs stands at the end. */
export function* itemsBackwards<Item>(trail: Trail<Item>): Generator<Item, void, undefined> {
  for (let index = trail.length - 1; index >= 0; index -= 1) {
    const item = itemAt(trail, index);
    if (item !== undefined) {
      yield item;
    }
  }
}
