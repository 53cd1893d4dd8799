import { requireNotNegative, requirePositive } from './outcome.ts';

/** Drag of a parabolic polar and how it answers to weight. */
export interface PolarDrag {
  readonly dragN: number;
  /** Share of the drag that comes with lift. */
  readonly liftDependentShare: number;
  /** d ln D/d ln W at this Mach number and pressure: twice that share. */
  readonly weightElasticity: number;
}

/**
 * D = q S CD0 + K W²/(q S) of level flight.
 *
 * @throws RangeError when the zero-lift coefficient is negative or anything else not above zero
 * @see SFTE Reference Handbook (2013), fixed-wing performance. Check values: test/reference/fuelFlow.json
 */
export function polarDrag({
  dynamicPressurePa,
  wingAreaM2,
  zeroLiftCoefficient,
  liftFactor,
  weightN,
}: {
  readonly dynamicPressurePa: number;
  readonly wingAreaM2: number;
  /** CD0. */
  readonly zeroLiftCoefficient: number;
  /** K in CD = CD0 + K CL². */
  readonly liftFactor: number;
  readonly weightN: number;
}): PolarDrag {
  requirePositive('dynamic pressure', dynamicPressurePa);
  requirePositive('wing area', wingAreaM2);
  requireNotNegative('zero-lift coefficient', zeroLiftCoefficient);
  requirePositive('lift factor', liftFactor);
  requirePositive('weight', weightN);
  const qS = dynamicPressurePa * wingAreaM2;
  const liftDependentN = (liftFactor * weightN ** 2) / qS;
  const dragN = qS * zeroLiftCoefficient + liftDependentN;
  const liftDependentShare = liftDependentN / dragN;
  return { dragN, liftDependentShare, weightElasticity: 2 * liftDependentShare };
}
