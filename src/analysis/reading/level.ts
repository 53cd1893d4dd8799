import type { AirState } from '../../aero/atmosphere.ts';
import { energyHalfRangeKgPerS, slopeAtKgPerSPerN } from '../../aero/engineMap.ts';
import { levelFuelFlow } from '../../aero/fuelFlow.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** A flow without the excess force of its moment, or the doubt that it leaves. */
interface Level {
  readonly kgPerS: number;
  readonly tooLarge: boolean;
  readonly slopeKgPerSPerN: number;
  readonly halfRangeKgPerS: number;
}

/** With a map the excess force is taken out; without one it is a doubt as large as lift to drag allows. */
export function levelOf(
  terms: SheetTerms,
  {
    flowKgPerS,
    state,
    excessN,
    weightN,
  }: {
    readonly flowKgPerS: number;
    readonly state: AirState;
    readonly excessN: number;
    readonly weightN: number;
  },
): Level {
  const { map, liftToDragAtMost } = terms;
  if (map === null) {
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
  const slopeKgPerSPerN = slopeAtKgPerSPerN({
    map,
    temperatureK: state.temperatureK,
    standardTemperatureK: state.standardTemperatureK,
  });
  const level = levelFuelFlow({
    fuelFlowKgPerS: flowKgPerS,
    slopeKgPerSPerN,
    excessForceN: excessN,
  });
  return {
    kgPerS: level.fuelFlowKgPerS,
    tooLarge: level.tooLarge,
    slopeKgPerSPerN,
    halfRangeKgPerS: 0,
  };
}
