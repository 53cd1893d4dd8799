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

const HEX_64 = /^[0-9a-f]{64}$/;
const HEX_32 = /^[0-9a-f]{32}$/;

export function isEpochMs(value: unknown): value is EpochMs {
  return Number.isSafeInteger(value);
}

export function isEntryId(value: unknown): value is EntryId {
  return typeof value === 'string' && HEX_64.test(value);
}

export function isRecorderId(value: unknown): value is RecorderId {
  return typeof value === 'string' && HEX_32.test(value);
}

export function isFlightId(value: unknown): value is FlightId {
  return typeof value === 'string' && HEX_32.test(value);
}

/** Makes an instant. @throws RangeError when the number is not a whole, finite millisecond. */
export function epochMs(value: number): EpochMs {
  if (!isEpochMs(value)) {
    throw new RangeError(`an instant must be whole milliseconds, got ${String(value)}`);
  }
  return value;
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
  if (!isEntryId(text)) {
    throw new RangeError(`an entry id must be 64 hexadecimal digits, got ${String(text)}`);
  }
  return text;
}

/** Reads a recorder id. @throws RangeError when the text is not 32 lower-case hexadecimal digits. */
export function recorderId(text: string): RecorderId {
  if (!isRecorderId(text)) {
    throw new RangeError(`a recorder id must be 32 hexadecimal digits, got ${String(text)}`);
  }
  return text;
}

/** Reads a flight id. @throws RangeError when the text is not 32 lower-case hexadecimal digits. */
export function flightId(text: string): FlightId {
  if (!isFlightId(text)) {
    throw new RangeError(`a flight id must be 32 hexadecimal digits, got ${String(text)}`);
  }
  return text;
}

/** Readonly all the way down: what was written does not change. */
export type Immutable<T> = unknown extends T
  ? T
  : T extends string | number | boolean | null | undefined
    ? T
    : T extends readonly (infer Item)[]
      ? readonly Immutable<Item>[]
      : { readonly [Key in keyof T]: Immutable<T[Key]> };
