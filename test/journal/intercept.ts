/** Puts `around` in the place of a method. Returns the way back. */
export function intercept<Self extends object>(
  prototype: Self,
  name: string,
  around: (self: Self, run: () => unknown, given: readonly unknown[]) => unknown,
): () => void {
  const real: unknown = Reflect.get(prototype, name);
  if (typeof real !== 'function') {
    throw new TypeError(`${name} must be a method`);
  }
  Reflect.set(prototype, name, function (this: Self, ...given: readonly unknown[]): unknown {
    return around(this, () => Reflect.apply(real, this, given), given);
  });
  return () => {
    Reflect.set(prototype, name, real);
  };
}
