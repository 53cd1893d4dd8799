import { lbPerHourFromKgPerS } from '../../aero/conversions.ts';
import type { Gate, LeftOut, Missing, PointNumber, Provisional } from '../../analysis/results.ts';
import type { FlightSheet } from '../../record/sheet.ts';

/** Words of the trade for every reason that the numbers give. */
const GATES: Readonly<Record<Gate, string>> = {
  amendmentsDisagree: 'amendments disagree',
  noAirData: 'no air data',
  turn: 'turn',
  moisture: 'moisture',
  machDrift: 'Mach drift',
  climb: 'climb',
  mach: 'Mach',
  altitude: 'height',
  suctionChanging: 'suction changing',
  notOnCondition: 'not on condition',
  engineDisagrees: 'engines disagree',
  energyCorrectionTooLarge: 'energy correction',
  outsideBaseline: 'outside baseline',
};

const LEFT_OUT: Readonly<Record<Exclude<LeftOut, Gate>, string>> = {
  beforeOnCondition: 'before on condition',
  queried: 'queried',
  incomplete: 'incomplete',
};

const MISSING: Readonly<Record<Missing | 'noUsableReading', string>> = {
  noFlightSheet: 'no flight sheet',
  noReading: 'no reading',
  readingIncomplete: 'reading incomplete',
  readingQueried: 'reading queried',
  noBaseline: 'no suction-off baseline',
  noAirData: 'no air data',
  noWeight: 'no weight',
  unitUnknown: 'unit unknown',
  instrumentUnserviceable: 'instrument unserviceable',
  outsideAtmosphere: 'air data out of range',
  noUsableReading: 'no usable reading',
};

const PROVISIONAL: Readonly<Record<Provisional, string>> = {
  borrowedElasticity: 'weight law borrowed',
  noBorrowedElasticity: 'one weight only',
  noEngineMap: 'no engine map',
  noRepeatability: 'gauge scatter not declared',
  baselineInMoisture: 'baseline in moisture',
  baselineNotOnCondition: 'baseline: no on condition logged',
  oneBaselineReading: 'one baseline reading',
  baselineNotTurbulent: 'baseline with laminar flow called',
  noLiftToDrag: 'lift to drag not vouched for',
};

const NO_DRAG = {
  noEngineMap: 'no engine map: fuel only',
  bleedDriven: 'bleed-driven suction: fuel only',
} as const;

export const gateWords = (gate: Gate): string => GATES[gate];
export const missingWords = (because: Missing | 'noUsableReading'): string => MISSING[because];
export const provisionalWords = (reason: Provisional): string => PROVISIONAL[reason];
export const noDragWords = (because: keyof typeof NO_DRAG): string => NO_DRAG[because];

export function leftOutWords(reason: LeftOut): string {
  return reason === 'beforeOnCondition' || reason === 'queried' || reason === 'incomplete'
    ? LEFT_OUT[reason]
    : GATES[reason];
}

/** Fuel flows are shown in the mass unit of the flight sheet. */
export function flowUnitOf(sheet: FlightSheet | null): 'lb/h' | 'kg/h' {
  return sheet?.massUnit === 'lb' ? 'lb/h' : 'kg/h';
}

export function flowIn(unit: 'lb/h' | 'kg/h', flowKgPerS: number): number {
  return unit === 'lb/h' ? lbPerHourFromKgPerS(flowKgPerS) : flowKgPerS * 3600;
}

export function methodWords(result: PointNumber): string {
  switch (result.kind) {
    case 'none':
      return '';
    case 'baseline':
      return 'suction off, mean of the run';
    case 'valid':
    case 'indicative':
      return result.madeOf.method === 'fit'
        ? 'against the fitted baseline at the same weight'
        : 'against one baseline run moved to the same weight';
  }
}
