import type { LiveEstimate, PointResult } from '../../../analysis/results.ts';
import { flowIn, flowUnitOf } from '../../../analysis/sheetUnits.ts';
import { gateWords } from '../../../analysis/words/gates.ts';
import { epochMs, type EpochMs } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';
import { itemAt, items } from '../../../record/trail.ts';
import type { TimeBase } from '../timeBase.ts';
import type { CurvePoint, FuelCurve, FuelPoint, ReductionCurve, ReductionPoint } from './model.ts';
import { shownTimeOf } from './spans.ts';

/** z of the normal distribution that holds 68.27 % and 95 %: bands are drawn from the stated 95 % interval. */
const SHARE_68_OF_95 = 1 / 1.959964;

/** Total fuel flow moved to the card's conditions, reading by reading, and the suction-off baseline as it stands after landing. */
export function fuelCurve(
  view: FlightView,
  base: TimeBase,
  estimates: readonly LiveEstimate[],
  results: readonly PointResult[],
): FuelCurve {
  const unit = flowUnitOf(view.state.sheet);
  const shown = shownTimeOf(view, base);
  const points: FuelPoint[] = [];
  for (const estimate of estimates) {
    const glance =
      estimate.glance === null ? undefined : itemAt(view.state.glances, estimate.glance);
    const entry = glance?.by[0];
    if (glance !== undefined && entry !== undefined && estimate.kind !== 'notYet') {
      const flow =
        estimate.kind === 'baselineReading'
          ? estimate.flowAtCardKgPerS
          : estimate.madeOf.flowAtCardKgPerS;
      const hollow =
        estimate.kind === 'struck' ||
        (estimate.kind === 'baselineReading' && estimate.broken.length > 0);
      points.push({
        at: base.shown(glance.at, glance.rec),
        value: flowIn(unit, flow),
        entry,
        hollow,
      });
    }
  }
  const runs = [...items(view.state.runs)].map((run) => ({
    from: shown(run.started),
    to: run.ended === null ? null : shown(run.ended),
    words: run.run > 1 ? `${run.point} r${run.run}` : run.point,
  }));
  const baseline = baselineLine(view, base, results).map(({ at, value }) => ({
    at,
    value: flowIn(unit, value),
  }));
  const values = [...points, ...baseline].map(({ value }) => value);
  return { unit, points, baseline, runs, ...niceRange(values) };
}

/** The baseline at the middle of each run: measured where the suction was off, fitted to the run's weight where it was on. */
function baselineLine(
  view: FlightView,
  base: TimeBase,
  results: readonly PointResult[],
): readonly CurvePoint[] {
  const line: CurvePoint[] = [];
  for (const result of results) {
    const flow = baselineFlowOf(result);
    const first = itemAt(view.state.glances, result.readingsUsed[0] ?? -1);
    const last = itemAt(view.state.glances, result.readingsUsed.at(-1) ?? -1);
    if (flow !== null && first !== undefined && last !== undefined) {
      const from = base.shown(first.at, first.rec);
      const to = base.shown(last.at, last.rec);
      line.push({ at: middle(from, to), value: flow });
    }
  }
  return line.sort((a, b) => a.at - b.at);
}

function baselineFlowOf({ result }: PointResult): number | null {
  switch (result.kind) {
    case 'none':
      return null;
    case 'baseline':
      return result.flowAtCardKgPerS;
    case 'valid':
    case 'indicative':
      return result.madeOf.baselineAtThatWeightKgPerS;
  }
}

/** Reductions reading by reading, each against the baseline known at that moment. */
export function reductionCurve(
  view: FlightView,
  base: TimeBase,
  estimates: readonly LiveEstimate[],
): ReductionCurve {
  const { sheet } = view.state;
  const silenceMs = 2_000 * (sheet?.limits.readingEveryS ?? 300);
  const stretches: ReductionPoint[][] = [];
  const struck: { at: EpochMs; value: number; words: string }[] = [];
  let joinable = false;
  for (const estimate of estimates) {
    const glance =
      estimate.glance === null ? undefined : itemAt(view.state.glances, estimate.glance);
    const entry = glance?.by[0];
    if (estimate.kind !== 'value' && estimate.kind !== 'struck') {
      joinable = false;
      continue;
    }
    if (glance === undefined || entry === undefined) {
      continue;
    }
    const at = base.shown(glance.at, glance.rec);
    const value = 100 * estimate.fuel.fraction;
    if (estimate.kind === 'struck') {
      joinable = false;
      const gate = estimate.broken[0];
      struck.push({ at, value, words: gate === undefined ? 'struck' : gateWords(gate) });
      continue;
    }
    const { low, high } = estimate.fuel.interval95;
    const point: ReductionPoint = {
      at,
      value,
      low95: 100 * low,
      high95: 100 * high,
      half68: 50 * (high - low) * SHARE_68_OF_95,
      entry,
    };
    const stretch = stretches.at(-1);
    const before = stretch?.at(-1);
    if (joinable && stretch !== undefined && before !== undefined && at - before.at <= silenceMs) {
      stretch.push(point);
    } else {
      stretches.push([point]);
    }
    joinable = true;
  }
  const target =
    sheet?.targetReductionFraction === undefined ? null : 100 * sheet.targetReductionFraction;
  const all = stretches.flat();
  const lows = [0, ...all.map(({ low95 }) => low95), ...struck.map(({ value }) => value)];
  const highs = [
    10,
    target ?? 0,
    ...all.map(({ high95 }) => high95),
    ...struck.map(({ value }) => value),
  ];
  const low = lows.reduce((least, value) => Math.min(least, value));
  const high = highs.reduce((most, value) => Math.max(most, value));
  return {
    stretches,
    struck,
    target,
    low: 5 * Math.floor(low / 5),
    high: 5 * Math.ceil((high + 2) / 5),
  };
}

function middle(from: EpochMs, to: EpochMs): EpochMs {
  return epochMs(Math.round((from + to) / 2));
}

/** Bounds on round hundreds, so that the axis needs no more than three figures. */
function niceRange(values: readonly number[]): { readonly low: number; readonly high: number } {
  if (values.length === 0) {
    return { low: 0, high: 100 };
  }
  const lowest = values.reduce((least, value) => Math.min(least, value));
  const highest = values.reduce((most, value) => Math.max(most, value));
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(highest - lowest, 1))));
  return { low: step * Math.floor(lowest / step), high: step * Math.ceil(highest / step) || step };
}
