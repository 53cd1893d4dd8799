import {
  resolutionUncertainty,
  totaliserFlowUncertainty,
} from '../../aero/statistics/uncertainty.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Glance, Run } from '../../record/flightState.ts';
import { correctedReading, type DisplayParts } from '../calibrate.ts';
import type { Context, ReadingOutcome } from '../reading/context.ts';
import { runReadings } from '../runReadings.ts';
import type { EngineFlows, FlowsOfRun, NoFlows, RunFlows } from './counterResults.ts';
import type { Counter } from './counters.ts';

type Used = Extract<ReadingOutcome, { kind: 'reduced' }>;

/** 95 % by common practice. */
export const AGREES_WITHIN = 2;

/** The gauges' time mean of one run beside the slope of the counters over the same time. */
export function runFlows(
  context: Context,
  counters: readonly Counter[] | null,
  run: Run,
): RunFlows {
  const { used } = runReadings(context, run);
  const entries = used.flatMap(({ glance }) => glance.by);
  const none = (because: NoFlows): RunFlows => ({
    point: run.point,
    run: run.run,
    flows: { kind: 'noAnswer', because, entries },
  });
  if (used.length === 0) return none('noUsableReading');
  if (counters === null) return none('countersNotRead');
  const blocks = sideBySide(run, used);
  const counted = blocks.map((block) => betweenCounters(counters, block));
  const [longest] = counted
    .filter((block) => block.length > 1)
    .toSorted((a, b) => lastedMs(b) - lastedMs(a));
  if (longest === undefined) {
    return none(blocks.every((block) => block.length < 2) ? 'oneReading' : 'countersNotRead');
  }
  const flows = flowsOf(context, counters, longest);
  if (flows === null) return none('counterWentBack');
  return {
    point: run.point,
    run: run.run,
    flows: {
      kind: 'answer',
      value: flows,
      how: { entries: entriesOf(longest), method: 'timeMeanBesideSlope', broken: [] },
    },
  };
}

/** Readings that follow each other with none between them that a gate breaks: there the flow was something else. */
function sideBySide(run: Run, used: readonly Used[]): readonly (readonly Used[])[] {
  const byGlance = new Map(used.map((one) => [one.reading.glance, one]));
  const blocks: Used[][] = [[]];
  for (const index of run.fuelGlances) {
    const one = byGlance.get(index);
    if (one === undefined) blocks.push([]);
    else blocks.at(-1)?.push(one);
  }
  return blocks;
}

/** The block from its first to its last look at all counters. */
function betweenCounters(counters: readonly Counter[], block: readonly Used[]): readonly Used[] {
  const isCounted = ({ glance }: Used): boolean =>
    counters.every((counter) => counterKg(counter, glance) !== null);
  const first = block.findIndex(isCounted);
  return first < 0 ? [] : block.slice(first, block.findLastIndex(isCounted) + 1);
}

function flowsOf(
  { terms }: Context,
  counters: readonly Counter[],
  block: readonly Used[],
): FlowsOfRun | null {
  const [first] = block;
  const last = block.at(-1);
  if (first === undefined || last === undefined) return null;
  const durationS = lastedMs(block) / 1000;
  if (!(durationS > 0)) return null;
  const weights = timeWeights(block.map(({ glance }) => glance.at));
  const engines: EngineFlows[] = [];
  for (const [place, gauge] of terms.engineFlows.entries()) {
    const counter = counters.find(({ consumer }) => consumer === String(gauge.consumer));
    const start = counter === undefined ? null : counterKg(counter, first.glance);
    const end = counter === undefined ? null : counterKg(counter, last.glance);
    if (start === null || end === null || end.kg < start.kg) return null;
    const looks = block.flatMap(({ reading }) => reading.flow.engines[place] ?? []);
    const gaugeKgPerS = looks.reduce(
      (total, { kgPerS }, index) => total + kgPerS * (weights[index] ?? 0),
      0,
    );
    const parts = looks[0]?.parts;
    engines.push(
      told(Number(gauge.consumer), {
        gaugeKgPerS,
        counterKgPerS: (end.kg - start.kg) / durationS,
        gaugeUncertaintyKgPerS: parts === undefined ? 0 : meanUncertainty(parts, weights),
        calibrationUncertaintyKgPerS: parts?.residualSi ?? 0,
        counterUncertaintyKgPerS: slopeUncertainty(start.parts, durationS),
      }),
    );
  }
  return engines.length === 0 ? null : totalOf(first.glance.at, last.glance.at, engines);
}

