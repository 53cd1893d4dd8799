import { baselineAt, type BaselineValue } from '../../aero/baseline.ts';
import type { Component } from '../../aero/statistics/uncertainty.ts';
import type { EpochMs } from '../../record/brand.ts';
import { baselineAfterLanding, bracketAround, type BaselineRunUsed } from '../baselineRuns.ts';
import type { Context } from '../reading/context.ts';
import type { Abscissa, BaselineInUse } from '../reading/doubts.ts';
import type { Gate } from '../results.ts';
import type { Along } from './along.ts';
import { cornersWithin, integrated } from './lines.ts';

/** What a stretch would have cost with suction off, and how that moves with each doubt. */
export interface TurbulentFuel {
  readonly kg: number;
  /** Of the baseline runs and of a borrowed elasticity. */
  readonly baseline: readonly Component[];
  readonly calibration: Component;
  readonly weight: Component;
  /** Suction-off flow at either end, kg/s. */
  readonly flowAtStartKgPerS: number;
  readonly flowAtEndKgPerS: number;
  readonly inUse: BaselineInUse;
  readonly broken: readonly Gate[];
}

/**
 * The baseline at the weight of each moment, brought from the card to the height and temperature flown, over time.
 *
 * @returns null where the baseline leaves no flow at some weight of the stretch
 */
export function turbulentFuel(
  context: Context,
  along: Along,
  runs: readonly BaselineRunUsed[],
  [from, to]: readonly [from: EpochMs, to: EpochMs],
): TurbulentFuel | null {
  const chosen = baselineFor(context, along, runs, [from, to]);
  if (chosen === null) return null;
  const { inUse, broken } = chosen;
  const { terms } = context;
  const { cardAir } = terms;
  const stepN = along.weightN(from) * 1e-4;
  const movedValue = valuesMovedBy(inUse, stepN);
  const flowAt = (at: number): FlowTerms => {
    const air = along.air(at);
    const toCard = cardAir.pressureRatio / air.pressureRatio;
    const factor = Math.sqrt(air.temperatureK / cardAir.temperatureK) / toCard;
    const abscissa = { weightN: along.weightN(at) * toCard, mach: along.mach(at) };
    if (!(abscissa.weightN > 0)) return NO_FLOW;
    const value = inUse.valueThrough(inUse.baseline.runs, abscissa);
    if (value === null) return NO_FLOW;
    const moved = movedValue(abscissa) ?? value;
    return {
      kgPerS: value.fuelFlowKgPerS * factor,
      perRun: value.runShares.map((share) => share * factor),
      perElasticity: value.perElasticityKgPerS * factor,
      perWeight: ((moved.fuelFlowKgPerS - value.fuelFlowKgPerS) / stepN) * factor,
    };
  };
  const corners = cornersWithin(along.corners, from, to);
  if (corners.some((at) => !(flowAt(at).kgPerS > 0))) return null;
  const runCount = inUse.means.length;
  const [kg = 0, perElasticity = 0, perWeight = 0, ...perRun] = integrated(corners, (at) => {
    const flow = flowAt(at);
    return [flow.kgPerS, flow.perElasticity, flow.perWeight, ...flow.perRun];
  });
  return {
    kg,
    baseline: [
      ...inUse.means.map((mean, run) => ({
        sensitivity: perRun[run] ?? 0,
        standardUncertainty: mean.standardUncertaintyKgPerS,
        degreesOfFreedom: mean.degreesOfFreedom,
      })),
      {
        sensitivity: perElasticity,
        standardUncertainty: inUse.elasticityUncertainty,
        degreesOfFreedom: Infinity,
      },
    ],
    // The baseline is gauged and the burn is counted, so what calibration leaves does not cancel here.
    calibration: {
      sensitivity: perRun.slice(0, runCount).reduce((total, share) => total + share, 0),
      standardUncertainty: Math.max(...inUse.means.map((mean) => mean.calibrationKgPerS)),
      degreesOfFreedom: Infinity,
    },
    weight: {
      sensitivity: perWeight,
      standardUncertainty: terms.weightUncertaintyN,
      degreesOfFreedom: Infinity,
    },
    flowAtStartKgPerS: flowAt(from).kgPerS,
    flowAtEndKgPerS: flowAt(to).kgPerS,
    inUse,
    broken,
  };
}

/** The flow of one moment and how it moves: per run, per elasticity, and per newton that all weights move by. */
interface FlowTerms {
  readonly kgPerS: number;
  readonly perRun: readonly number[];
  readonly perElasticity: number;
  readonly perWeight: number;
}

const NO_FLOW: FlowTerms = { kgPerS: 0, perRun: [], perElasticity: 0, perWeight: 0 };

/** The baseline with all weights of the flight moved together; made once, not at every moment. */
function valuesMovedBy(
  inUse: BaselineInUse,
  stepN: number,
): (at: Abscissa) => BaselineValue | null {
  const runs = inUse.baseline.runs.map((run) => ({ ...run, weightN: run.weightN + stepN }));
  const moved = ({ weightN, mach }: Abscissa): Abscissa => ({ weightN: weightN + stepN, mach });
  if (inUse.method === 'bracket') return (at) => inUse.valueThrough(runs, moved(at));
  const model = inUse.through(runs);
  return (at) => (model === null ? null : baselineAt(model, moved(at).weightN, at.mach));
}

/** One baseline for the whole stretch: the one that carries both of its ends. */
function baselineFor(
  context: Context,
  along: Along,
  runs: readonly BaselineRunUsed[],
  ends: readonly EpochMs[],
): { readonly inUse: BaselineInUse; readonly broken: readonly Gate[] } | null {
  const bracket = ends[0] === undefined ? null : bracketAround(context, runs, ends[0]);
  if (bracket !== null) return { inUse: bracket, broken: [] };
  const chosen = ends.flatMap((at) => {
    const { pressureRatio } = along.air(at);
    const weightAtCardN = along.weightN(at) * (context.terms.cardAir.pressureRatio / pressureRatio);
    const found =
      weightAtCardN > 0 ? baselineAfterLanding(context, runs, weightAtCardN, along.mach(at)) : null;
    return found === null ? [] : [found];
  });
  const [first] = chosen;
  if (first === undefined || chosen.length < ends.length) return null;
  const borrowing = chosen.find(({ inUse }) => inUse.borrowedFrom !== null);
  return {
    inUse: (borrowing ?? first).inUse,
    broken: [...new Set(chosen.flatMap(({ broken }) => broken))],
  };
}
