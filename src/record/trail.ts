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

/** Many at once: fills chunks in place of copying the last one for each item. */
export function extended<Item>(trail: Trail<Item>, more: readonly Item[]): Trail<Item> {
  const last = trail.chunks.at(-1) ?? [];
  const room = last.length === 0 ? 0 : CHUNK - last.length;
  const chunks: (readonly Item[])[] = [...trail.chunks];
  if (room > 0 && more.length > 0) {
    chunks[chunks.length - 1] = [...last, ...more.slice(0, room)];
  }
  for (let from = room; from < more.length; from += CHUNK) {
    chunks.push(more.slice(from, from + CHUNK));
  }
  return { length: trail.length + more.length, chunks };
}

/** The first `length` items; the whole trail when it has no more. @throws RangeError when `length` is negative. */
export function firstOf<Item>(trail: Trail<Item>, length: number): Trail<Item> {
  if (length < 0) {
    throw new RangeError(`length must be 0 or more, got ${length}`);
  }
  if (length >= trail.length) {
    return trail;
  }
  const whole = Math.floor(length / CHUNK);
  const chunks = trail.chunks.slice(0, whole);
  const rest = trail.chunks[whole]?.slice(0, length % CHUNK) ?? [];
  return { length, chunks: rest.length > 0 ? [...chunks, rest] : chunks };
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

/** The items from `index` on, as a plain list. */
export function itemsFrom<Item>(trail: Trail<Item>, index: number): readonly Item[] {
  const chunk = Math.floor(index / CHUNK);
  return trail.chunks
    .slice(chunk)
    .flat()
    .slice(index - chunk * CHUNK);
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
