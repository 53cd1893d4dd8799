import {
  ready,
  requireFinite,
  requireNotNegative,
  requirePositive,
  unavailable,
  type Outcome,
} from './outcome.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from './units.ts';

/*
 * What suction saves, before and after its own cost, and what that is worth over a mission.
 * Check values: test/reference/fuelFlow.json
 */

/** Share of the baseline fuel flow saved, 1 − F/Fb. Negative when more was burnt. */
export function fuelReductionFraction({
  fuelFlowKgPerS,
  baselineFuelFlowKgPerS,
}: {
  readonly fuelFlowKgPerS: number;
  readonly baselineFuelFlowKgPerS: number;
}): number {
  requireFinite('fuel flow', fuelFlowKgPerS);
  requirePositive('baseline fuel flow', baselineFuelFlowKgPerS);
  return 1 - fuelFlowKgPerS / baselineFuelFlowKgPerS;
}

export interface Saving {
  readonly flowKgPerS: number;
  readonly fraction: number;
}

/**
 * What drives the suction. A separate plant burns metered fuel of its own; bleed is paid inside the main
 * engines' flow, where it shows only if the engine's bleed slope is known.
 */
export type SuctionDrive =
  | { readonly kind: 'separatePlant'; readonly plantFlowKgPerS: number }
  | { readonly kind: 'bleed'; readonly bleedPenaltyKgPerS?: number };

/**
 * Gross and net saving side by side. The main engines' saving is gross with a separate plant and net with
 * bleed, so that the cost of suction is never subtracted twice.
 *
 * @throws RangeError when a flow is not finite, the baseline not above zero or a cost negative
 */
export function grossAndNet({
  mainFlowKgPerS,
  baselineFlowKgPerS,
  drive,
}: {
  readonly mainFlowKgPerS: number;
  readonly baselineFlowKgPerS: number;
  readonly drive: SuctionDrive;
}): { readonly gross: Outcome<Saving, 'bleedSlopeUnknown'>; readonly net: Saving } {
  requireFinite('main fuel flow', mainFlowKgPerS);
  requirePositive('baseline fuel flow', baselineFlowKgPerS);
  const mainSavedKgPerS = baselineFlowKgPerS - mainFlowKgPerS;
  const saving = (flowKgPerS: number): Saving => ({
    flowKgPerS,
    fraction: flowKgPerS / baselineFlowKgPerS,
  });
  if (drive.kind === 'separatePlant') {
    requireNotNegative('suction plant flow', drive.plantFlowKgPerS);
    return {
      gross: ready(saving(mainSavedKgPerS)),
      net: saving(mainSavedKgPerS - drive.plantFlowKgPerS),
    };
  }
  const net = saving(mainSavedKgPerS);
  if (drive.bleedPenaltyKgPerS === undefined) {
    return { gross: unavailable('bleedSlopeUnknown'), net };
  }
  requireNotNegative('bleed penalty', drive.bleedPenaltyKgPerS);
  return { gross: ready(saving(mainSavedKgPerS + drive.bleedPenaltyKgPerS)), net };
}

interface Cruise {
  /** Thrust specific fuel consumption, kg/s per N. */
  readonly specificConsumptionKgPerSPerN: number;
  readonly liftToDrag: number;
  /** Any unit: only the ratio of the two enters. */
  readonly initialWeight: number;
  readonly finalWeight: number;
}

/** Breguet endurance at constant consumption and lift to drag, seconds. @throws RangeError unless all are above zero */
export function breguetEnduranceS({
  specificConsumptionKgPerSPerN,
  liftToDrag,
  initialWeight,
  finalWeight,
}: Cruise): number {
  requirePositive('specific consumption', specificConsumptionKgPerSPerN);
  requirePositive('lift to drag ratio', liftToDrag);
  requirePositive('final weight', finalWeight);
  if (!(initialWeight >= finalWeight)) {
    throw new RangeError(`initial weight must be at least ${finalWeight}, got ${initialWeight}`);
  }
  // The consumption is a mass flow: weight falls by g times it.
  const weightPerThrustPerS = specificConsumptionKgPerSPerN * STANDARD_GRAVITY_M_PER_S2;
  return (liftToDrag / weightPerThrustPerS) * Math.log(initialWeight / finalWeight);
}

/** Breguet range at constant speed, metres. */
export function breguetRangeM({
  trueAirspeedMPerS,
  ...cruise
}: Cruise & { readonly trueAirspeedMPerS: number }): number {
  requirePositive('true airspeed', trueAirspeedMPerS);
  return trueAirspeedMPerS * breguetEnduranceS(cruise);
}

/** Range or endurance gained on the same fuel, r/(1 − r): a tenth less drag is a ninth more range. */
export function rangeGainFraction(dragReductionFraction: number): number {
  requireReduction(dragReductionFraction);
  return dragReductionFraction / (1 - dragReductionFraction);
}

/**
 * Fuel share of take-off weight for the same range with less drag, 1 − (1 − f)^(1 − r).
 *
 * @param fuelFraction share needed without the reduction, 0 to 1
 */
export function fuelFractionForSameRange({
  fuelFraction,
  dragReductionFraction,
}: {
  readonly fuelFraction: number;
  readonly dragReductionFraction: number;
}): number {
  requireReduction(dragReductionFraction);
  if (!(fuelFraction >= 0 && fuelFraction < 1)) {
    throw new RangeError(`fuel fraction must be 0 to below 1, got ${fuelFraction}`);
  }
  return 1 - (1 - fuelFraction) ** (1 - dragReductionFraction);
}

function requireReduction(dragReductionFraction: number): void {
  if (!(Number.isFinite(dragReductionFraction) && dragReductionFraction < 1)) {
    throw new RangeError(`drag reduction must be finite and below 1, got ${dragReductionFraction}`);
  }
}
