import {
  airState,
  speedOfSoundMPerS,
  standardPressurePa,
  type AirState,
} from '../aero/atmosphere.ts';
import {
  accelerationFromMachRate,
  excessForceN,
  fuelFlowAtKgPerS,
  geometricClimbRateMPerS,
  referredFuelFlowKgPerS,
  referredWeightN,
} from '../aero/fuelFlow.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../aero/units.ts';
import type { EntryId, EpochMs } from '../record/brand.ts';
import type { Glance } from '../record/flightState.ts';
import type { Reading } from '../record/entry.ts';
import { correctedReading, type DisplayParts } from './calibrate.ts';
import type { AirData } from './reading/airData.ts';
import { levelOf } from './reading/level.ts';
import { isFlyableMach, type SheetTerms } from './reading/sheetTerms.ts';
import type { Missing } from './results.ts';

/** The engines' flow in one glance, corrected and summed. */
export interface TotalFlow {
  readonly kind: 'flow';
  readonly kgPerS: number;
  readonly engines: readonly EngineFlow[];
  /** The suction unit's own, where it is metered and was read. */
  readonly unit: EngineFlow | null;
}

export interface EngineFlow {
  readonly kgPerS: number;
  readonly parts: DisplayParts;
}

/** One reading brought to level flight and to the card. */
export interface ReducedReading {
  readonly glance: number;
  readonly at: EpochMs;
  readonly by: readonly EntryId[];
  readonly flow: TotalFlow;
  readonly air: AirData;
  readonly weightN: number;
  readonly excessForceN: number;
  readonly energyTooLarge: boolean;
  readonly referredFlowKgPerS: number;
  readonly referredWeightN: number;
  readonly flowAtCardKgPerS: number;
  readonly weightAtCardN: number;
  readonly suctionOn: boolean;
  /** Half-range of a rectangular doubt where no engine map brings the flow to level. */
  readonly energyHalfRangeKgPerS: number;
  /** How far the flow at the card moves with each display, in SI. */
  readonly perDisplay: {
    readonly altitudeRate: number;
    readonly machRate: number;
    readonly temperature: number;
    readonly pressureAltitude: number;
  };
}

/** Sum of the corrected gauges, or why there is none; the first missing gauge names the reason. */
export function totalFlow(
  terms: SheetTerms,
  glance: Glance,
): TotalFlow | { readonly kind: 'missing'; readonly because: Missing } {
  if (terms.enginesWithoutGauge > 0) return { kind: 'missing', because: 'readingIncomplete' };
  const engines: EngineFlow[] = [];
  for (const gauge of terms.engineFlows) {
    const corrected = correctedReading(gauge, readingOr(glance, gauge.id));
    if (corrected.kind === 'uncorrected') {
      return { kind: 'missing', because: MISSING[corrected.because] };
    }
    if (!(corrected.valueSi > 0)) return { kind: 'missing', because: 'readingIncomplete' };
    engines.push({ kgPerS: corrected.valueSi, parts: corrected.parts });
  }
  return {
    kind: 'flow',
    kgPerS: engines.reduce((total, engine) => total + engine.kgPerS, 0),
    engines,
    unit: unitFlow(terms, glance),
  };
}

