import type { EpochMs } from '../../record/brand.ts';
import type { FuelGate } from './balanceResults.ts';
import { emptyLedger, type Booked, type Ledger } from './ledgers.ts';
import { dropBetween, startLook, type TankLook } from './tankLedger.ts';
import type { GroundFuel, Uplift } from './upliftLog.ts';

/**
 * What was burnt by what went back in: the uplift after landing, and by how much the tanks then stood below the start.
 * With the tanks filled to the old mark the gauges hardly enter.
 */
export function upliftLedger(looks: readonly TankLook[], ground: GroundFuel): Ledger {
  const { uplifts, enginesFrom, enginesTo } = ground;
  const after = uplifts.filter(({ at }) => enginesTo !== null && at >= enginesTo);
  const entries = uplifts.flatMap(({ by }) => by);
  const lastAt = after.at(-1)?.at;
  if (lastAt === undefined || enginesTo === null) return emptyLedger('uplift', 'noUplift', entries);
  const massless = after.find(({ mass }) => mass.kind === 'none')?.mass;
  if (massless?.kind === 'none') return emptyLedger('uplift', massless.because, entries);
  const start = startLook(looks, ground);
  const refilled = looks.find(({ at }) => at >= lastAt);
  const from = enginesFrom ?? start?.at ?? null;
  const booked =
    start === null || refilled === undefined ? null : dropBetween(start, refilled, uplifts);
  if (booked === null || from === null || enginesTo <= from) {
    return emptyLedger('uplift', 'tanksNotReadAboutUplift', entries);
  }
  const { kg, standardUncertaintyKg, by, broken } = booked;
  return {
    source: 'uplift',
    used: {
      kind: 'answer',
      value: { from, to: enginesTo, kg, standardUncertaintyKg },
      how: { entries: by, method: 'upliftAndTanks', broken },
    },
    covers: { from, to: enginesTo, marks: [from, enginesTo] },
    between: (a, b) => (a === from && b === enginesTo ? booked : null),
  };
}

/** What was uplifted before the flight beside what the tank gauges say came in. */
export interface LoadedPair {
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly uplifted: Booked;
  readonly risen: Booked;
}

/** @returns null where nothing with a mass went in before the flight, or no gauge was read about it */
export function loadedPair(looks: readonly TankLook[], ground: GroundFuel): LoadedPair | null {
  const { enginesFrom, uplifts } = ground;
  const before = uplifts.filter(({ at }) => enginesFrom !== null && at <= enginesFrom);
  const [first] = before;
  const last = before.at(-1);
  if (first === undefined || last === undefined || enginesFrom === null) return null;
  const low = looks.findLast(({ at }) => at <= first.at);
  const high = looks.find(({ at }) => at >= last.at && at <= enginesFrom);
  const masses = before.flatMap(({ mass }) => (mass.kind === 'mass' ? [mass] : []));
  if (low === undefined || high === undefined || masses.length < before.length) return null;
  return {
    from: low.at,
    to: high.at,
    uplifted: upliftedOf(before, masses),
    risen: {
      kg: high.kg - low.kg,
      standardUncertaintyKg: Math.hypot(low.standardUncertaintyKg, high.standardUncertaintyKg),
      by: [...new Set([...low.by, ...high.by])],
      broken: [],
    },
  };
}

function upliftedOf(
  uplifts: readonly Uplift[],
  masses: readonly Extract<Uplift['mass'], { kind: 'mass' }>[],
): Booked {
  const broken = new Set<FuelGate>(masses.flatMap((mass) => mass.broken));
  return {
    kg: masses.reduce((total, { kg }) => total + kg, 0),
    standardUncertaintyKg: 0,
    by: uplifts.flatMap(({ by }) => by),
    broken: [...broken],
  };
}
