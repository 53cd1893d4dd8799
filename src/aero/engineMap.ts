import { ready, requireFinite, requirePositive, unavailable, type Outcome } from './outcome.ts';

/*
 * What a change of fuel flow says about thrust, and so about drag, where no engine map is known: see
 * thrustMap.ts for one. Check values: test/reference/fuelFlow.json
 */

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
