import type { FlightView } from '../record/flight.ts';
import type { Run } from '../record/flightState.ts';
import { items } from '../record/trail.ts';
import { baselineAfterLanding, type BaselineRunUsed } from './baselineRuns.ts';
import { provisionalMethod } from './liveEstimate.ts';
import { cardOf, contextOf, type Context } from './reading/context.ts';
import { reductionOf } from './reading/figure.ts';
import { pooledScatter, runMean, type RunMean, type Scatter } from './reading/runMean.ts';
import type { PointNumber, PointResult } from './results.ts';
import { baselineRunsAfterLanding, runReadings, runsOf, type RunReadings } from './runReadings.ts';

/** What each run says after landing, one a run, in the order in which they were flown. */
export function pointResults(view: FlightView): readonly PointResult[] {
  const context = contextOf(view);
  if (context === null) {
    const because = view.state.sheet === null ? 'noFlightSheet' : 'outsideAtmosphere';
    return [...items(view.state.runs)].map((run) =>
      resultOf(undefined, run, NO_READINGS, { kind: 'none', because }),
    );
  }
  const flown = runsOf(context).map((run) => ({ run, readings: runReadings(context, run) }));
  const scatter = pooledScatter(
    flown.map(({ readings }) => readings.used.map(({ reading }) => reading)),
  );
  const baselines = baselineRunsAfterLanding(context);
  return flown.map(({ run, readings }) =>
    resultOf(context, run, readings, numberOf(context, run, readings, baselines, scatter)),
  );
}

const NO_READINGS: RunReadings = { used: [], leftOut: [], missing: null };

function resultOf(
  context: Context | undefined,
  run: Run,
  readings: RunReadings,
  result: PointNumber,
): PointResult {
  const card = context === undefined ? undefined : cardOf(context, run);
  return {
    point: run.point,
    run: run.run,
    title: card?.title ?? '',
    setting: card?.setting ?? '',
    suction: card?.suction ?? 'on',
    state: run.state,
    startedAt: run.started.at,
    endedAt: run.ended?.at ?? null,
    readingsUsed: readings.used.map(({ reading }) => reading.glance),
    readingsLeftOut: readings.leftOut,
    result,
  };
}

function numberOf(
  context: Context,
  run: Run,
  readings: RunReadings,
  baselines: readonly BaselineRunUsed[],
  scatter: Scatter | null,
): PointNumber {
  const { used, missing, leftOut } = readings;
  if (used.length === 0) {
    const nothingElse = leftOut.every(({ broken }) =>
      broken.every((reason) => reason === 'queried' || reason === 'incomplete'),
    );
    return { kind: 'none', because: nothingElse ? (missing ?? 'noReading') : 'noUsableReading' };
  }
  const mean = runMean(
    context.terms,
    used.map(({ reading }) => reading),
    scatter,
  );
  if (cardOf(context, run)?.suction === 'off') {
    return {
      kind: 'baseline',
      flowAtCardKgPerS: mean.flowAtCardKgPerS,
      weightAtCardN: mean.weightAtCardN,
      standardUncertaintyKgPerS: mean.standardUncertaintyKgPerS,
    };
  }
  if (baselines.length === 0) return { kind: 'none', because: 'noBaseline' };
  return reduced(context, run, readings, mean, baselines);
}

function reduced(
  context: Context,
  run: Run,
  { used }: RunReadings,
  mean: RunMean,
  baselines: readonly BaselineRunUsed[],
): PointNumber {
  const { terms } = context;
  const chosen = baselineAfterLanding(context, baselines, mean.weightAtCardN);
  if (chosen === null) return { kind: 'none', because: 'noBaseline' };
  const { inUse, broken } = chosen;
  const reduction = reductionOf(terms, mean, inUse);
  const savedKgPerS = (reduction.baselineKgPerS - mean.flowAtCardKgPerS) * reduction.dayFactor;
  const unitKgPerS = terms.suctionIsMetered ? (mean.unit?.kgPerS ?? null) : null;
  const netKgPerS = netSaving(terms.suctionIsMetered, savedKgPerS, unitKgPerS);
  return {
    kind: run.state === 'complete' ? 'valid' : 'indicative',
    fuel: reduction.fuel,
    drag: reduction.drag,
    grossKgPerS: terms.suctionIsMetered ? savedKgPerS : null,
    suctionUnitKgPerS: unitKgPerS,
    netKgPerS,
    netFraction:
      netKgPerS === null ? null : netKgPerS / (reduction.baselineKgPerS * reduction.dayFactor),
    broken,
    provisional: [...inUse.provisional, ...provisionalMethod(terms, mean.repeatabilityDeclared)],
    madeOf: {
      entries: [...new Set([...used.flatMap(({ entries }) => entries), ...inUse.entries])],
      method: inUse.baseline.kind,
      baselineRuns: inUse.labels,
      borrowedFrom: inUse.borrowedFrom,
      flowKgPerS: mean.flowKgPerS,
      flowAtCardKgPerS: mean.flowAtCardKgPerS,
      weightN: mean.weightN,
      weightAtCardN: mean.weightAtCardN,
      baselineAtThatWeightKgPerS: reduction.baselineKgPerS,
      suctionFlowKgPerS: unitKgPerS,
      uncertaintyParts: reduction.parts,
    },
  };
}

/** Engine-driven suction already shows in the engines' flow: nothing is subtracted twice. */
function netSaving(
  metered: boolean,
  savedKgPerS: number,
  unitKgPerS: number | null,
): number | null {
  if (!metered) return savedKgPerS;
  return unitKgPerS === null ? null : savedKgPerS - unitKgPerS;
}
