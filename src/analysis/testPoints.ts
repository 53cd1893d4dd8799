import type { EntryId } from '../record/brand.ts';
import type { FlightView } from '../record/flight.ts';
import { itemAt, items } from '../record/trail.ts';
import { provisionalBaseline } from './baselineRuns.ts';
import { provisionalMethod } from './liveEstimate.ts';
import { cardOf, contextOf, type Context } from './reading/context.ts';
import type { RunMean } from './reading/runMean.ts';
import { reducedRuns, type ReducedRun } from './reducedRuns.ts';
import type { MadeOf, PointNumber, PointResult } from './results.ts';
import { steadinessOf } from './stability.ts';

/** What each run says after landing, one a run, in the order in which they were flown. */
export function pointResults(view: FlightView): readonly PointResult[] {
  const context = contextOf(view);
  if (context === null) {
    const because = view.state.sheet === null ? 'noFlightSheet' : 'outsideAtmosphere';
    return [...items(view.state.runs)].map((run) => ({
      ...headOf(null, { run, suction: 'on' }),
      readingsUsed: [],
      readingsLeftOut: [],
      result: { kind: 'none', because, entries: [] },
      stability: { kind: 'noAnswer', because, entries: [] },
    }));
  }
  return reducedRuns(context).map((reduced) => ({
    ...headOf(context, reduced),
    readingsUsed: reduced.readings.used.map(({ reading }) => reading.glance),
    readingsLeftOut: reduced.readings.leftOut,
    result: numberOf(context, reduced),
    stability: steadinessOf(context, reduced.run, reduced.readings),
  }));
}

function headOf(
  context: Context | null,
  { run, suction }: Pick<ReducedRun, 'run' | 'suction'>,
): Omit<PointResult, 'readingsUsed' | 'readingsLeftOut' | 'result' | 'stability'> {
  const card = context === null ? undefined : cardOf(context, run);
  return {
    point: run.point,
    run: run.run,
    title: card?.title ?? '',
    setting: card?.setting ?? '',
    suction,
    state: run.state,
    startedAt: run.started.at,
    endedAt: run.ended?.at ?? null,
  };
}

function numberOf(context: Context, reduced: ReducedRun): PointNumber {
  const { mean, suction, against, readings } = reduced;
  const entries = entriesOf(context, reduced);
  if (mean === null) {
    const nothingElse = readings.leftOut.every(({ broken }) =>
      broken.every((reason) => reason === 'queried' || reason === 'incomplete'),
    );
    const because = nothingElse ? (readings.missing ?? 'noReading') : 'noUsableReading';
    return { kind: 'none', because, entries };
  }
  if (suction === 'off') {
    return {
      kind: 'baseline',
      entries: [...new Set(readings.used.flatMap((reading) => reading.entries))],
      provisional: [
        ...new Set([
          ...readings.used.flatMap(({ glance }) => provisionalBaseline(context, glance)),
          ...provisionalMethod(context, mean.repeatabilityDeclared),
        ]),
      ],
      flowAtCardKgPerS: mean.flowAtCardKgPerS,
      weightAtCardN: mean.weightAtCardN,
      standardUncertaintyKgPerS: mean.standardUncertaintyKgPerS,
    };
  }
  if (against === null) return { kind: 'none', because: reduced.because, entries };
  return reductionNumber(context, reduced, mean, against);
}

/** Every fuel reading of the run, those left out too. */
function entriesOf({ state }: Context, { run }: ReducedRun): readonly EntryId[] {
  return [...new Set(run.fuelGlances.flatMap((index) => itemAt(state.glances, index)?.by ?? []))];
}

function reductionNumber(
  context: Context,
  reduced: ReducedRun,
  mean: RunMean,
  against: NonNullable<ReducedRun['against']>,
): PointNumber {
  const { terms } = context;
  const { inUse, broken, reduction } = against;
  const { gross, suction, net } = reduction.savings;
  const unitKgPerS = terms.suctionIsMetered ? (mean.unit?.kgPerS ?? null) : null;
  const netKgPerS = 'kgPerS' in net ? net.kgPerS : null;
  return {
    kind: reduced.run.state === 'complete' ? 'valid' : 'indicative',
    fuel: reduction.fuel,
    drag: reduction.drag,
    gross,
    suction,
    net,
    // Engine-driven suction already shows in the engines' flow: nothing is subtracted twice.
    netReduction: terms.suctionIsMetered ? reduction.net : reduction.fuel,
    grossKgPerS: 'kgPerS' in gross ? gross.kgPerS : null,
    suctionUnitKgPerS: unitKgPerS,
    netKgPerS,
    netFraction:
      netKgPerS === null ? null : netKgPerS / (reduction.baselineKgPerS * reduction.dayFactor),
    broken,
    provisional: [
      ...inUse.provisional,
      ...provisionalMethod(context, mean.repeatabilityDeclared),
      ...reduction.provisional,
    ],
    madeOf: madeOf(reduced, mean, against, unitKgPerS),
  };
}

function madeOf(
  { readings }: ReducedRun,
  mean: RunMean,
  { inUse, reduction }: NonNullable<ReducedRun['against']>,
  unitKgPerS: number | null,
): MadeOf {
  const own = readings.used.flatMap(({ entries }) => entries);
  return {
    entries: [...new Set([...own, ...inUse.entries])],
    method: inUse.method,
    dragBy: reduction.dragBy,
    baselineRuns: inUse.labels,
    borrowedFrom: inUse.borrowedFrom,
    flowKgPerS: mean.flowKgPerS,
    flowAtCardKgPerS: mean.flowAtCardKgPerS,
    weightN: mean.weightN,
    weightAtCardN: mean.weightAtCardN,
    baselineAtThatWeightKgPerS: reduction.baselineKgPerS,
    suctionFlowKgPerS: unitKgPerS,
    uncertaintyParts: reduction.parts,
  };
}
