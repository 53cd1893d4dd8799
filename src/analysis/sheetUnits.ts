import {
  kilogramsFromNewtons,
  lbPerHourFromKgPerS,
  poundsFromKilograms,
} from '../aero/conversions.ts';
import type { FlightSheet } from '../record/sheet.ts';

/** Results are in SI; they are shown in the units of the flight sheet. Without a sheet they stay metric. */
export type FlowUnit = 'lb/h' | 'kg/h';
export type MassUnit = 'lb' | 'kg';

export function flowUnitOf(sheet: FlightSheet | null): FlowUnit {
  return sheet?.massUnit === 'lb' ? 'lb/h' : 'kg/h';
}

export function massUnitOf(sheet: FlightSheet | null): MassUnit {
  return sheet?.massUnit ?? 'kg';
}

export function flowIn(unit: FlowUnit, flowKgPerS: number): number {
  return unit === 'lb/h' ? lbPerHourFromKgPerS(flowKgPerS) : flowKgPerS * 3600;
}

export function massIn(unit: MassUnit, massKg: number): number {
  return unit === 'lb' ? poundsFromKilograms(massKg) : massKg;
}

/** A weight as the crew says it: the mass that weighs this much under standard gravity. */
export function weightIn(unit: MassUnit, weightN: number): number {
  return massIn(unit, kilogramsFromNewtons(weightN));
}
