import type { BaselineRun } from '../../aero/baseline.ts';
import { tsfcSlopeFromBaseline } from '../../aero/tsfcSlope.ts';
import { SEA_LEVEL_PRESSURE_PA, HEAT_CAPACITY_RATIO } from '../../aero/atmosphere.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** A slope less sure than this share of 1 + s says nothing about drag (a choice). */
const WIDEST_DOUBT = 0.5;

/**
 * How specific consumption goes with thrust, from the suction-off runs and the polar of the flight sheet.
 *
 * @returns null where the runs do not tell: one weight, or doubts as large as what they should show
 */
export function slopeInBaseline(
  { drag, cardAir, cardMach }: SheetTerms,
  runs: readonly BaselineRun[],
): { readonly slope: number; readonly standardUncertainty: number } | null {
  if (drag?.kind !== 'polar') return null;
  const dynamicPressurePa =
    (HEAT_CAPACITY_RATIO / 2) * cardAir.pressureRatio * SEA_LEVEL_PRESSURE_PA * cardMach ** 2;
  const found = tsfcSlopeFromBaseline({
    runs,
    polar: {
      dynamicPressurePa,
      wingAreaM2: drag.wingAreaM2,
      zeroLiftCoefficient: drag.zeroLiftDrag,
      liftFactor: drag.liftFactor,
      liftShareRelativeUncertainty: drag.liftShareUncertainty,
    },
    trust: 'absolute',
  });
  if (found.kind === 'unavailable') return null;
  const { slope, standardUncertainty } = found.value;
  return standardUncertainty > WIDEST_DOUBT * (1 + slope) ? null : { slope, standardUncertainty };
}
