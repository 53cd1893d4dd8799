import type { EpochMs } from '../../record/brand.ts';
import type { Glance, Run } from '../../record/flightState.ts';
import { itemAt } from '../../record/trail.ts';
import { cardOf, type Context } from '../reading/context.ts';
import { outsideCard } from '../reading/gates.ts';
import type { FieldValue } from '../reading/airData.ts';
import { reduceReading, type EngineFlow, type ReducedReading } from '../reduceReading.ts';
import { weightFromRamp } from '../weight.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../../aero/units.ts';
import { lineThrough, type RecordedLine } from './lineThrough.ts';
import { secondsLeft, type Cut, type RecordedGate, type SecondsLeft } from './secondsLeft.ts';
import { totalFlowOf, type EvenTrace } from './trace.ts';

/** A run as the recorder saw it: a reading for each minute that no gate cuts out. */
export interface RecordedRun {
  readonly readings: readonly ReducedReading[];
  readonly secondsUsed: number;
  /** Seconds that each gate cut out; one second may be cut out by several. */
  readonly secondsCut: Readonly<Partial<Record<RecordedGate, number>>>;
}

/** A reading is a mean over about so long: shorter and neighbours share a phugoid, longer and a gate costs too much. */
const LOOK_S = 60;
const SHORTEST_LOOK_S = 30;

/**
 * @param fromS seconds of the trace at which the run begins and ends
 * @param atOf the flight's own time of a second of the trace
 * @returns null where the recording lacks a channel or does not reach over the run
 */
export function recordedRun(
  context: Context,
  even: EvenTrace,
  {
    run,
    fromS,
    toS,
    cuts,
    atOf,
  }: {
    readonly run: Run;
    readonly fromS: number;
    readonly toS: number;
    readonly cuts: readonly Cut[];
    readonly atOf: (second: number) => EpochMs;
  },
): RecordedRun | null {
  const left = secondsLeft(context.terms, even, { fromS, toS, cuts });
  const weight = weightAlong(context, even, run, atOf);
  if (left === null || weight === null) return null;
  const suctionOn = cardOf(context, run)?.suction !== 'off';
  const readings: ReducedReading[] = [];
  for (const [place, stretch] of left.stretches.entries()) {
    const rates = {
      mach: lineThrough(left.mach, stretch.fromS, stretch.toS),
      altitude: lineThrough(left.altitudeM, stretch.fromS, stretch.toS),
    };
    if (rates.mach === null || rates.altitude === null) continue;
    for (const look of looksIn(stretch)) {
      const reading = lookAt(context, even, left, {
        ...look,
        index: place * 1000 + readings.length,
        stretchIndex: place,
        machRate: rates.mach,
        altitudeRate: rates.altitude,
        weightN: weight.at((look.fromS + look.toS) / 2),
        glance: weight.glance,
        at: atOf((look.fromS + look.toS) / 2),
        suctionOn,
      });
      if (reading !== null && !outside(context, reading)) readings.push(reading);
    }
  }
  const secondsUsed = left.stretches.reduce((total, { fromS: a, toS: b }) => total + b - a, 0);
  return { readings, secondsUsed, secondsCut: left.cut };
}

interface Look {
  readonly fromS: number;
  readonly toS: number;
}

/** Equal looks of about a minute; what is shorter than half of one is not looked at. */
function looksIn({ fromS, toS }: Look): readonly Look[] {
  const count = Math.max(1, Math.round((toS - fromS) / LOOK_S));
  if (toS - fromS < SHORTEST_LOOK_S) return [];
  const length = Math.floor((toS - fromS) / count);
  return Array.from({ length: count }, (_, index) => ({
    fromS: fromS + index * length,
    toS: fromS + (index + 1) * length,
  }));
}

/** The seconds are held to the card one by one; a mean is then inside it. What is too far from level is not. */
function outside({ terms }: Context, reading: ReducedReading): boolean {
  const { mach, pressureAltitude } = reading.air;
  const broken = outsideCard(terms, {
    mach: mach.value,
    pressureAltitudeM: pressureAltitude.value,
    machRatePerS: null,
    altitudeRateMPerS: null,
  });
  return reading.energyTooLarge || broken.length > 0;
}

