import {
  ready,
  requireNotNegative,
  requirePositive,
  unavailable,
  type Outcome,
} from './outcome.ts';

/*
 * Friction of a flat plate, one side, on plate length. A sanity check of a fuel-derived figure, no more:
 * suction thins a laminar layer and raises its wall shear, so the laminar line is a lower bound.
 * SFTE Reference Handbook (2013), aerodynamics. Check values: test/reference/friction.json
 */
export const LAMINAR_COEFFICIENT = 1.328;
export const TURBULENT_COEFFICIENT = 0.455;
export const TURBULENT_EXPONENT = 2.58;
export const ITTC_COEFFICIENT = 0.075;
export const ITTC_OFFSET = 2;
export const LAMINAR_MACH_FACTOR = 0.1305;
export const LAMINAR_MACH_EXPONENT = -0.12;
export const TURBULENT_MACH_FACTOR = 0.144;
export const TURBULENT_MACH_EXPONENT = -0.65;
export const LAMINAR_THICKNESS_COEFFICIENT = 5.2;
export const TURBULENT_THICKNESS_COEFFICIENT = 0.37;
export const TURBULENT_THICKNESS_EXPONENT = 0.2;

/** Reynolds numbers the turbulent line was fitted to. */
export const LOWEST_TURBULENT_REYNOLDS = 5e5;
export const HIGHEST_TURBULENT_REYNOLDS = 1e9;
/** The printed table of the ship line ends here (from memory). */
export const HIGHEST_ITTC_REYNOLDS = 1e10;

/** Blasius: Cf = 1.328/√Re. @throws RangeError unless Re is above zero */
export function laminarPlateCoefficient(reynolds: number): number {
  requirePositive('Reynolds number', reynolds);
  return LAMINAR_COEFFICIENT / Math.sqrt(reynolds);
}

/** Prandtl and Schlichting: Cf = 0.455/(log10 Re)^2.58. @throws RangeError outside 5e5 to 1e9 */
export function turbulentPlateCoefficient(reynolds: number): number {
  if (!inTurbulentRange(reynolds)) {
    throw new RangeError(`Reynolds number must be 5e5 to 1e9, got ${reynolds}`);
  }
  return TURBULENT_COEFFICIENT / Math.log10(reynolds) ** TURBULENT_EXPONENT;
}

/** ITTC 1957, a ship correlation line: a cross-check only. @throws RangeError outside 5e5 to 1e10 */
export function ittc1957Coefficient(reynolds: number): number {
  if (!(reynolds >= LOWEST_TURBULENT_REYNOLDS && reynolds <= HIGHEST_ITTC_REYNOLDS)) {
    throw new RangeError(`Reynolds number must be 5e5 to 1e10, got ${reynolds}`);
  }
  return ITTC_COEFFICIENT / (Math.log10(reynolds) - ITTC_OFFSET) ** 2;
}

/** Factor on the laminar coefficient, adiabatic wall. @throws RangeError for Mach outside 0 to 1 */
export function laminarCompressibility(mach: number): number {
  requireSubsonic(mach);
  return (1 + LAMINAR_MACH_FACTOR * mach ** 2) ** LAMINAR_MACH_EXPONENT;
}

/** Factor on the turbulent coefficient, adiabatic wall. @throws RangeError for Mach outside 0 to 1 */
export function turbulentCompressibility(mach: number): number {
  requireSubsonic(mach);
  return (1 + TURBULENT_MACH_FACTOR * mach ** 2) ** TURBULENT_MACH_EXPONENT;
}

interface MixedPlate {
  /** On the whole chord. */
  readonly reynolds: number;
  /** Share of the chord that is laminar, 0 to 1. */
  readonly transitionFraction: number;
}

/**
 * Plate laminar to transition and turbulent behind, the turbulent layer starting with the momentum it
 * inherits (virtual origin). Incompressible.
 *
 * @returns `reynoldsOutsideFormula` where the turbulent line would be asked outside 5e5 to 1e9
 * @throws RangeError for a fraction outside 0 to 1 or a Reynolds number not above zero
 */
