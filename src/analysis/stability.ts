import {
  STABILITY_LIMITS,
  stabilityVerdict,
  type CruiseSamples,
  type Sample,
  type Stability,
  type StabilityLimits,
} from '../aero/stability.ts';
import { speedOfSoundMPerS } from '../aero/atmosphere.ts';
import { SECONDS_PER_MINUTE } from '../aero/units.ts';
import type { EntryId, EpochMs } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { Glance, Run } from '../record/flightState.ts';
import { itemAt } from '../record/trail.ts';
import { measureDifferenceSi } from './calibrate.ts';
import { contextOf, type Context } from './reading/context.ts';
import { levelSlopeShare } from './reading/level.ts';
import { sampleOf, type AirField } from './reading/looks.ts';
import { totalFlow } from './reduceReading.ts';
import { runReadings, type RunReadings } from './runReadings.ts';
import type { NoSteadiness, StabilityAnswer } from './steadiness.ts';
import { weightFromRamp } from './weight.ts';

/** Looks inside a window, at most: a gauge read each second for as long as the longest window of a crew. */
const GLANCES_LOOKED_AT = 1000;

/** The verdict over the window that ends at this reading. */
export function stabilityAt(view: FlightView, glanceIndex: number): StabilityAnswer {
  const context = contextOf(view);
  return context === null ? none(noContext(view)) : steadinessAt(context, glanceIndex);
}

/** The verdict on a run: the worst window that ends at a reading of its mean, or why none of them can be judged. */
export function stabilityOf(view: FlightView, runIndex: number): StabilityAnswer {
  const context = contextOf(view);
  if (context === null) return none(noContext(view));
  const run = itemAt(view.state.runs, runIndex);
  return run === undefined
    ? none('noReading')
    : steadinessOf(context, run, runReadings(context, run));
}

/** As `stabilityOf`, with the readings of the run sorted already. */
export function steadinessOf(
  context: Context,
  run: Run,
  readings: Pick<RunReadings, 'used'>,
): StabilityAnswer {
  const used = readings.used.map(({ reading }) => reading.glance);
  const judged = (used.length > 0 ? used : run.fuelGlances).map((glance) =>
    steadinessAt(context, glance),
  );
  const answers = judged.filter((answer) => answer.kind === 'answer');
  const [first] = answers;
  if (first === undefined) {
    const [unjudged] = judged;
    return unjudged ?? none('noReading');
  }
  return answers.reduce(
    (worst, answer) => (RANK[answer.value.kind] > RANK[worst.value.kind] ? answer : worst),
    first,
  );
}

const RANK: Readonly<Record<Stability['kind'], number>> = {
  stable: 0,
  correctable: 1,
  unstable: 2,
};

function steadinessAt(context: Context, index: number): StabilityAnswer {
  const { state, terms } = context;
  const glance = itemAt(state.glances, index);
  if (glance === undefined) return none('noReading');
  const limits = limitsOf(context);
  const looked = looksBefore(context, index, glance, limits.windowS);
  const entries = [...new Set(looked.flatMap(({ by }) => by))];
  const weight = weightFromRamp(state, context.ramp, index);
  if (weight.kind === 'noWeight') return none('noWeight', entries);
  const flow = looked.map((look) => totalFlow(terms, look)).find(({ kind }) => kind === 'flow');
  if (flow?.kind !== 'flow') return none('tooFewLooks', entries);
  const samples = samplesOf(context, glance.at, looked);
  if (!possible(samples)) return none('looksImpossible', entries);
  const verdict = stabilityVerdict({
    samples,
    endS: 0,
    flowPerForceShare: levelSlopeShare(terms, flow.kgPerS, weight.weightN),
    limits,
  });
  if (verdict.kind === 'unavailable') {
    return none(verdict.because === 'tooFewSamples' ? 'tooFewLooks' : 'windowTooShort', entries);
  }
  return {
    kind: 'answer',
    value: { ...verdict, glance: index, endedAt: glance.at, limits },
    how: { entries, method: 'slidingWindow', broken: [] },
  };
}

