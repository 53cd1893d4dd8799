import type { EpochMs } from '../../record/brand.ts';
import { burntBetween, type Counter } from './counters.ts';
import { emptyLedger, type Booked, type Ledger } from './ledgers.ts';
import type { GroundFuel } from './upliftLog.ts';

/** Looks told for the running engines alone: before they start and after they stop a counter stands. */
export function whileRunning(
  counters: readonly Counter[],
  { enginesFrom, enginesTo }: GroundFuel,
): readonly Counter[] {
  const running = (at: EpochMs): EpochMs => {
    if (enginesFrom !== null && at < enginesFrom) return enginesFrom;
    return enginesTo !== null && at > enginesTo ? enginesTo : at;
  };
  return counters.map((counter) => ({
    ...counter,
    looks: counter.looks.map((look) => ({ ...look, at: running(look.at) })),
  }));
}

/** The time over which every counter can be asked. */
function countedTime(
  counters: readonly Counter[],
): { readonly from: EpochMs; readonly to: EpochMs } | null {
  const [first, ...rest] = counters.map(({ looks }) => ({
    from: looks[0]?.at,
    to: looks.at(-1)?.at,
  }));
  if (first?.from === undefined || first.to === undefined) return null;
  let { from, to }: { from: EpochMs; to: EpochMs } = { from: first.from, to: first.to };
  for (const other of rest) {
    if (other.from === undefined || other.to === undefined) return null;
    if (other.from > from) from = other.from;
    if (other.to < to) to = other.to;
  }
  return to > from ? { from, to } : null;
}

/** Counters' last look less the first. @param counters as `whileRunning` has them */
export function counterLedger(counters: readonly Counter[]): Ledger {
  const entries = counters.flatMap(({ looks }) => looks.flatMap(({ by }) => by));
  const covers = countedTime(counters);
  if (covers === null) return emptyLedger('counters', 'countersNotRead', [...new Set(entries)]);
  const between = (from: EpochMs, to: EpochMs): Booked | null => {
    const burnt = burntBetween(counters, from, to);
    if (burnt.kind === 'notCounted') return null;
    const { kg, standardUncertaintyKg, by } = burnt;
    return { kg, standardUncertaintyKg, by, broken: [] };
  };
  const whole = burntBetween(counters, covers.from, covers.to);
  if (whole.kind === 'notCounted') return emptyLedger('counters', whole.because, entries);
  const { kg, standardUncertaintyKg, by } = whole;
  return {
    source: 'counters',
    used: {
      kind: 'answer',
      value: { ...covers, kg, standardUncertaintyKg },
      how: { entries: by, method: 'lastLessFirst', broken: [] },
    },
    covers: { ...covers, marks: null },
    between,
  };
}
