import { dragReductionFromSlope } from '../../aero/engineMap.ts';
import { dragReductionOnMap } from '../../aero/thrustMap.ts';
import type { Component } from '../../aero/statistics/uncertainty.ts';
import type { DragBy, NoDrag } from '../results.ts';
import type { Sensitivities } from './doubts.ts';
import { certain, type RunMean } from './runMean.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** A share of drag removed, how it moves with the two flows, and the doubts that the method itself brings. */
export type DragShare =
  | (Sensitivities & {
      readonly kind: 'share';
      readonly by: DragBy;
      readonly fraction: number;
      readonly own: readonly Component[];
    })
  | { readonly kind: 'noDrag'; readonly because: NoDrag };

/** @param slopeOfBaseline what the suction-off runs say of consumption against thrust, where they were asked */
export function dragShare(
  terms: SheetTerms,
  run: RunMean,
  baselineKgPerS: number,
  slopeOfBaseline: { readonly slope: number; readonly standardUncertainty: number } | null,
): DragShare {
  const { suctionCost, drag } = terms;
  if (suctionCost.kind === 'unmeasured') return { kind: 'noDrag', because: suctionCost.because };
  if (drag === null) return { kind: 'noDrag', because: 'noEngineMap' };
  // Bleed is paid in the engines' flow; thrust follows from what they would have burnt without it.
  const share = suctionCost.kind === 'bleed' ? suctionCost.share : 0;
  const flowKgPerS = run.flowAtCardKgPerS / (1 + share);
  const found = shareOf(drag, flowKgPerS, baselineKgPerS, slopeOfBaseline);
  if (found.kind === 'noDrag' || suctionCost.kind !== 'bleed') return found;
  const perShare = (found.perFlow * flowKgPerS) / (1 + share);
  return {
    ...found,
    perFlow: found.perFlow / (1 + share),
    own: [...found.own, certain(Math.abs(perShare) * suctionCost.standardUncertainty)],
  };
}

function shareOf(
  drag: NonNullable<SheetTerms['drag']>,
  flowKgPerS: number,
  baselineKgPerS: number,
  slopeOfBaseline: { readonly slope: number; readonly standardUncertainty: number } | null,
): DragShare {
  switch (drag.kind) {
    case 'map': {
      // A reading gone wrong may leave no flow once it is brought to level flight.
      if (!(flowKgPerS > 0)) return { kind: 'noDrag', because: 'outsideEngineMap' };
      const found = dragReductionOnMap({
        map: drag.map,
        fuelFlowKgPerS: flowKgPerS,
        baselineFuelFlowKgPerS: baselineKgPerS,
      });
      if (found.kind === 'unavailable') return { kind: 'noDrag', because: 'outsideEngineMap' };
      return {
        kind: 'share',
        by: drag.by,
        fraction: found.value.dragReductionFraction,
        perFlow: found.value.perFuelFlow,
        perBaseline: found.value.perBaselineFuelFlow,
        own: [certain(Math.abs(found.value.perMapFlow) * drag.flowUncertaintyKgPerS)],
      };
    }
    case 'slope':
      return bySlope(drag, drag.by, flowKgPerS, baselineKgPerS);
    case 'polar':
      return slopeOfBaseline === null
        ? { kind: 'noDrag', because: 'noSlopeInBaseline' }
        : bySlope(slopeOfBaseline, drag.by, flowKgPerS, baselineKgPerS);
  }
}

function bySlope(
  { slope, standardUncertainty }: { readonly slope: number; readonly standardUncertainty: number },
  by: DragBy,
  flowKgPerS: number,
  baselineKgPerS: number,
): DragShare {
  const left = flowKgPerS / baselineKgPerS;
  const found =
    left > 0 ? dragReductionFromSlope({ fuelReductionFraction: 1 - left, slope }) : null;
  if (found?.kind !== 'ready') return { kind: 'noDrag', because: 'noSlopeInBaseline' };
  const { dragReductionFraction, perFuelReduction, perSlope } = found.value;
  return {
    kind: 'share',
    by,
    fraction: dragReductionFraction,
    perFlow: -perFuelReduction / baselineKgPerS,
    perBaseline: (perFuelReduction * left) / baselineKgPerS,
    own: [certain(Math.abs(perSlope) * standardUncertainty)],
  };
}
