import { baselineAt, type Baseline, type BaselineRun } from '../../aero/baseline.ts';
import { dragReductionFromMap } from '../../aero/engineMap.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  expandedUncertainty,
  type Component,
} from '../../aero/statistics/uncertainty.ts';
import type { EntryId } from '../../record/brand.ts';
import type { MadeOf, Provisional, ReductionFigure } from '../results.ts';
import { certain, type RunMean } from './runMean.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** A baseline with all that its doubt needs. */
export interface BaselineInUse {
  readonly baseline: Baseline;
  /** The same model through other runs: weights that move together move all of them. */
  readonly through: (runs: readonly BaselineRun[]) => Baseline | null;
  readonly means: readonly RunMean[];
  readonly labels: readonly string[];
  readonly entries: readonly EntryId[];
  readonly elasticityUncertainty: number;
  readonly borrowedFrom: string | null;
  readonly provisional: readonly Provisional[];
}

export interface Reduction {
  readonly fuel: ReductionFigure;
  readonly drag: ReductionFigure | { readonly because: 'noEngineMap' | 'bleedDriven' };
  readonly net: ReductionFigure | null;
  readonly baselineKgPerS: number;
  /** From the card's temperature to the one flown: multiplies flows at the card. */
  readonly dayFactor: number;
  readonly parts: MadeOf['uncertaintyParts'];
}

/** 95 % by common practice where every doubt is stated; a few readings' own scatter needs Student's t. */
const COVERAGE_FACTOR = 2;

/**
 * What a mean says against a baseline; negative where more was burnt.
 *
 * @returns null where the baseline, led too far, leaves no flow to compare with
 */
export function reductionOf(
  terms: SheetTerms,
  run: RunMean,
  inUse: BaselineInUse,
): Reduction | null {
  const baseline = baselineAt(inUse.baseline, run.weightAtCardN);
  const baselineKgPerS = baseline.fuelFlowKgPerS;
  if (!(baselineKgPerS > 0)) return null;
  const dayFactor = Math.sqrt(run.temperatureK / terms.cardAir.temperatureK);
  const fuel = against(0);
  return {
    fuel: figureOf(fuel.fraction, Object.values(fuel.groups).flat()),
    drag: dragOf(),
    net: netOf(),
    baselineKgPerS,
    dayFactor,
    parts: {
      run: combinedUncertainty(fuel.groups.run),
      baseline: combinedUncertainty(fuel.groups.baseline),
      calibration: combinedUncertainty(fuel.groups.calibration),
      weight: combinedUncertainty(fuel.groups.weight),
    },
  };

  /** Share of the flow above `idleKgPerS` that is gone, and its doubts. */
  function against(idleKgPerS: number): {
    readonly fraction: number;
    readonly groups: Readonly<Record<keyof MadeOf['uncertaintyParts'], readonly Component[]>>;
  } {
    const whole = baselineKgPerS - idleKgPerS;
    const fraction = (baselineKgPerS - run.flowAtCardKgPerS) / whole;
    const perBaseline = (run.flowAtCardKgPerS - idleKgPerS) / whole ** 2;
    return {
      fraction,
      groups: {
        run: [
          {
            sensitivity: 1 / whole,
            standardUncertainty: run.standardUncertaintyKgPerS,
            degreesOfFreedom: run.degreesOfFreedom,
          },
        ],
        baseline: [
          ...inUse.means.map((mean, index) => ({
            sensitivity: perBaseline * (baseline.runShares[index] ?? 0),
            standardUncertainty: mean.standardUncertaintyKgPerS,
            degreesOfFreedom: mean.degreesOfFreedom,
          })),
          {
            sensitivity: perBaseline * baseline.perElasticityKgPerS,
            standardUncertainty: inUse.elasticityUncertainty,
            degreesOfFreedom: Infinity,
          },
        ],
        // An error common to all runs mostly cancels: what is left grows with the reduction itself.
        calibration: [certain(Math.abs(fraction / whole) * run.calibrationKgPerS)],
        weight: [certain(Math.abs(perNewton(idleKgPerS)) * terms.weightUncertaintyN)],
      },
    };
  }

  /** ∂(reduction)/∂W with every weight moved together. */
  function perNewton(idleKgPerS: number): number {
    const stepN = run.weightAtCardN * 1e-4;
    const moved = inUse.baseline.runs.map((of) => ({ ...of, weightN: of.weightN + stepN }));
    const through = inUse.through(moved);
    if (through === null) return 0;
    const movedKgPerS = baselineAt(through, run.weightAtCardN + stepN).fuelFlowKgPerS;
    const fractionAt = (kgPerS: number): number =>
      (kgPerS - run.flowAtCardKgPerS) / (kgPerS - idleKgPerS);
    return (fractionAt(movedKgPerS) - fractionAt(baselineKgPerS)) / stepN;
  }

  function dragOf(): Reduction['drag'] {
    if (!terms.suctionIsMetered) return { because: 'bleedDriven' };
    if (terms.map === null) return { because: 'noEngineMap' };
    const { idleKgPerS } = terms.map;
    const share = dragReductionFromMap({
      fuelFlowKgPerS: run.flowAtCardKgPerS,
      baselineFuelFlowKgPerS: baselineKgPerS,
      idleKgPerS,
    });
    if (share.kind === 'unavailable') return { because: 'noEngineMap' };
    const { groups } = against(idleKgPerS);
    const perIdle = Math.abs(share.value) / (baselineKgPerS - idleKgPerS);
    return figureOf(share.value, [
      ...Object.values(groups).flat(),
      certain(perIdle * terms.idleUncertaintyKgPerS),
    ]);
  }

  function netOf(): ReductionFigure | null {
    if (!terms.suctionIsMetered || run.unit === null) return null;
    const flownKgPerS = baselineKgPerS * dayFactor;
    return figureOf(fuel.fraction - run.unit.kgPerS / flownKgPerS, [
      ...Object.values(fuel.groups).flat(),
      certain(run.unit.standardUncertaintyKgPerS / flownKgPerS),
    ]);
  }
}

function figureOf(fraction: number, components: readonly Component[]): ReductionFigure {
  const standardUncertainty = combinedUncertainty(components);
  const degreesOfFreedom = effectiveDegreesOfFreedom(components);
  const half = Number.isFinite(degreesOfFreedom)
    ? Math.max(
        COVERAGE_FACTOR * standardUncertainty,
        expandedUncertainty({
          standardUncertainty,
          degreesOfFreedom: Math.max(1, degreesOfFreedom),
        }),
      )
    : COVERAGE_FACTOR * standardUncertainty;
  return {
    fraction,
    standardUncertainty,
    interval95: { low: fraction - half, high: fraction + half },
  };
}
