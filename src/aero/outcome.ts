/**
 * A number that cannot be given yet, and why. Broken preconditions throw instead: this is for what the
 * world does (a gauge that reads nonsense, a baseline not flown yet).
 */
export interface Unavailable<Because extends string> {
  readonly kind: 'unavailable';
  readonly because: Because;
}

export interface Ready<Value> {
  readonly kind: 'ready';
  readonly value: Value;
}

export type Outcome<Value, Because extends string> = Ready<Value> | Unavailable<Because>;

export function ready<Value>(value: Value): Ready<Value> {
  return { kind: 'ready', value };
}

export function unavailable<Because extends string>(because: Because): Unavailable<Because> {
  return { kind: 'unavailable', because };
}

/** @throws RangeError naming the quantity when it is NaN or infinite */
export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value))
    throw new RangeError(`${name} must be a finite number, got ${value}`);
}

/** @throws RangeError naming the quantity unless it is finite and above zero */
export function requirePositive(name: string, value: number): void {
  if (!(Number.isFinite(value) && value > 0)) {
    throw new RangeError(`${name} must be finite and above 0, got ${value}`);
  }
}

/** @throws RangeError naming the quantity unless it is finite and not negative */
export function requireNotNegative(name: string, value: number): void {
  if (!(Number.isFinite(value) && value >= 0)) {
    throw new RangeError(`${name} must be finite and not negative, got ${value}`);
  }
}
