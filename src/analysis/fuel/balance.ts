import type { FlightView } from '../../record/flight.ts';
import { contextOf } from '../reading/context.ts';
import {
  FUEL_SOURCES,
  type BalanceVerdict,
  type ComparedPair,
  type FuelBalance,
  type FuelPair,
  type FuelSource,
  type FuelUsedAnswer,
} from './balanceResults.ts';
import { counterLedger, whileRunning } from './counterLedger.ts';
import { countersOf, unitCounter } from './counters.ts';
import { flowLedger } from './flowLedger.ts';
import { commonTime, emptyLedger, type Booked, type Ledger } from './ledgers.ts';
import { tankLedger, tankLooks } from './tankLedger.ts';
import { groundFuel } from './upliftLog.ts';
import { loadedPair, upliftLedger, type LoadedPair } from './upliftLedger.ts';

/** 95 % by common practice. */
const AGREES_WITHIN = 2;

/** Whether the books balance: fuel by gauges over time, counters, tanks and uplift, each pair over the time of both. */
export function fuelBalance(view: FlightView): FuelBalance {
  const { state } = view;
  const context = contextOf(view);
  const { sheet } = state;
  if (sheet === null) {
    const none = FUEL_SOURCES.map((source) => emptyLedger(source, 'noFlightSheet'));
    return { used: usedOf(none), pairs: [], verdict: { kind: 'nothingToCompare' } };
  }
  const ground = groundFuel(view);
  const counters = whileRunning(countersOf(state, sheet), ground);
  const looks = tankLooks(state, sheet);
  const ledgers = [
    context === null
      ? emptyLedger('flow', 'noReading')
      : flowLedger(view, context, unitCounter(counters)),
    counterLedger(counters),
    tankLedger(looks, ground),
    upliftLedger(looks, ground),
  ];
  const loaded = loadedPair(looks, ground);
  const pairs = [...comparedPairs(ledgers), ...(loaded === null ? [] : [loadedOf(loaded)])];
  return { used: usedOf(ledgers), pairs, verdict: verdictOf(pairs) };
}

function usedOf(ledgers: readonly Ledger[]): Readonly<Record<FuelSource, FuelUsedAnswer>> {
  const of = (source: FuelSource): FuelUsedAnswer =>
    ledgers.find((ledger) => ledger.source === source)?.used ?? {
      kind: 'noAnswer',
      because: 'noReading',
      entries: [],
    };
  return { flow: of('flow'), counters: of('counters'), tanks: of('tanks'), uplift: of('uplift') };
}

function comparedPairs(ledgers: readonly Ledger[]): readonly ComparedPair[] {
  return ledgers.flatMap((one, place) =>
    ledgers.slice(place + 1).map((other) => comparedOf(one, other)),
  );
}

function comparedOf(one: Ledger, other: Ledger): ComparedPair {
  const names = { one: one.source, other: other.source };
  const none = (
    because: Extract<ComparedPair['compared'], { kind: 'noAnswer' }>['because'],
  ): ComparedPair => ({ ...names, compared: { kind: 'noAnswer', because, entries: [] } });
  if (one.covers === null || other.covers === null) return none('sourceMissing');
  const common = commonTime(one, other);
  const a = common === null ? null : one.between(common.from, common.to);
  const b = common === null ? null : other.between(common.from, common.to);
  if (common === null || a === null || b === null) return none('noCommonTime');
  return { ...names, compared: answered(common, a, b) };
}

function answered(
  { from, to }: Pick<FuelPair, 'from' | 'to'>,
  one: Booked,
  other: Booked,
): ComparedPair['compared'] {
  const differenceKg = one.kg - other.kg;
  const standardUncertaintyKg = Math.hypot(one.standardUncertaintyKg, other.standardUncertaintyKg);
  return {
    kind: 'answer',
    value: {
      from,
      to,
      oneKg: one.kg,
      otherKg: other.kg,
      differenceKg,
      standardUncertaintyKg,
      agrees: Math.abs(differenceKg) <= AGREES_WITHIN * standardUncertaintyKg,
    },
    how: {
      entries: [...new Set([...one.by, ...other.by])],
      method: 'overCommonTime',
      broken: [...new Set([...one.broken, ...other.broken])],
    },
  };
}

function loadedOf({ from, to, uplifted, risen }: LoadedPair): ComparedPair {
  return { one: 'uplift', other: 'tanks', compared: answered({ from, to }, uplifted, risen) };
}

type Seen = FuelPair & { readonly one: FuelSource; readonly other: FuelSource };

/**
 * A source stands when a third one agrees with it and would not, were it off by the whole difference in question. Of a
 * pair that differs the one that stands is right, and the other the odd one out; where both stand or neither does,
 * nobody can tell.
 */
function verdictOf(pairs: readonly ComparedPair[]): BalanceVerdict {
  const seen = pairs.flatMap(({ one, other, compared }): readonly Seen[] =>
    compared.kind === 'answer' ? [{ ...compared.value, one, other }] : [],
  );
  if (seen.length === 0) return { kind: 'nothingToCompare' };
  const differing = seen.filter(({ agrees }) => !agrees);
  if (differing.length === 0) return { kind: 'allAgree' };
  const odd = new Set(differing.map((pair) => oddOf(pair, seen)));
  const [only] = odd;
  return only === undefined || only === null || odd.size > 1
    ? { kind: 'nobodyCanTell' }
    : { kind: 'oddOneOut', odd: only };
}

function oddOf(pair: Seen, seen: readonly Seen[]): FuelSource | null {
  // Were the other right, this share of what `one` says would be wrong, and the other way round.
  const oneStands = stands(pair.one, pair.other, -pair.differenceKg / pair.oneKg, seen);
  const otherStands = stands(pair.other, pair.one, pair.differenceKg / pair.otherKg, seen);
  if (oneStands === otherStands) return null;
  return oneStands ? pair.other : pair.one;
}

/** Whether some third source agrees with this one and rules out that it is off by that share of what it says. */
function stands(
  source: FuelSource,
  against: FuelSource,
  offShare: number,
  seen: readonly Seen[],
): boolean {
  return seen.some((pair) => {
    if (pair.one === against || pair.other === against || !pair.agrees) return false;
    if (pair.one !== source && pair.other !== source) return false;
    const isOne = pair.one === source;
    const shiftKg = offShare * (isOne ? pair.oneKg : pair.otherKg);
    const shifted = pair.differenceKg + (isOne ? shiftKg : -shiftKg);
    return Math.abs(shifted) > AGREES_WITHIN * pair.standardUncertaintyKg;
  });
}
