import {
  baselineAt,
  fitBaseline,
  liveBaseline,
  UNKNOWN_WEIGHT_ELASTICITY,
  type Baseline,
  type BaselineRun,
  type WeightElasticity,
} from '../aero/baseline.ts';
import { bracketAt } from '../aero/bracket.ts';
import { fitBaselineWithMach, machSpanOf } from '../aero/machTerm.ts';
import type { BaselineInUse } from './reading/doubts.ts';

/** How runs become a baseline: the model, and its value at a weight and Mach number. */
export type BaselineModel = Pick<
  BaselineInUse,
  'method' | 'baseline' | 'through' | 'valueThrough' | 'elasticityUncertainty'
>;

/** One run moved with the elasticity, a fit with the elasticity as one more row from the second run on. */
export function carriedModel(
  runs: readonly BaselineRun[],
  elasticity: WeightElasticity,
): BaselineModel | null {
  return modelOf(runs, elasticity.standardUncertainty, (through) => {
    const baseline = liveBaseline(through, elasticity);
    return baseline.kind === 'unavailable' ? null : baseline;
  });
}

/** A fit through the runs alone, with a term for Mach where they can carry one. */
export function fittedModel(
  runs: readonly BaselineRun[],
  referenceMach: number,
): BaselineModel | null {
  const withMach = machSpanOf(runs).kind === 'ready';
  return modelOf(runs, 0, (through) => {
    const fit = withMach
      ? fitBaselineWithMach({ runs: through, trust: 'absolute', referenceMach })
      : fitBaseline({ runs: through, trust: 'absolute' });
    return fit.kind === 'unavailable' ? null : fit;
  });
}

/**
 * The run before and the run after, both moved to one weight. Nobody knows how flow goes with weight there, yet as the
 * weight lies between the two, what that does to one it undoes to the other.
 *
 * @param places of the two among all runs
 */
export function bracketModel(
  runs: readonly BaselineRun[],
  places: readonly [before: number, after: number],
): BaselineModel | null {
  const carried = carriedModel(runs, UNKNOWN_WEIGHT_ELASTICITY);
  if (carried === null) return null;
  return {
    ...carried,
    method: 'bracket',
    valueThrough: (through, { weightN }) => {
      const [before, after] = [through[places[0]], through[places[1]]];
      if (before === undefined || after === undefined) return null;
      const value = bracketAt({ before, after, weightN, borrowed: UNKNOWN_WEIGHT_ELASTICITY });
      if (value.kind === 'unavailable') return null;
      const [shareBefore = 0, shareAfter = 0] = value.value.runShares;
      const runShares = through.map((_, place) =>
        place === places[0] ? shareBefore : place === places[1] ? shareAfter : 0,
      );
      return { ...value.value, runShares };
    },
  };
}

function modelOf(
  runs: readonly BaselineRun[],
  elasticityUncertainty: number,
  through: (runs: readonly BaselineRun[]) => Baseline | null,
): BaselineModel | null {
  const baseline = through(runs);
  if (baseline === null) return null;
  return {
    method: methodOf(baseline),
    baseline,
    through,
    valueThrough: (others, { weightN, mach }) => {
      const model = others === baseline.runs ? baseline : through(others);
      return model === null ? null : baselineAt(model, weightN, mach);
    },
    elasticityUncertainty,
  };
}

function methodOf(baseline: Baseline): BaselineModel['method'] {
  if (baseline.kind === 'pair') return 'pair';
  return baseline.machTerm === undefined ? 'fit' : 'fitWithMach';
}
