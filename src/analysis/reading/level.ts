import type { AirState } from '../../aero/atmosphere.ts';
import { energyHalfRangeKgPerS } from '../../aero/engineMap.ts';
import { mapElsewhere } from '../../aero/engines.ts';
import { levelFuelFlow } from '../../aero/fuelFlow.ts';
import { slopeAtFuelFlow } from '../../aero/thrustMap.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** A flow without the excess force of its moment, or the doubt that it leaves. */
interface Level {
  readonly kgPerS: number;
  readonly tooLarge: boolean;
  readonly slopeKgPerSPerN: number;
  readonly halfRangeKgPerS: number;
}

interface Flown {
  readonly flowKgPerS: number;
  readonly state: AirState;
  readonly excessN: number;
  readonly weightN: number;
}

/**
 * With a map the excess force is taken out; without one, or where the flow lies beyond its table, it is a doubt as large
 * as lift to drag allows.
 */
export function levelOf(terms: SheetTerms, flown: Flown): Level {
  const slopeKgPerSPerN = slopeOf(terms, flown);
  if (slopeKgPerSPerN === null) return bounded(terms, flown);
  const level = levelFuelFlow({
    fuelFlowKgPerS: flown.flowKgPerS,
    slopeKgPerSPerN,
    excessForceN: flown.excessN,
  });
  return {
    kgPerS: level.fuelFlowKgPerS,
    tooLarge: level.tooLarge,
    slopeKgPerSPerN,
    halfRangeKgPerS: 0,
  };
}

function slopeOf({ drag, cardAir }: SheetTerms, { state, flowKgPerS }: Flown): number | null {
  if (drag?.kind !== 'map') return null;
  const map = mapElsewhere({
    map: drag.map,
    pressureRatio: state.pressureRatio / cardAir.pressureRatio,
    temperatureRatio: state.temperatureK / cardAir.temperatureK,
  });
  const slope = slopeAtFuelFlow(map, flowKgPerS);
  return slope.kind === 'ready' ? slope.value : null;
}

function bounded({ liftToDragAtMost }: SheetTerms, flown: Flown): Level {
  const { flowKgPerS, excessN, weightN } = flown;
  const halfRangeKgPerS = energyHalfRangeKgPerS({
    excessForceN: excessN,
    weightN,
    fuelFlowKgPerS: flowKgPerS,
    liftToDragAtMost,
  });
  return {
    kgPerS: flowKgPerS,
    // Nothing is corrected, so no correction can be too large: the doubt carries it.
    tooLarge: false,
    slopeKgPerSPerN: (flowKgPerS * liftToDragAtMost) / weightN / Math.sqrt(3),
    halfRangeKgPerS,
  };
}

/** f′W/F at the card: the relative fuel that thrust of one weight would cost, by the map or by the bound of lift to drag. */
export function levelSlopeShare(
  { drag, liftToDragAtMost }: SheetTerms,
  flowKgPerS: number,
  weightN: number,
): number {
  const slope = drag?.kind === 'map' ? slopeAtFuelFlow(drag.map, flowKgPerS) : null;
  return slope?.kind === 'ready' ? (slope.value * weightN) / flowKgPerS : liftToDragAtMost;
}
