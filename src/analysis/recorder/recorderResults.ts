import { epochMs, type EntryId, type EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { Interval, Run, Timed } from '../../record/flightState.ts';
import { items } from '../../record/trail.ts';
import type { BaselineRunUsed } from '../baselineRuns.ts';
import { clockFits, masterTimeOf } from '../clocks.ts';
import { cardOf, contextOf, type Context } from '../reading/context.ts';
import { runMean } from '../reading/runMean.ts';
import { againstBaseline } from '../reducedRuns.ts';
import type { Gate, PointNumber, PointResult, ReductionFigure } from '../results.ts';
import { runsOf } from '../runReadings.ts';
import { pointResults } from '../testPoints.ts';
import type { RecorderOffset } from './clockOffset.ts';
import { recordedRun, type RecordedRun } from './recordedRun.ts';
import type { Cut, RecordedGate } from './secondsLeft.ts';
import type { EvenTrace } from './trace.ts';

/** One run twice: from the scribe's readings, and by the same method from the recorder. */
export interface RecordedPoint {
  readonly point: string;
  readonly run: number;
  readonly state: Run['state'];
  readonly suction: 'on' | 'off';
  readonly scribe: PointNumber;
  readonly recorder: RecordedNumber;
  /** Null where one of the two has no number. */
  readonly difference: Difference | null;
  readonly secondsUsed: number;
  readonly secondsCut: Readonly<Partial<Record<RecordedGate, number>>>;
}

export type RecordedNumber =
  | { readonly kind: 'none'; readonly because: NoRecordedNumber }
  | {
      readonly kind: 'baseline';
      readonly flowAtCardKgPerS: number;
      readonly standardUncertaintyKgPerS: number;
    }
  | {
      readonly kind: 'reduction';
      readonly fuel: ReductionFigure;
      readonly flowAtCardKgPerS: number;
      readonly broken: readonly Gate[];
    };

export type NoRecordedNumber =
  | 'noFlightSheet'
  /** A channel that every reduction needs was not recorded: engine flows, Mach, height, temperature. */
  | 'channelMissing'
  | 'notRecorded'
  | 'everySecondCut'
  | 'noWeight'
  | 'noBaseline';

/** Recorder less scribe: a share for a reduction, kg/s for a baseline. */
export interface Difference {
  readonly value: number;
  /** Both doubts, as if they shared nothing. */
  readonly standardUncertainty: number;
  /** Within twice that. */
  readonly agrees: boolean;
}

/** Neither hand nor recorder knows a run's edge better than the offset and this. */
const EDGE_S = 3;

/** Every run of the flight, in the order in which they were flown. */
export function recorderResults(
  view: FlightView,
  even: EvenTrace,
  offset: Pick<RecorderOffset, 'offsetS' | 'standardUncertaintyS'>,
): readonly RecordedPoint[] {
  const steps = recorderSteps(view, pointResults(view), even, offset);
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}

/** The same in steps of one run each, so that a page can take a breath between them. */
export function* recorderSteps(
  view: FlightView,
  scribes: readonly PointResult[],
  even: EvenTrace,
  offset: Pick<RecorderOffset, 'offsetS' | 'standardUncertaintyS'>,
): Generator<undefined, readonly RecordedPoint[]> {
  const context = contextOf(view);
  const flown: Flown[] = [];
  if (context !== null) {
    const reduced = runReducer(context, view, even, offset);
    for (const [index, run] of runsOf(context).entries()) {
      flown.push(reduced(run, index));
      yield;
    }
  }
  const baselines = baselinesOf(flown);
  const points: RecordedPoint[] = [];
  for (const [index, scribe] of scribes.entries()) {
    points.push(pointOf(scribe, index));
    yield;
  }
  return points;

  function pointOf(scribe: PointResult, index: number): RecordedPoint {
    const one = flown[index];
    const recorder: RecordedNumber =
      context === null || one === undefined
        ? { kind: 'none', because: 'noFlightSheet' }
        : numberOf(context, one, baselines, even);
    return {
      point: scribe.point,
      run: scribe.run,
      state: scribe.state,
      suction: scribe.suction,
      scribe: scribe.result,
      recorder,
      difference: differenceOf(scribe.result, recorder),
      secondsUsed: one?.recorded?.secondsUsed ?? 0,
      secondsCut: one?.recorded?.secondsCut ?? {},
    };
  }
}

interface Flown {
  readonly run: Run;
  readonly index: number;
  readonly suction: 'on' | 'off';
  readonly recorded: RecordedRun | null;
  readonly isInside: boolean;
}

function runReducer(
  context: Context,
  view: FlightView,
  even: EvenTrace,
  offset: Pick<RecorderOffset, 'offsetS' | 'standardUncertaintyS'>,
): (run: Run, index: number) => Flown {
  const fits = clockFits(view.state);
  const secondOf = ({ at, by }: Pick<Timed, 'at' | 'by'>): number => {
    const entry = view.byId(by)?.entry;
    const master = entry === undefined ? at : masterTimeOf(fits, entry.rec, at);
    return (master - even.startMs) / 1000 + offset.offsetS;
  };
  const cuts = [...items(view.state.intervals)].flatMap((one) => cutOf(one, secondOf));
  const edgeS = Math.max(EDGE_S, 2 * offset.standardUncertaintyS);
  return (run, index) => {
    const startS = secondOf(run.started);
    const endS = run.ended === null ? even.seconds : secondOf(run.ended);
    const onCondition = conditionWithin(view, run);
    const late =
      onCondition === null
        ? []
        : [{ because: 'beforeOnCondition', fromS: startS, toS: secondOf(onCondition) } as const];
    // Tablet and time base part by milliseconds in a run, so one shift serves all of it.
    const atOf = (second: number): EpochMs =>
      epochMs(Math.round(run.started.at + (second - startS) * 1000));
    return {
      run,
      index,
      suction: cardOf(context, run)?.suction ?? 'on',
      isInside: startS < even.seconds && endS > 0,
      recorded: recordedRun(context, even, {
        run,
        fromS: startS + edgeS,
        toS: endS - edgeS,
        cuts: [...cuts, ...late],
        atOf,
      }),
    };
  };
}

function cutOf(
  { kind, opened, closed }: Interval,
  secondOf: (timed: Timed) => number,
): readonly Cut[] {
  if (kind !== 'turn' && kind !== 'moisture') return [];
  const toS = closed === null ? Infinity : secondOf(closed);
  return [{ because: kind, fromS: secondOf(opened), toS }];
}

/** The first on-condition call inside a run: what comes before it is not counted, as for a reading. */
function conditionWithin(
  view: FlightView,
  run: Run,
): { readonly at: EpochMs; readonly by: EntryId } | null {
  const calls = view.standing.filter(
    ({ standing, effective, at }) =>
      standing === 'stands' &&
      effective.kind === 'conditionReached' &&
      at >= run.started.at &&
      (run.ended === null || at <= run.ended.at),
  );
  const first = calls.toSorted((a, b) => a.at - b.at)[0];
  return first === undefined ? null : { at: first.at, by: first.entry.id };
}

function baselinesOf(flown: readonly Flown[]): readonly BaselineRunUsed[] {
  const off = flown.filter(
    ({ suction, recorded }) => suction === 'off' && (recorded?.readings.length ?? 0) > 0,
  );
  const finished = off.filter(({ run }) => run.state === 'complete' || run.state === 'open');
  return (finished.length > 0 ? finished : off).map(({ run, index, recorded }) => ({
    index,
    label: run.run > 1 ? `${run.point} run ${run.run}` : run.point,
    startedAt: run.started.at,
    readings: recorded?.readings ?? [],
    entries: run.ended === null ? [run.started.by] : [run.started.by, run.ended.by],
    provisional: [],
  }));
}

function numberOf(
  context: Context,
  { run, suction, recorded, isInside }: Flown,
  baselines: readonly BaselineRunUsed[],
  even: EvenTrace,
): RecordedNumber {
  const none = (because: NoRecordedNumber): RecordedNumber => ({ kind: 'none', because });
  if (recorded === null) {
    const needed = [even.mach, even.pressureAltitudeM, even.staticTemperatureK];
    const isLacking =
      needed.includes(null) || even.engines.length < context.terms.sheet.aircraft.engineCount;
    return none(isLacking ? 'channelMissing' : 'noWeight');
  }
  if (!isInside) return none('notRecorded');
  if (recorded.readings.length === 0) return none('everySecondCut');
  const mean = runMean(context.terms, recorded.readings, null);
  if (suction === 'off') {
    return {
      kind: 'baseline',
      flowAtCardKgPerS: mean.flowAtCardKgPerS,
      standardUncertaintyKgPerS: Math.hypot(mean.standardUncertaintyKgPerS, mean.calibrationKgPerS),
    };
  }
  const { against } = againstBaseline(context, run, mean, baselines);
  if (against === null) return none('noBaseline');
  return {
    kind: 'reduction',
    fuel: against.reduction.fuel,
    flowAtCardKgPerS: mean.flowAtCardKgPerS,
    broken: against.broken,
  };
}

function differenceOf(scribe: PointNumber, recorder: RecordedNumber): Difference | null {
  if (recorder.kind === 'reduction' && (scribe.kind === 'valid' || scribe.kind === 'indicative')) {
    return difference(
      recorder.fuel.fraction - scribe.fuel.fraction,
      recorder.fuel.standardUncertainty,
      scribe.fuel.standardUncertainty,
    );
  }
  if (recorder.kind === 'baseline' && scribe.kind === 'baseline') {
    return difference(
      recorder.flowAtCardKgPerS - scribe.flowAtCardKgPerS,
      recorder.standardUncertaintyKgPerS,
      scribe.standardUncertaintyKgPerS,
    );
  }
  return null;
}

function difference(value: number, ...doubts: readonly number[]): Difference {
  const standardUncertainty = Math.hypot(...doubts);
  return { value, standardUncertainty, agrees: Math.abs(value) <= 2 * standardUncertainty };
}
