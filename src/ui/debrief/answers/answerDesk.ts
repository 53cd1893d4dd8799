import type { AcrossFlights } from '../../../analysis/acrossFlights.ts';
import type { FlightResults } from '../../../analysis/flightResults.ts';
import type { ReductionFigure } from '../../../analysis/results.ts';
import {
  flowIn,
  flowUnitOf,
  massIn,
  massUnitOf,
  type FlowUnit,
  type MassUnit,
} from '../../../analysis/sheetUnits.ts';
import type { EntryId, EpochMs } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';
import { change, decimalsFor, figure } from '../../kit/number.ts';
import type { Desk } from '../context.ts';
import { clockWords } from '../timeWords.ts';
import type { TimelineModel } from '../timeline/model.ts';

/** What every answer is written from. */
export interface AnswerDesk {
  readonly desk: Desk;
  readonly model: TimelineModel;
  readonly results: FlightResults;
  /** This flight beside the others of the same aircraft on this device. */
  readonly across: AcrossFlights;
  readonly flightCount: number;
  readonly units: Units;
  /** To the place of an entry on the timeline. */
  readonly onOpen: (entry: EntryId) => void;
}

/** Numbers in the units of the flight sheet. */
export interface Units {
  readonly flowUnit: FlowUnit;
  readonly massUnit: MassUnit;
  readonly flow: (flowKgPerS: number) => string;
  readonly mass: (massKg: number) => string;
  readonly flowChange: (flowKgPerS: number) => string;
  readonly massChange: (massKg: number) => string;
  /** Multiplies kilograms (a second) into the unit of the sheet. */
  readonly flowScale: number;
  readonly massScale: number;
}

export function unitsOf({ state }: FlightView): Units {
  const flowUnit = flowUnitOf(state.sheet);
  const massUnit = massUnitOf(state.sheet);
  const flowScale = flowIn(flowUnit, 1);
  const massScale = massIn(massUnit, 1);
  return {
    flowUnit,
    massUnit,
    flowScale,
    massScale,
    flow: (kgPerS) => figure(flowScale * kgPerS, 0),
    mass: (kg) => figure(massScale * kg, 0),
    flowChange: (kgPerS) => change(flowScale * kgPerS, 0),
    massChange: (kg) => change(massScale * kg, 0),
  };
}

/** "22:33:20Z" on the aircraft time base; `by` says on which tablet it was touched. */
export function timeOf({ view, base }: Desk, at: EpochMs, by: EntryId | undefined): string {
  const entry = by === undefined ? undefined : view.byId(by)?.entry;
  return `${clockWords(entry === undefined ? at : base.shown(at, entry.rec))}Z`;
}

export const percent = (fraction: number, places = 0): string => figure(100 * fraction, places);

/** "28.7 (28.1 to 29.3)" in per cent. */
export function percentWords({
  fraction,
  interval95,
}: Pick<ReductionFigure, 'fraction' | 'interval95'>): string {
  const places = placesOf(interval95, 100);
  return `${percent(fraction, places)} (${rangeWords(interval95, 100, places)})`;
}

interface Range {
  readonly low: number;
  readonly high: number;
}

export function rangeWords({ low, high }: Range, scale: number, places: number): string {
  return `${figure(scale * low, places)} to ${figure(scale * high, places)}`;
}

export function placesOf({ low, high }: Range, scale: number): number {
  return decimalsFor((scale * (high - low)) / 2);
}