/** Looks of the same run inside the window, this one among them. */
function looksBefore(
  { state }: Context,
  index: number,
  last: Glance,
  windowS: number,
): readonly Glance[] {
  const looked: Glance[] = [];
  for (let at = index; at >= Math.max(0, index - GLANCES_LOOKED_AT); at -= 1) {
    const glance = itemAt(state.glances, at);
    if (glance === undefined || (last.at - glance.at) / 1000 > windowS) break;
    if (glance.circumstances.run !== last.circumstances.run) break;
    looked.unshift(glance);
  }
  return looked;
}

function samplesOf({ terms }: Context, endedAt: EpochMs, looked: readonly Glance[]): CruiseSamples {
  const field = (name: AirField): readonly Sample[] =>
    looked.flatMap((glance) => {
      const sample = sampleOf(terms.sheet, glance, name);
      return sample === null ? [] : [{ timeS: secondsTo(endedAt, glance), value: sample.value }];
    });
  return {
    mach: field('mach'),
    pressureAltitudeM: field('pressureAltitude'),
    staticTemperatureK: field('temperature'),
    fuelFlowKgPerS: looked.flatMap((glance) => {
      const flow = totalFlow(terms, glance);
      return flow.kind === 'flow'
        ? [{ timeS: secondsTo(endedAt, glance), value: flow.kgPerS }]
        : [];
    }),
  };
}

function secondsTo(endedAt: EpochMs, glance: Glance): number {
  return (glance.at - endedAt) / 1000;
}

/** A keyed digit too many must not end in an exception: outside these no formula of a cruise holds. */
function possible({ mach, staticTemperatureK, pressureAltitudeM }: CruiseSamples): boolean {
  return (
    mach.every(({ value }) => value > 0.05 && value < 1) &&
    staticTemperatureK.every(({ value }) => value > 150 && value < 350) &&
    pressureAltitudeM.every(({ value }) => value > -300 && value < 19_800)
  );
}

/** Limits of the flight sheet; else Mach twice and height once the tolerance of the card, the rest as in `aero`. */
function limitsOf({ terms }: Context): StabilityLimits {
  const { sheet, tolerances, cardAir } = terms;
  const { stability = {} } = sheet;
  const measured = (
    measure: Parameters<typeof measureDifferenceSi>[0] | undefined,
    dimension: Parameters<typeof measureDifferenceSi>[1],
    otherwise: number,
  ): number => {
    const si = measure === undefined ? undefined : measureDifferenceSi(measure, dimension);
    return si === undefined ? otherwise : Math.abs(si);
  };
  const machRate = stability.machRatePerMin;
  const windowS = stability.windowS ?? STABILITY_LIMITS.windowS;
  return {
    ...STABILITY_LIMITS,
    windowS: windowS > 0 ? windowS : STABILITY_LIMITS.windowS,
    machRange: Math.abs(stability.machRange ?? 2 * tolerances.mach),
    altitudeRangeM: measured(stability.altitudeRange, 'length', Math.abs(tolerances.altitudeM)),
    temperatureRangeK: measured(
      stability.temperatureRange,
      'temperature',
      STABILITY_LIMITS.temperatureRangeK,
    ),
    fuelFlowRangeFraction: Math.abs(
      stability.flowRangeFraction ?? STABILITY_LIMITS.fuelFlowRangeFraction,
    ),
    climbMPerS: measured(stability.climb, 'speed', STABILITY_LIMITS.climbMPerS),
    accelerationMPerS2:
      machRate === undefined
        ? STABILITY_LIMITS.accelerationMPerS2
        : (Math.abs(machRate) / SECONDS_PER_MINUTE) * speedOfSoundMPerS(cardAir.temperatureK),
  };
}

function none(because: NoSteadiness, entries: readonly EntryId[] = []): StabilityAnswer {
  return { kind: 'noAnswer', because, entries };
}

function noContext({ state }: FlightView): NoSteadiness {
  return state.sheet === null ? 'noFlightSheet' : 'outsideAtmosphere';
}