function lookAt(
  { terms }: Context,
  even: EvenTrace,
  left: SecondsLeft,
  look: Look & {
    readonly index: number;
    readonly stretchIndex: number;
    readonly machRate: RecordedLine;
    readonly altitudeRate: RecordedLine;
    readonly weightN: number;
    readonly glance: Glance;
    readonly at: EpochMs;
    readonly suctionOn: boolean;
  },
): ReducedReading | null {
  const { fromS, toS, index } = look;
  const mach = lineThrough(left.mach, fromS, toS);
  const altitude = lineThrough(left.altitudeM, fromS, toS);
  const temperature = lineThrough(left.temperatureK, fromS, toS);
  const engines = even.engines.map((values, engine): EngineFlow | null => {
    const line = lineThrough(values, fromS, toS);
    const gauge = terms.engineFlows[engine];
    return line === null || gauge === undefined
      ? null
      : {
          kgPerS: line.mean,
          parts: {
            stepSi: 0,
            repeatabilitySi: line.meanUncertainty,
            // Nobody declared the recorder's own calibration: that of the gauge on the same pipe stands in (a choice).
            residualSi: left.residualsKgPerS[engine] ?? 0,
            independentSi: 0,
          },
        };
  });
  const flows = engines.filter((engine) => engine !== null);
  if (mach === null || altitude === null || temperature === null) return null;
  if (flows.length === 0 || flows.length < terms.sheet.aircraft.engineCount) return null;
  const own = (value: number, doubt: number, glance = index): FieldValue => ({
    value,
    standardUncertainty: doubt,
    shares: [{ glance, share: 1 }],
    from: 'own',
  });
  const unit = even.suctionUnit === null ? null : lineThrough(even.suctionUnit, fromS, toS);
  // A rate belongs to its whole stretch: looks of one stretch share it, and so its doubt.
  const shared = -1 - look.stretchIndex;
  const reading = reduceReading({
    terms,
    glance: {
      ...look.glance,
      at: look.at,
      circumstances: { ...look.glance.circumstances, suctionOn: look.suctionOn },
    },
    glanceIndex: index,
    flow: {
      kind: 'flow',
      kgPerS: flows.reduce((total, { kgPerS }) => total + kgPerS, 0),
      engines: flows,
      unit:
        unit === null || !terms.suctionIsMetered
          ? null
          : {
              kgPerS: unit.mean,
              parts: {
                stepSi: 0,
                repeatabilitySi: unit.meanUncertainty,
                residualSi: left.unitResidualKgPerS,
                independentSi: 0,
              },
            },
    },
    air: {
      mach: own(mach.mean, mach.meanUncertainty),
      pressureAltitude: own(altitude.mean, altitude.meanUncertainty),
      temperature: own(temperature.mean, temperature.meanUncertainty),
      machRate: own(look.machRate.perS, look.machRate.perSUncertainty, shared),
      altitudeRate: own(look.altitudeRate.perS, look.altitudeRate.perSUncertainty, shared),
    },
    weightN: look.weightN,
  });
  return 'kind' in reading ? null : reading;
}

/** Weight from the counters at the run's first reading that has one, carried on and back with the recorded flow. */
function weightAlong(
  { state, ramp }: Context,
  even: EvenTrace,
  run: Run,
  atOf: (second: number) => EpochMs,
): { readonly at: (second: number) => number; readonly glance: Glance } | null {
  const total = totalFlowOf(even);
  for (const index of run.fuelGlances) {
    const glance = itemAt(state.glances, index);
    const weight = weightFromRamp(state, ramp, index);
    if (glance === undefined || weight.kind === 'noWeight') continue;
    const second = (glance.at - atOf(0)) / 1000;
    return {
      glance,
      at: (other) => weight.weightN - STANDARD_GRAVITY_M_PER_S2 * burnt(second, other),
    };
  }
  return null;

  function burnt(from: number, to: number): number {
    const [low, high] = [Math.round(Math.min(from, to)), Math.round(Math.max(from, to))];
    let kg = 0;
    for (let second = low; second < high; second += 1) {
      kg += (total[second] ?? Number.NaN) + (even.suctionUnit?.[second] ?? 0);
    }
    return to < from ? -kg : kg;
  }
}
