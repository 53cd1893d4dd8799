import {
  ready,
  requireFinite,
  requireNotNegative,
  requirePositive,
  unavailable,
  type Outcome,
} from './outcome.ts';

/*
 * What a change of fuel flow says about thrust, and so about drag. An engine map belongs to one aircraft
 * at one Mach number and height; none is built in. Check values: test/reference/fuelFlow.json
 */

/** Total flow = (idle + slope × thrust) × √(T/Tstd), all engines together, at the card's condition. */
export interface EngineMap {
  readonly idleKgPerS: number;
  readonly slopeKgPerSPerN: number;
}

interface Day {
  readonly temperatureK: number;
  readonly standardTemperatureK: number;
}

/** Fuel flow of a thrust. @throws RangeError when a map term or the thrust is negative */
export function engineMapFuelFlowKgPerS({
  map,
  thrustN,
  ...day
}: Day & { readonly map: EngineMap; readonly thrustN: number }): number {
  requireMap(map);
  requireNotNegative('thrust', thrustN);
  return (map.idleKgPerS + map.slopeKgPerSPerN * thrustN) * dayFactor(day);
}

/**
 * Thrust of a fuel flow: the inverse of `engineMapFuelFlowKgPerS`.
 *
 * @returns `belowIdle` when the flow is less than the map's own at no thrust
 */
export function engineMapThrustN({
  map,
  fuelFlowKgPerS,
  ...day
}: Day & { readonly map: EngineMap; readonly fuelFlowKgPerS: number }): Outcome<
  number,
  'belowIdle'
> {
  requireMap(map);
  requirePositive('fuel flow', fuelFlowKgPerS);
  const aboveIdleKgPerS = fuelFlowKgPerS / dayFactor(day) - map.idleKgPerS;
  if (aboveIdleKgPerS < 0) return unavailable('belowIdle');
  return ready(aboveIdleKgPerS / map.slopeKgPerSPerN);
}

/** Fuel a newton more thrust costs at the temperature flown, kg/s per N. */
export function slopeAtKgPerSPerN({ map, ...day }: Day & { readonly map: EngineMap }): number {
  requireMap(map);
  return map.slopeKgPerSPerN * dayFactor(day);
}

/**
 * Share of drag removed, (Fb − F)/(Fb − c0), by a map that is a straight line. May be negative.
 *
 * @param idleKgPerS c0, the map's idle term; all three flows at one condition
 * @returns `baselineBelowIdle` when the baseline leaves no thrust to compare with
 */
export function dragReductionFromMap({
  fuelFlowKgPerS,
  baselineFuelFlowKgPerS,
  idleKgPerS,
}: {
  readonly fuelFlowKgPerS: number;
  readonly baselineFuelFlowKgPerS: number;
  readonly idleKgPerS: number;
}): Outcome<number, 'baselineBelowIdle'> {
  requireFinite('fuel flow', fuelFlowKgPerS);
  requireFinite('baseline fuel flow', baselineFuelFlowKgPerS);
  requireNotNegative('idle flow', idleKgPerS);
  const baselineThrustShare = baselineFuelFlowKgPerS - idleKgPerS;
  if (baselineThrustShare <= 0) return unavailable('baselineBelowIdle');
  return ready((baselineFuelFlowKgPerS - fuelFlowKgPerS) / baselineThrustShare);
}

/** A drag reduction with what its doubt needs: how it moves with the fuel reduction and with the slope. */
export interface SlopeDragReduction {
  readonly dragReductionFraction: number;
  /** ∂r_D/∂r_F. */
  readonly perFuelReduction: number;
  /** ∂r_D/∂s. */
  readonly perSlope: number;
}

/**
 * Share of drag removed from the share of fuel saved, 1 − (1 − r_F)^(1/(1+s)).
 *
 * @param slope s = d ln c/d ln T, the local slope of thrust specific fuel consumption with thrust;
 *   at part power usually negative, and then fuel understates drag
 * @returns `slopeNotUsable` at or below −1, where less thrust would burn no less fuel
 * @throws RangeError when a number is not finite or the fuel reduction is 1 or more
 * @see SFTE Reference Handbook (2013), jet fuel-flow standardization
 */
export function dragReductionFromSlope({
  fuelReductionFraction,
  slope,
}: {
  readonly fuelReductionFraction: number;
  readonly slope: number;
}): Outcome<SlopeDragReduction, 'slopeNotUsable'> {
  requireFinite('slope', slope);
  if (!(Number.isFinite(fuelReductionFraction) && fuelReductionFraction < 1)) {
    throw new RangeError(`fuel reduction must be finite and below 1, got ${fuelReductionFraction}`);
  }
  if (slope <= -1) return unavailable('slopeNotUsable');
  const fuelLeft = 1 - fuelReductionFraction;
  const dragLeft = fuelLeft ** (1 / (1 + slope));
  return ready({
    dragReductionFraction: 1 - dragLeft,
    perFuelReduction: dragLeft / ((1 + slope) * fuelLeft),
    perSlope: (dragLeft * Math.log(fuelLeft)) / (1 + slope) ** 2,
  });
}

/**
 * Most the excess force can matter to the flow when no engine map is known: |X|/W × L/D × F. It is the
 * half-range of a rectangular doubt, not a correction.
 *
 * @param liftToDragAtMost the highest lift to drag ratio the aircraft could have
 */
export function energyHalfRangeKgPerS({
  excessForceN,
  weightN,
  fuelFlowKgPerS,
  liftToDragAtMost,
}: {
  readonly excessForceN: number;
  readonly weightN: number;
  readonly fuelFlowKgPerS: number;
  readonly liftToDragAtMost: number;
}): number {
  requireFinite('excess force', excessForceN);
  requirePositive('weight', weightN);
  requirePositive('fuel flow', fuelFlowKgPerS);
  requirePositive('lift to drag ratio', liftToDragAtMost);
  return (Math.abs(excessForceN) / weightN) * liftToDragAtMost * fuelFlowKgPerS;
}

function dayFactor({ temperatureK, standardTemperatureK }: Day): number {
  requirePositive('temperature', temperatureK);
  requirePositive('standard temperature', standardTemperatureK);
  return Math.sqrt(temperatureK / standardTemperatureK);
}

function requireMap({ idleKgPerS, slopeKgPerSPerN }: EngineMap): void {
  requireNotNegative('idle flow', idleKgPerS);
  requirePositive('slope', slopeKgPerSPerN);
}
