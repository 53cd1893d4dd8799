import type { Baseline, BaselineRun, BaselineValue } from '../../aero/baseline.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  expandedUncertainty,
  type Component,
} from '../../aero/statistics/uncertainty.ts';
import type { EntryId } from '../../record/brand.ts';
import type { Interval95, MadeOf, Provisional } from '../results.ts';
import { certain, type RunMean } from './runMean.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** Where a run stands beside its baseline. */
export interface Abscissa {
  readonly weightN: number;
  readonly mach: number;
}

/** A baseline with all that its doubt needs. */
export interface BaselineInUse {
  readonly method: MadeOf['method'];
  readonly baseline: Baseline;
  /** The same model through other runs: weights that move together move all of them. */
  readonly through: (runs: readonly BaselineRun[]) => Baseline | null;
  /** Its value, through these runs; null where they cannot carry it. Shares are in the order of `means`. */
  readonly valueThrough: (runs: readonly BaselineRun[], at: Abscissa) => BaselineValue | null;
  readonly means: readonly RunMean[];
  readonly labels: readonly string[];
  readonly entries: readonly EntryId[];
  readonly elasticityUncertainty: number;
  readonly borrowedFrom: string | null;
  readonly provisional: readonly Provisional[];
}

/** The baseline at one run: its value, and how it moves when every weight of the flight moves together. */
export interface BaselineAtRun {
  readonly value: BaselineValue;
  readonly perNewton: number;
}

/** How a result moves with the flow at the card and with the baseline there, per kg/s. */
export interface Sensitivities {
  readonly perFlow: number;
  readonly perBaseline: number;
}

/** Signed, in one order for every result on the same baseline runs, so that two results can be held against each other. */
export type Doubts = Readonly<Record<keyof MadeOf['uncertaintyParts'], readonly Component[]>>;

/** @returns null where the baseline, led too far, leaves no flow to compare with */
export function baselineAtRun(run: RunMean, inUse: BaselineInUse): BaselineAtRun | null {
  const { runs } = inUse.baseline;
  const at = { weightN: run.weightAtCardN, mach: run.mach };
  const value = inUse.valueThrough(runs, at);
  if (value === null || !(value.fuelFlowKgPerS > 0)) return null;
  const stepN = run.weightAtCardN * 1e-4;
  const moved = inUse.valueThrough(
    runs.map((of) => ({ ...of, weightN: of.weightN + stepN })),
    { ...at, weightN: at.weightN + stepN },
  );
  const perNewton = moved === null ? 0 : (moved.fuelFlowKgPerS - value.fuelFlowKgPerS) / stepN;
  return { value, perNewton };
}

export function doubtsOf(
  {
    run,
    inUse,
    at,
    terms,
  }: {
    readonly run: RunMean;
    readonly inUse: BaselineInUse;
    readonly at: BaselineAtRun;
    readonly terms: SheetTerms;
  },
  { perFlow, perBaseline }: Sensitivities,
): Doubts {
  return {
    run: [
      {
        sensitivity: perFlow,
        standardUncertainty: run.standardUncertaintyKgPerS,
        degreesOfFreedom: run.degreesOfFreedom,
      },
    ],
    baseline: [
      ...inUse.means.map((mean, index) => ({
        sensitivity: perBaseline * (at.value.runShares[index] ?? 0),
        standardUncertainty: mean.standardUncertaintyKgPerS,
        degreesOfFreedom: mean.degreesOfFreedom,
      })),
      {
        sensitivity: perBaseline * at.value.perElasticityKgPerS,
        standardUncertainty: inUse.elasticityUncertainty,
        degreesOfFreedom: Infinity,
      },
    ],
    // An error common to all gauges moves both alike, and so mostly cancels in a ratio and wholly in a difference.
    calibration: [{ ...certain(run.calibrationKgPerS), sensitivity: perFlow + perBaseline }],
    weight: [{ ...certain(terms.weightUncertaintyN), sensitivity: perBaseline * at.perNewton }],
  };
}

export function allOf(doubts: Doubts): readonly Component[] {
  return Object.values(doubts).flat();
}

/** 95 % by common practice where every doubt is stated; a few readings' own scatter needs Student's t. */
const COVERAGE_FACTOR = 2;

/** A value with its doubt: every result of the debrief has its interval from here. */
export function withInterval(
  value: number,
  components: readonly Component[],
): { readonly standardUncertainty: number; readonly interval95: Interval95 } {
  const standardUncertainty = combinedUncertainty(components);
  const degreesOfFreedom = effectiveDegreesOfFreedom(components);
  const stated = COVERAGE_FACTOR * standardUncertainty;
  const half = Number.isFinite(degreesOfFreedom)
    ? Math.max(
        stated,
        expandedUncertainty({
          standardUncertainty,
          degreesOfFreedom: Math.max(1, degreesOfFreedom),
        }),
      )
    : stated;
  return { standardUncertainty, interval95: { low: value - half, high: value + half } };
}
