import { airState, type AirState } from '../../aero/atmosphere.ts';
import type { WeightElasticity } from '../../aero/baseline.ts';
import { SECONDS_PER_MINUTE, STANDARD_GRAVITY_M_PER_S2 } from '../../aero/units.ts';
import type { Measure } from '../../record/measure.ts';
import type { FlightSheet, Instrument } from '../../record/sheet.ts';
import { instrumentsFor, measureDifferenceSi, measureSi } from '../calibrate.ts';
import { dragMethodOf, type DragMethod } from './dragMethod.ts';

/** What the flight sheet says about reducing a reading, in SI. */
export interface SheetTerms {
  readonly sheet: FlightSheet;
  readonly cardAir: AirState;
  readonly cardMach: number;
  readonly tolerances: {
    readonly mach: number;
    readonly machRatePerS: number;
    readonly altitudeM: number;
    readonly climbMPerS: number;
  };
  /** Null where flow may not be called drag. */
  readonly drag: DragMethod | null;
  readonly liftToDragAtMost: number;
  readonly liftToDragVouched: boolean;
  readonly weightUncertaintyN: number;
  readonly machHold: number;
  /** d ln(fuel flow)/d ln(Mach) at the card. */
  readonly machSensitivity: { readonly off: number; readonly on: number };
  readonly borrowed: { readonly elasticity: WeightElasticity; readonly from: string } | null;
  readonly suctionIsMetered: boolean;
  readonly suctionCost: SuctionCost;
  /** One gauge an engine, by engine number; a serviceable one before an unserviceable one. */
  readonly engineFlows: readonly Instrument[];
  readonly enginesWithoutGauge: number;
  readonly suctionFlow: Instrument | null;
}

/** Where what suction costs is to be found. */
export type SuctionCost =
  | { readonly kind: 'ownFuel' }
  /** In the engines' flow, which is 1 + share of what it would be without. */
  | { readonly kind: 'bleed'; readonly share: number; readonly standardUncertainty: number }
  | { readonly kind: 'unmeasured'; readonly because: 'bleedDriven' | 'shaftDriven' };

/**
 * Stands in where nobody vouched for a lift to drag ratio: no jet aircraft with such a wing exceeds it
 * (common practice, no source). Larger only widens the interval.
 */
const GENEROUS_LIFT_TO_DRAG = 25;
/** At most all drag grows with Mach squared below the drag rise; used where no sensitivity was declared. */
const GREATEST_MACH_SENSITIVITY = 2;
/** Share of the ramp weight in doubt where none was declared (common practice, no source). */
const UNDECLARED_WEIGHT_DOUBT = 0.005;
/** A borrowed elasticity is never exact, whatever a sheet says. */
const LEAST_ELASTICITY_DOUBT = 1e-4;
/** All drag growing with weight squared gives 2; an engine may add to it a little. */
const GREATEST_ELASTICITY = 3;

/** @returns null where the card's condition lies outside the atmosphere or in a unit that is no height */
export function sheetTerms(sheet: FlightSheet): SheetTerms | null {
  const { condition, tolerances, aircraft, weights } = sheet;
  const altitudeM = measureSi(condition.pressureAltitude, 'length');
  const altitudeToleranceM = measureDifferenceSi(tolerances.altitude, 'length');
  const climbMPerS = measureDifferenceSi(tolerances.climb, 'speed');
  if (altitudeM === undefined || altitudeToleranceM === undefined) return null;
  if (climbMPerS === undefined || !isFlyableMach(condition.mach)) return null;
  const cardAir = airState({ pressureAltitudeM: altitudeM });
  if (cardAir.kind === 'unavailable') return null;
  const engineFlows = gaugesByEngine(sheet);
  const { liftToDragAtMost } = aircraft;
  const vouched =
    liftToDragAtMost !== undefined && liftToDragAtMost > 0 ? liftToDragAtMost : undefined;
  return {
    sheet,
    cardAir,
    cardMach: condition.mach,
    tolerances: {
      mach: tolerances.mach,
      machRatePerS: tolerances.machRatePerMin / SECONDS_PER_MINUTE,
      altitudeM: altitudeToleranceM,
      climbMPerS,
    },
    drag: dragMethodOf(sheet),
    liftToDragAtMost: vouched ?? GENEROUS_LIFT_TO_DRAG,
    liftToDragVouched: vouched !== undefined,
    weightUncertaintyN: Math.abs(
      weightN(weights.grossWeightStandardUncertainty) ??
        UNDECLARED_WEIGHT_DOUBT * (weightN(weights.ramp) ?? 0),
    ),
    machHold: Math.abs(sheet.machHoldStandardUncertainty ?? tolerances.mach / Math.sqrt(3)),
    machSensitivity: {
      off: aircraft.machSensitivitySuctionOff ?? GREATEST_MACH_SENSITIVITY,
      on: aircraft.machSensitivitySuctionOn ?? GREATEST_MACH_SENSITIVITY,
    },
    borrowed: borrowedOf(sheet),
    suctionIsMetered: aircraft.suctionDrive === 'ownMeteredFuel',
    suctionCost: suctionCostOf(sheet),
    engineFlows,
    enginesWithoutGauge: aircraft.engineCount - engineFlows.length,
    suctionFlow: instrumentsFor(sheet, 'suctionFuelFlow')[0] ?? null,
  };
}

/** Below it no cruise is flown, and above it none of these formulas holds. */
export function isFlyableMach(mach: number): boolean {
  return mach > 0.05 && mach < 1;
}

/** An elasticity that no polar and engine can have is a slip of the pen: then nothing is borrowed. */
function borrowedOf({ borrowedBaseline }: FlightSheet): SheetTerms['borrowed'] {
  if (borrowedBaseline === undefined) return null;
  const { weightElasticity, standardUncertainty, from } = borrowedBaseline;
  const doubt = Math.abs(standardUncertainty);
  if (weightElasticity < 0 || Math.max(weightElasticity, doubt) > GREATEST_ELASTICITY) return null;
  return {
    elasticity: {
      elasticity: weightElasticity,
      standardUncertainty: Math.max(doubt, LEAST_ELASTICITY_DOUBT),
    },
    from,
  };
}

function gaugesByEngine(sheet: FlightSheet): readonly Instrument[] {
  const gauges = instrumentsFor(sheet, 'fuelFlow');
  return Array.from({ length: sheet.aircraft.engineCount }, (_, index) => {
    const ofEngine = gauges.filter((gauge) => gauge.consumer === index + 1);
    return ofEngine.find((gauge) => gauge.serviceable) ?? ofEngine[0];
  }).filter((gauge) => gauge !== undefined);
}

function suctionCostOf({ aircraft }: FlightSheet): SuctionCost {
  const { suctionDrive, bleed } = aircraft;
  if (suctionDrive === 'ownMeteredFuel') return { kind: 'ownFuel' };
  if (suctionDrive === 'shaft') return { kind: 'unmeasured', because: 'shaftDriven' };
  const share = bleed === undefined ? -1 : bleed.flowFractionPerPercent * bleed.percentTaken;
  if (bleed === undefined || !(share >= 0)) return { kind: 'unmeasured', because: 'bleedDriven' };
  return { kind: 'bleed', share, standardUncertainty: Math.abs(bleed.standardUncertainty) };
}

function weightN(measure: Measure | undefined): number | undefined {
  const massKg = measure === undefined ? undefined : measureSi(measure, 'mass');
  return massKg === undefined ? undefined : massKg * STANDARD_GRAVITY_M_PER_S2;
}