function told(
  engine: number,
  said: Omit<EngineFlows, 'engine' | 'differenceKgPerS' | 'standardUncertaintyKgPerS' | 'agrees'>,
): EngineFlows {
  const differenceKgPerS = said.gaugeKgPerS - said.counterKgPerS;
  const standardUncertaintyKgPerS = Math.hypot(
    said.gaugeUncertaintyKgPerS,
    said.counterUncertaintyKgPerS,
    said.calibrationUncertaintyKgPerS,
  );
  return {
    engine,
    ...said,
    differenceKgPerS,
    standardUncertaintyKgPerS,
    agrees: Math.abs(differenceKgPerS) <= AGREES_WITHIN * standardUncertaintyKgPerS,
  };
}

function totalOf(from: EpochMs, to: EpochMs, engines: readonly EngineFlows[]): FlowsOfRun {
  const sum = (of: (engine: EngineFlows) => number): number =>
    engines.reduce((total, engine) => total + of(engine), 0);
  const combined = (of: (engine: EngineFlows) => number): number => Math.hypot(...engines.map(of));
  const [scatter, residual, slope] = [
    combined((engine) => engine.gaugeUncertaintyKgPerS),
    combined((engine) => engine.calibrationUncertaintyKgPerS),
    combined((engine) => engine.counterUncertaintyKgPerS),
  ];
  const differenceKgPerS = sum((engine) => engine.differenceKgPerS);
  const difference = Math.hypot(scatter, residual, slope);
  return {
    from,
    to,
    gaugesKgPerS: sum((engine) => engine.gaugeKgPerS),
    gaugesStandardUncertaintyKgPerS: Math.hypot(scatter, residual),
    counterKgPerS: sum((engine) => engine.counterKgPerS),
    counterStandardUncertaintyKgPerS: slope,
    differenceKgPerS,
    differenceStandardUncertaintyKgPerS: difference,
    agrees: Math.abs(differenceKgPerS) <= AGREES_WITHIN * difference,
    engines,
    used: 'gauges',
    because: scatter <= slope ? 'countersCoarser' : 'baselineIsGauged',
  };
}

interface CounterReading {
  readonly kg: number;
  readonly parts: DisplayParts;
}

function counterKg({ instrument }: Counter, glance: Glance): CounterReading | null {
  const reading = glance.readings[instrument.id];
  const corrected = reading === undefined ? null : correctedReading(instrument, reading);
  return corrected?.kind === 'corrected' ? { kg: corrected.valueSi, parts: corrected.parts } : null;
}

function slopeUncertainty(parts: DisplayParts, durationS: number): number {
  const scatter = Math.hypot(parts.repeatabilitySi ?? 0, parts.independentSi);
  return Math.hypot(
    totaliserFlowUncertainty({ step: parts.stepSi, durationS }),
    (Math.SQRT2 * scatter) / durationS,
  );
}

/** Of a weighted mean of looks at one gauge, what calibration leaves to all of them left out. */
function meanUncertainty(parts: DisplayParts, weights: readonly number[]): number {
  const { stepSi, repeatabilitySi, independentSi } = parts;
  const shared = Math.sqrt(weights.reduce((total, weight) => total + weight ** 2, 0));
  const scatter = repeatabilitySi ?? stepSi / 2;
  // Only scatter of half a step or more moves the reading over several digits, so that a mean helps.
  const dithered = scatter >= stepSi / 2 - 1e-12;
  const resolution = resolutionUncertainty(stepSi) * (dithered ? shared : 1);
  return Math.hypot(resolution, shared * scatter, shared * independentSi);
}

/** Shares of a mean over time on straight lines between the looks. */
function timeWeights(times: readonly number[]): readonly number[] {
  const whole = (times.at(-1) ?? 0) - (times[0] ?? 0);
  return times.map((at, index) => {
    const before = times[index - 1] ?? at;
    const after = times[index + 1] ?? at;
    return (after - before) / 2 / whole;
  });
}

function lastedMs(block: readonly Used[]): number {
  return (block.at(-1)?.glance.at ?? 0) - (block[0]?.glance.at ?? 0);
}

function entriesOf(block: readonly Used[]): readonly EntryId[] {
  return [...new Set(block.flatMap(({ glance }) => glance.by))];
}