export function virtualOriginCoefficient({
  reynolds,
  transitionFraction,
}: MixedPlate): Outcome<number, 'reynoldsOutsideFormula'> {
  requireFraction(transitionFraction);
  requirePositive('Reynolds number', reynolds);
  if (transitionFraction === 1) return ready(laminarPlateCoefficient(reynolds));
  if (!inTurbulentRange(reynolds)) return unavailable('reynoldsOutsideFormula');
  if (transitionFraction === 0) return ready(turbulentPlateCoefficient(reynolds));
  const inherited = laminarPlateCoefficient(reynolds * transitionFraction) * transitionFraction;
  // Searched in Reynolds number on the length, where the line's own limits are exact.
  const carriedBy = (onLength: number): number =>
    (turbulentPlateCoefficient(onLength) * onLength) / reynolds;
  let low = LOWEST_TURBULENT_REYNOLDS;
  let high = reynolds * transitionFraction;
  if (low >= high || carriedBy(low) > inherited) return unavailable('reynoldsOutsideFormula');
  for (let middle = (low + high) / 2; low < middle && middle < high; middle = (low + high) / 2) {
    if (carriedBy(middle) < inherited) low = middle;
    else high = middle;
  }
  return ready(carriedBy(reynolds * (1 - transitionFraction) + high));
}

/**
 * The older correction Cf = Cf_T − A/Re with A fixed at transition. It keeps the rear layer as thick as
 * if turbulent from the nose, so it overstates the saving. Incompressible; fails as above.
 */
export function transitionConstantCoefficient({
  reynolds,
  transitionFraction,
}: MixedPlate): Outcome<number, 'reynoldsOutsideFormula'> {
  requireFraction(transitionFraction);
  requirePositive('Reynolds number', reynolds);
  const atTransition = reynolds * transitionFraction;
  if (!inTurbulentRange(reynolds)) return unavailable('reynoldsOutsideFormula');
  if (transitionFraction === 0) return ready(turbulentPlateCoefficient(reynolds));
  if (!inTurbulentRange(atTransition)) return unavailable('reynoldsOutsideFormula');
  return ready(turbulentPlateCoefficient(reynolds) - transitionConstant(atTransition) / reynolds);
}

/** A = Re_t (Cf_T − Cf_L) at transition. @throws RangeError outside 5e5 to 1e9 */
export function transitionConstant(transitionReynolds: number): number {
  return (
    transitionReynolds *
    (turbulentPlateCoefficient(transitionReynolds) - laminarPlateCoefficient(transitionReynolds))
  );
}

/** Laminar layer thickness 5.2x/√Re, metres. @param reynolds on `distanceM` */
export function laminarLayerThicknessM({ distanceM, reynolds }: LayerPlace): number {
  requireNotNegative('distance', distanceM);
  requirePositive('Reynolds number', reynolds);
  return (LAMINAR_THICKNESS_COEFFICIENT * distanceM) / Math.sqrt(reynolds);
}

/** Turbulent layer thickness 0.37x/Re^0.2, metres. @param reynolds on `distanceM` */
export function turbulentLayerThicknessM({ distanceM, reynolds }: LayerPlace): number {
  requireNotNegative('distance', distanceM);
  requirePositive('Reynolds number', reynolds);
  return (TURBULENT_THICKNESS_COEFFICIENT * distanceM) / reynolds ** TURBULENT_THICKNESS_EXPONENT;
}

interface LayerPlace {
  readonly distanceM: number;
  readonly reynolds: number;
}

function inTurbulentRange(reynolds: number): boolean {
  return reynolds >= LOWEST_TURBULENT_REYNOLDS && reynolds <= HIGHEST_TURBULENT_REYNOLDS;
}

function requireSubsonic(mach: number): void {
  if (!(mach >= 0 && mach <= 1)) throw new RangeError(`Mach number must be 0 to 1, got ${mach}`);
}

function requireFraction(fraction: number): void {
  if (!(fraction >= 0 && fraction <= 1)) {
    throw new RangeError(`transition must be 0 to 1 of the chord, got ${fraction}`);
  }
}