/** Reduces one reading; both `air` and `weightN` may come from other looks of the same run. */
export function reduceReading({
  terms,
  glance,
  glanceIndex,
  flow,
  air,
  weightN,
}: {
  readonly terms: SheetTerms;
  readonly glance: Glance;
  readonly glanceIndex: number;
  readonly flow: TotalFlow;
  readonly air: AirData;
  readonly weightN: number;
}): ReducedReading | { readonly kind: 'missing'; readonly because: 'outsideAtmosphere' } {
  const state = airState({
    pressureAltitudeM: air.pressureAltitude.value,
    staticTemperatureK: air.temperature.value,
  });
  if (state.kind === 'unavailable' || !isFlyable(air)) {
    return { kind: 'missing', because: 'outsideAtmosphere' };
  }
  const excessN = excessForce(air, state, weightN);
  const level = levelOf(terms, { flowKgPerS: flow.kgPerS, state, excessN, weightN });
  const ratios = {
    pressureRatio: state.pressureRatio,
    temperatureRatio: state.temperatureRatio,
  };
  const referredKgPerS = referredFuelFlowKgPerS({ fuelFlowKgPerS: level.kgPerS, ...ratios });
  const referredN = referredWeightN({ weightN, pressureRatio: state.pressureRatio });
  const { cardAir } = terms;
  const flowAtCardKgPerS = fuelFlowAtKgPerS({
    referredFuelFlowKgPerS: referredKgPerS,
    pressureRatio: cardAir.pressureRatio,
    temperatureRatio: cardAir.temperatureRatio,
  });
  return {
    glance: glanceIndex,
    at: glance.at,
    by: glance.by,
    flow,
    air,
    weightN,
    excessForceN: excessN,
    energyTooLarge: level.tooLarge,
    referredFlowKgPerS: referredKgPerS,
    referredWeightN: referredN,
    flowAtCardKgPerS,
    weightAtCardN: referredN * cardAir.pressureRatio,
    suctionOn: glance.circumstances.suctionOn,
    energyHalfRangeKgPerS: level.halfRangeKgPerS,
    perDisplay: {
      altitudeRate: (level.slopeKgPerSPerN * weightN) / trueAirspeed(air, state),
      machRate:
        (level.slopeKgPerSPerN * weightN * speedOfSoundMPerS(state.temperatureK)) /
        STANDARD_GRAVITY_M_PER_S2,
      temperature: flowAtCardKgPerS / (2 * state.temperatureK),
      // One half for delta stands for 1 − E, E the baseline's elasticity with weight.
      pressureAltitude: (flowAtCardKgPerS / 2) * pressureRatioPerM(state),
    },
  };
}

/** Slower, faster, colder or hotter than any cruise: a slip that no correction can bring to the card. */
function isFlyable({ mach, temperature }: AirData): boolean {
  const { value: temperatureK } = temperature;
  return isFlyableMach(mach.value) && temperatureK > 150 && temperatureK < 350;
}

function excessForce(air: AirData, state: AirState, weightN: number): number {
  return excessForceN({
    weightN,
    climbRateMPerS: geometricClimbRateMPerS({
      pressureAltitudeRateMPerS: air.altitudeRate.value,
      temperatureK: state.temperatureK,
      standardTemperatureK: state.standardTemperatureK,
    }),
    accelerationMPerS2: accelerationFromMachRate({
      machRatePerS: air.machRate.value,
      temperatureK: state.temperatureK,
    }),
    trueAirspeedMPerS: trueAirspeed(air, state),
  });
}

function trueAirspeed(air: AirData, state: AirState): number {
  return air.mach.value * speedOfSoundMPerS(state.temperatureK);
}

/** −d ln δ / dh of the standard day, per metre. */
function pressureRatioPerM({ pressureAltitudeM, pressurePa }: AirState): number {
  const above = standardPressurePa(pressureAltitudeM + 1);
  const below = standardPressurePa(pressureAltitudeM - 1);
  return (below - above) / (2 * pressurePa);
}

const MISSING = {
  notRead: 'readingIncomplete',
  notApplicable: 'readingIncomplete',
  unserviceable: 'instrumentUnserviceable',
  queried: 'readingQueried',
  unitUnknown: 'unitUnknown',
} as const satisfies Record<string, Missing>;

function unitFlow(terms: SheetTerms, glance: Glance): EngineFlow | null {
  if (!terms.suctionIsMetered || terms.suctionFlow === null) return null;
  const corrected = correctedReading(terms.suctionFlow, readingOr(glance, terms.suctionFlow.id));
  return corrected.kind === 'corrected'
    ? { kgPerS: corrected.valueSi, parts: corrected.parts }
    : null;
}

function readingOr(glance: Glance, instrument: string): Reading {
  return glance.readings[instrument] ?? { instrument, blank: 'notRead' };
}
