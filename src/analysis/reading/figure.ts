import type { Component } from '../../aero/statistics/uncertainty.ts';
import { combinedUncertainty } from '../../aero/statistics/uncertainty.ts';
import type {
  DragBy,
  FlowFigure,
  MadeOf,
  NoDrag,
  Provisional,
  ReductionFigure,
  Savings,
} from '../results.ts';
import {
  allOf,
  baselineAtRun,
  doubtsOf,
  withInterval,
  type BaselineAtRun,
  type BaselineInUse,
  type Sensitivities,
} from './doubts.ts';
import { dragShare } from './drag.ts';
import { certain, type RunMean } from './runMean.ts';
import type { SheetTerms } from './sheetTerms.ts';
import { slopeInBaseline } from './slopeInBaseline.ts';

export interface Reduction {
  /** What the engines burnt less: gross with a suction unit of its own, net where the engines drive it. */
  readonly fuel: ReductionFigure;
  readonly drag: ReductionFigure | { readonly because: NoDrag };
  readonly dragBy: DragBy | null;
  /** Less the suction unit's own fuel; null where it has no metered flow, or where fuel is net already. */
  readonly net: ReductionFigure | null;
  readonly savings: Savings;
  readonly at: BaselineAtRun;
  readonly baselineKgPerS: number;
  /** From the card's temperature to the one flown: multiplies flows at the card. */
  readonly dayFactor: number;
  readonly parts: MadeOf['uncertaintyParts'];
  readonly provisional: readonly Provisional[];
}

/**
 * What a mean says against a baseline; negative where more was burnt.
 *
 * @returns null where the baseline leaves no flow to compare with
 */
export function reductionOf(
  terms: SheetTerms,
  run: RunMean,
  inUse: BaselineInUse,
): Reduction | null {
  const at = baselineAtRun(run, inUse);
  if (at === null) return null;
  const baselineKgPerS = at.value.fuelFlowKgPerS;
  const moved = { run, inUse, at, terms };
  const fuelMoves: Sensitivities = {
    perFlow: -1 / baselineKgPerS,
    perBaseline: run.flowAtCardKgPerS / baselineKgPerS ** 2,
  };
  const fuelDoubts = doubtsOf(moved, fuelMoves);
  const fraction = 1 - run.flowAtCardKgPerS / baselineKgPerS;
  const dayFactor = Math.sqrt(run.temperatureK / terms.cardAir.temperatureK);
  const slope = terms.drag?.kind === 'polar' ? slopeInBaseline(terms, inUse.baseline.runs) : null;
  const share = dragShare(terms, run, baselineKgPerS, slope);
  return {
    fuel: figureOf(fraction, allOf(fuelDoubts)),
    drag:
      share.kind === 'share'
        ? figureOf(share.fraction, [...allOf(doubtsOf(moved, share)), ...share.own])
        : { because: share.because },
    dragBy: share.kind === 'share' ? share.by : null,
    net: netOf(),
    savings: savingsOf(),
    at,
    baselineKgPerS,
    dayFactor,
    parts: {
      run: combinedUncertainty(fuelDoubts.run),
      baseline: combinedUncertainty(fuelDoubts.baseline),
      calibration: combinedUncertainty(fuelDoubts.calibration),
      weight: combinedUncertainty(fuelDoubts.weight),
    },
    provisional: dragDoubts(terms, share),
  };

  function netOf(): ReductionFigure | null {
    if (!terms.suctionIsMetered || run.unit === null) return null;
    const flownKgPerS = baselineKgPerS * dayFactor;
    return figureOf(fraction - run.unit.kgPerS / flownKgPerS, [
      ...allOf(fuelDoubts),
      certain(run.unit.standardUncertaintyKgPerS / flownKgPerS),
    ]);
  }

  function savingsOf(): Savings {
    const { suctionCost } = terms;
    const savedKgPerS = (baselineKgPerS - run.flowAtCardKgPerS) * dayFactor;
    const flowFlown = run.flowAtCardKgPerS * dayFactor;
    const savedAs = (perFlow: number): readonly Component[] =>
      allOf(doubtsOf(moved, { perFlow: perFlow * dayFactor, perBaseline: dayFactor }));
    const saved = flowFigure(savedKgPerS, savedAs(-1));
    switch (suctionCost.kind) {
      case 'ownFuel': {
        const { unit } = run;
        if (unit === null) {
          return { gross: saved, suction: null, net: { because: 'unitFuelNotRead' } };
        }
        const own = certain(unit.standardUncertaintyKgPerS);
        return {
          gross: saved,
          suction: flowFigure(unit.kgPerS, [own]),
          net: flowFigure(savedKgPerS - unit.kgPerS, [...savedAs(-1), own]),
        };
      }
      case 'bleed': {
        // F = (1 + share) x the flow without bleed: the engines' saving is net, and gross has the cost added back once.
        const { share: part, standardUncertainty } = suctionCost;
        const costKgPerS = (flowFlown * part) / (1 + part);
        const own = certain((flowFlown * standardUncertainty) / (1 + part) ** 2);
        return {
          gross: flowFigure(savedKgPerS + costKgPerS, [...savedAs(-1 / (1 + part)), own]),
          suction: flowFigure(costKgPerS, [own]),
          net: saved,
        };
      }
      case 'unmeasured':
        return { gross: { because: suctionCost.because }, suction: null, net: saved };
    }
  }
}

function dragDoubts(
  { drag, liftToDragVouched }: SheetTerms,
  share: ReturnType<typeof dragShare>,
): readonly Provisional[] {
  if (share.kind === 'noDrag') {
    if (share.because !== 'outsideEngineMap') return [];
    return liftToDragVouched ? ['outsideEngineMap'] : ['outsideEngineMap', 'noLiftToDrag'];
  }
  return drag?.kind === 'polar' ? ['dragSlopeOfBaseline'] : [];
}

function figureOf(fraction: number, components: readonly Component[]): ReductionFigure {
  return { fraction, ...withInterval(fraction, components) };
}

function flowFigure(kgPerS: number, components: readonly Component[]): FlowFigure {
  const { standardUncertainty, interval95 } = withInterval(kgPerS, components);
  return {
    kgPerS,
    standardUncertaintyKgPerS: standardUncertainty,
    interval95KgPerS: interval95,
  };
}
