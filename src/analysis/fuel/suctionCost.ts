import type { EntryId, EpochMs } from '../../record/brand.ts';
import { items } from '../../record/trail.ts';
import { correctedReading, displayUncertaintySi } from '../calibrate.ts';
import type { Context } from '../reading/context.ts';
import { burntBetween, type Counter } from './counters.ts';
import { flowIntegral, type FlowLook } from './flowIntegral.ts';
import type { NoGross } from './spanResults.ts';

/** What suction itself cost over a stretch. */
export type SuctionCost = { readonly by: readonly EntryId[] } & (
  | {
      readonly kind: 'ownFuel';
      readonly from: 'counter' | 'gauge';
      readonly kg: number;
      readonly standardUncertaintyKg: number;
    }
  | { readonly kind: 'ownFuelNotRead' }
  /** Inside what the engines burnt. */
  | { readonly kind: 'bleed'; readonly kg: number; readonly standardUncertaintyKg: number }
  | { readonly kind: 'unmeasured'; readonly because: NoGross }
);

export function suctionCost(
  context: Context,
  unit: Counter | null,
  stretch: { readonly from: EpochMs; readonly to: EpochMs; readonly countedKg: number },
): SuctionCost {
  const cost = context.terms.suctionCost;
  switch (cost.kind) {
    case 'ownFuel':
      return ownFuel(context, unit, stretch);
    case 'unmeasured':
      return { ...cost, by: [] };
    case 'bleed':
      return {
        kind: 'bleed',
        kg: (stretch.countedKg * cost.share) / (1 + cost.share),
        standardUncertaintyKg:
          (stretch.countedKg * cost.standardUncertainty) / (1 + cost.share) ** 2,
        by: [],
      };
  }
}

function ownFuel(
  context: Context,
  unit: Counter | null,
  { from, to }: { readonly from: EpochMs; readonly to: EpochMs },
): SuctionCost {
  const counted = unit === null ? null : burntBetween([unit], from, to);
  if (counted?.kind === 'burnt') {
    const { kg, standardUncertaintyKg, by } = counted;
    return { kind: 'ownFuel', from: 'counter', kg, standardUncertaintyKg, by };
  }
  const { looks, residualKgPerS } = unitLooks(context);
  const { suctionChanges } = context.state;
  const gauged = flowIntegral(
    looks,
    [from, to],
    [...items(suctionChanges)].map(({ at }) => at),
  );
  // One look may have been on the ground or at idle: a span needs one of its own.
  if (gauged === null || !looks.some(({ at }) => at >= from && at <= to)) {
    return { kind: 'ownFuelNotRead', by: [] };
  }
  return {
    kind: 'ownFuel',
    from: 'gauge',
    kg: gauged.kg,
    standardUncertaintyKg: Math.hypot(
      gauged.displaysKg,
      gauged.gapsKg,
      (residualKgPerS * (to - from)) / 1000,
    ),
    by: gauged.by,
  };
}

function unitLooks({ state, terms }: Context): {
  readonly looks: readonly FlowLook[];
  readonly residualKgPerS: number;
} {
  const gauge = terms.suctionFlow;
  if (gauge === null) return { looks: [], residualKgPerS: 0 };
  const looks: FlowLook[] = [];
  let residualKgPerS = 0;
  for (const glance of items(state.glances)) {
    const reading = glance.readings[gauge.id];
    const corrected = reading === undefined ? null : correctedReading(gauge, reading);
    if (corrected?.kind !== 'corrected') continue;
    residualKgPerS = Math.max(residualKgPerS, corrected.parts.residualSi);
    looks.push({
      at: glance.at,
      by: glance.by,
      kgPerS: corrected.valueSi,
      standardUncertaintyKgPerS: displayUncertaintySi(corrected.parts),
    });
  }
  return { looks: looks.sort((a, b) => a.at - b.at), residualKgPerS };
}
