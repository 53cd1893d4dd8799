import {
  baselineAt,
  fitBaseline,
  pairBaseline,
  UNKNOWN_WEIGHT_ELASTICITY,
  type Baseline,
  type BaselineRun,
} from '../aero/baseline.ts';
import type { EntryId } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import type { FlightSheet } from '../record/sheet.ts';
import type { Answer } from './answer.ts';
import { byOpening } from './encounters/flightOrder.ts';
import { contextOf } from './reading/context.ts';
import { reducedRuns } from './reducedRuns.ts';

/** How far the suction-off flow of a flight lies from that of the first flight, at the same weights. */
export interface BaselineDrift {
  readonly flight: string;
  readonly title: string;
  readonly drift: Answer<
    {
      /** 0.01 is one per cent more fuel flow with suction off than on the first flight. */
      readonly driftFraction: number;
      readonly standardUncertaintyFraction: number;
      /** Beyond twice the doubt. What calibration leaves is taken as the same on both flights. */
      readonly differs: boolean;
      readonly runs: number;
    },
    NoDrift,
    'againstFirstFit' | 'againstFirstRun',
    'outsideFirstWeights' | 'calibratedBetween'
  >;
}

export type NoDrift =
  'noFlightSheet' | 'noBaselineRun' | 'isTheFirst' | 'otherAircraft' | 'otherCard';

/** Weights this far beyond those of the first flight are still held against its line, as a share (as for a point). */
const WEIGHT_MARGIN = 0.02;

/** Every flight against the first that has a suction-off run, in the order in which they were opened. */
export function baselineDrift(views: readonly FlightView[]): readonly BaselineDrift[] {
  const flights = byOpening(views).map((view) => ({ view, off: offRuns(view) }));
  const first = flights.find(({ off }) => off.runs.length > 0);
  return flights.map((flight) => {
    const { view, off } = flight;
    const { sheet } = view.state;
    const none = (because: NoDrift): BaselineDrift['drift'] => ({
      kind: 'noAnswer',
      because,
      entries: off.entries,
    });
    const head = { flight: view.state.flight ?? '', title: view.state.title };
    const reference = first?.view.state.sheet ?? null;
    if (sheet === null) return { ...head, drift: none('noFlightSheet') };
    if (first === undefined || reference === null || off.runs.length === 0) {
      return { ...head, drift: none('noBaselineRun') };
    }
    if (flight === first) return { ...head, drift: none('isTheFirst') };
    if (sheet.aircraft.mark !== reference.aircraft.mark) {
      return { ...head, drift: none('otherAircraft') };
    }
    if (!isSameCard(sheet, reference)) return { ...head, drift: none('otherCard') };
    return { ...head, drift: driftOf(off, first.off, sheet, reference) };
  });
}

interface OffRuns {
  readonly runs: readonly BaselineRun[];
  readonly entries: readonly EntryId[];
}

/** Finished suction-off runs with a mean, brought to the card. */
function offRuns(view: FlightView): OffRuns {
  const context = contextOf(view);
  const reduced = context === null ? [] : reducedRuns(context);
  const used = reduced.flatMap(({ run, suction, mean, readings }) =>
    suction === 'off' && run.state === 'complete' && mean !== null
      ? [{ run, mean, count: readings.used.length, entries: readings.used }]
      : [],
  );
  return {
    runs: used.map(({ mean, count }) => ({
      fuelFlowKgPerS: mean.flowAtCardKgPerS,
      weightN: mean.weightAtCardN,
      standardUncertaintyKgPerS: mean.standardUncertaintyKgPerS,
      readingCount: count,
    })),
    entries: [
      ...new Set(used.flatMap(({ entries }) => entries.flatMap((reading) => reading.entries))),
    ],
  };
}

function driftOf(
  own: OffRuns,
  first: OffRuns,
  sheet: FlightSheet,
  reference: FlightSheet,
): BaselineDrift['drift'] {
  const baseline = baselineOf(first.runs, reference);
  // Runs of one flight share the doubt of the line that they are held against; their own doubts average out.
  const told = own.runs.map((run) => {
    const at = baselineAt(baseline, run.weightN);
    return {
      fraction: run.fuelFlowKgPerS / at.fuelFlowKgPerS - 1,
      own: run.standardUncertaintyKgPerS / at.fuelFlowKgPerS,
      line: at.standardUncertaintyKgPerS / at.fuelFlowKgPerS,
    };
  });
  const mean = (of: (one: (typeof told)[number]) => number): number =>
    told.reduce((total, one) => total + of(one), 0) / told.length;
  const driftFraction = mean(({ fraction }) => fraction);
  const standardUncertaintyFraction = Math.hypot(
    Math.hypot(...told.map((one) => one.own)) / told.length,
    mean(({ line }) => line),
  );
  const weights = first.runs.map(({ weightN }) => weightN);
  const [low, high] = [Math.min(...weights), Math.max(...weights)];
  const isOutside = own.runs.some(
    ({ weightN }) => weightN < low * (1 - WEIGHT_MARGIN) || weightN > high * (1 + WEIGHT_MARGIN),
  );
  return {
    kind: 'answer',
    value: {
      driftFraction,
      standardUncertaintyFraction,
      differs: Math.abs(driftFraction) > 2 * standardUncertaintyFraction,
      runs: own.runs.length,
    },
    how: {
      entries: [...new Set([...own.entries, ...first.entries])],
      method: baseline.kind === 'fit' ? 'againstFirstFit' : 'againstFirstRun',
      broken: [
        ...(isOutside ? (['outsideFirstWeights'] as const) : []),
        ...(isRecalibrated(sheet, reference) ? (['calibratedBetween'] as const) : []),
      ],
    },
  };
}

/** @throws RangeError without a run */
function baselineOf(runs: readonly BaselineRun[], { borrowedBaseline }: FlightSheet): Baseline {
  const [only] = runs;
  if (only === undefined) throw new RangeError('the first flight must have a suction-off run');
  const fit = fitBaseline({ runs, trust: 'absolute' });
  if (fit.kind === 'fit') return fit;
  return pairBaseline(
    only,
    borrowedBaseline === undefined
      ? UNKNOWN_WEIGHT_ELASTICITY
      : {
          elasticity: borrowedBaseline.weightElasticity,
          standardUncertainty: Math.abs(borrowedBaseline.standardUncertainty),
        },
  );
}

/** The same Mach number and height: per cent and flow at one are not those at the other. */
export function isSameCard(one: FlightSheet, other: FlightSheet): boolean {
  const [a, b] = [one.condition, other.condition];
  return (
    a.mach === b.mach &&
    a.pressureAltitude.value === b.pressureAltitude.value &&
    a.pressureAltitude.unit === b.pressureAltitude.unit
  );
}

/** A gauge that was calibrated anew no longer leaves the same error on both flights. */
function isRecalibrated(one: FlightSheet, other: FlightSheet): boolean {
  const gauges = (sheet: FlightSheet): string =>
    JSON.stringify(
      sheet.instruments
        .filter(({ quantity }) => quantity === 'fuelFlow')
        .map(({ id, calibration }) => [id, calibration.correction, calibration.points ?? null]),
    );
  return gauges(one) !== gauges(other);
}
