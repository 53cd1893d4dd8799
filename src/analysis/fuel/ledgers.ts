import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FuelGate, FuelSource, FuelUsedAnswer } from './balanceResults.ts';

/** One source of fuel used, which can be asked about the time that it covers. */
export interface Ledger {
  readonly source: FuelSource;
  readonly used: FuelUsedAnswer;
  /** Null where it covers nothing. */
  readonly covers: {
    readonly from: EpochMs;
    readonly to: EpochMs;
    /** The only instants it can be asked about; null where any instant inside will do. */
    readonly marks: readonly EpochMs[] | null;
  } | null;
  readonly between: (from: EpochMs, to: EpochMs) => Booked | null;
}

export interface Booked {
  readonly kg: number;
  readonly standardUncertaintyKg: number;
  readonly by: readonly EntryId[];
  readonly broken: readonly FuelGate[];
}

export function emptyLedger(
  source: FuelSource,
  because: Extract<FuelUsedAnswer, { kind: 'noAnswer' }>['because'],
  entries: readonly EntryId[] = [],
): Ledger {
  return {
    source,
    used: { kind: 'noAnswer', because, entries },
    covers: null,
    between: () => null,
  };
}

/** The longest time that both can be asked about. */
export function commonTime(
  one: Ledger,
  other: Ledger,
): { readonly from: EpochMs; readonly to: EpochMs } | null {
  const [a, b] = [one.covers, other.covers];
  if (a === null || b === null) return null;
  const low = a.from > b.from ? a.from : b.from;
  const high = a.to < b.to ? a.to : b.to;
  const asked = (at: EpochMs): boolean =>
    at >= low &&
    at <= high &&
    [a.marks, b.marks].every((marks) => marks === null || marks.includes(at));
  const candidates = [low, high, ...(a.marks ?? []), ...(b.marks ?? [])]
    .filter(asked)
    .sort((x, y) => x - y);
  const from = candidates[0];
  const to = candidates.at(-1);
  return from === undefined || to === undefined || to <= from ? null : { from, to };
}
