import {
  ICE_POINT_K,
  KILOGRAMS_PER_POUND,
  METRES_PER_FOOT,
  METRES_PER_SECOND_PER_KNOT,
  NEWTONS_PER_POUND_FORCE,
  SECONDS_PER_HOUR,
  SECONDS_PER_MINUTE,
  STANDARD_GRAVITY_M_PER_S2,
} from './units.ts';

/*
 * One-line conversions for code that knows its unit. A reading whose unit is only known at run time goes
 * through `toSi` in units.ts. NaN and infinity pass through: these never decide anything.
 */

export function kilogramsFromPounds(massLb: number): number {
  return massLb * KILOGRAMS_PER_POUND;
}

export function poundsFromKilograms(massKg: number): number {
  return massKg / KILOGRAMS_PER_POUND;
}

export function kgPerSFromLbPerHour(flowLbPerHour: number): number {
  return (flowLbPerHour * KILOGRAMS_PER_POUND) / SECONDS_PER_HOUR;
}

export function lbPerHourFromKgPerS(flowKgPerS: number): number {
  return (flowKgPerS * SECONDS_PER_HOUR) / KILOGRAMS_PER_POUND;
}

export function metresFromFeet(lengthFt: number): number {
  return lengthFt * METRES_PER_FOOT;
}

export function feetFromMetres(lengthM: number): number {
  return lengthM / METRES_PER_FOOT;
}

export function squareMetresFromSquareFeet(areaFt2: number): number {
  return areaFt2 * METRES_PER_FOOT ** 2;
}

export function squareFeetFromSquareMetres(areaM2: number): number {
  return areaM2 / METRES_PER_FOOT ** 2;
}

export function metresPerSecondFromKnots(speedKt: number): number {
  return speedKt * METRES_PER_SECOND_PER_KNOT;
}

export function knotsFromMetresPerSecond(speedMPerS: number): number {
  return speedMPerS / METRES_PER_SECOND_PER_KNOT;
}

export function metresPerSecondFromFeetPerMinute(rateFtPerMin: number): number {
  return (rateFtPerMin * METRES_PER_FOOT) / SECONDS_PER_MINUTE;
}

export function feetPerMinuteFromMetresPerSecond(rateMPerS: number): number {
  return (rateMPerS * SECONDS_PER_MINUTE) / METRES_PER_FOOT;
}

export function newtonsFromPoundsForce(forceLbf: number): number {
  return forceLbf * NEWTONS_PER_POUND_FORCE;
}

export function poundsForceFromNewtons(forceN: number): number {
  return forceN / NEWTONS_PER_POUND_FORCE;
}

/** Weight of a mass under standard gravity: an aircraft of 1 lb weighs 1 lbf. */
export function newtonsFromKilograms(massKg: number): number {
  return massKg * STANDARD_GRAVITY_M_PER_S2;
}

export function kilogramsFromNewtons(weightN: number): number {
  return weightN / STANDARD_GRAVITY_M_PER_S2;
}

export function kelvinFromCelsius(tempDegC: number): number {
  return tempDegC + ICE_POINT_K;
}

export function celsiusFromKelvin(tempK: number): number {
  return tempK - ICE_POINT_K;
}
