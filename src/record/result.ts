/** What a foreign file or a door may answer: the thing, or why not. Our own mistakes throw instead. */
export type Result<T, E> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

export function good<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function bad<E>(error: E): { readonly ok: false; readonly error: E } {
  return { ok: false, error };
}
