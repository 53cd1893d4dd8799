declare const brand: unique symbol;

/** A value that only its own maker can produce; mixed up silently otherwise. */
export type Brand<T, Name extends string> = T & { readonly [brand]: Name };

/** SHA-256 of an entry's line bytes, 64 lower-case hexadecimal digits. */
export type EntryId = Brand<string, 'EntryId'>;

/** UTC, milliseconds since 1970-01-01T00:00:00Z. The difference of two is a plain `durationMs`. */
export type EpochMs = Brand<number, 'EpochMs'>;

/** 32 lower-case hexadecimal digits, new for every flight on every device, never used again. */
export type RecorderId = Brand<string, 'RecorderId'>;

/** 32 lower-case hexadecimal digits, shared by all recorders of one flight. */
export type FlightId = Brand<string, 'FlightId'>;

/** Makes an instant. @throws RangeError when the number is not a whole, finite millisecond. */
export function epochMs(value: number): EpochMs {
  if (!Number.isSafeInteger(value)) {
    throw new RangeError(`an instant must be whole milliseconds, got ${value}`);
  }
  return value as EpochMs;
}

/**
 * The instant `durationMs` later, to the nearest millisecond. A duration from a foreign file may be absurd; an instant
 * that no integer can hold leaves `at` as it was.
 */
export function laterBy(at: EpochMs, durationMs: number): EpochMs {
  const moved = Math.round(at + durationMs);
  return Number.isSafeInteger(moved) ? epochMs(moved) : at;
}

/** Reads an entry id. @throws RangeError when the text is not 64 lower-case hexadecimal digits. */
export function entryId(text: string): EntryId {
  if (!/^[0-9a-f]{64}$/.test(text)) {
    throw new RangeError(`an entry id must be 64 hexadecimal digits, got ${text}`);
  }
  return text as EntryId;
}

/** Reads a recorder id. @throws RangeError when the text is not 32 lower-case hexadecimal digits. */
export function recorderId(text: string): RecorderId {
  if (!/^[0-9a-f]{32}$/.test(text)) {
    throw new RangeError(`a recorder id must be 32 hexadecimal digits, got ${text}`);
  }
  return text as RecorderId;
}

/** Reads a flight id. @throws RangeError when the text is not 32 lower-case hexadecimal digits. */
export function flightId(text: string): FlightId {
  if (!/^[0-9a-f]{32}$/.test(text)) {
    throw new RangeError(`a flight id must be 32 hexadecimal digits, got ${text}`);
  }
  return text as FlightId;
}

/** Readonly all the way down: what was written does not change. */
export type Immutable<T> = unknown extends T
  ? T
  : T extends string | number | boolean | null | undefined
    ? T
    : T extends readonly (infer Item)[]
      ? readonly Immutable<Item>[]
      : { readonly [Key in keyof T]: Immutable<T[Key]> };
