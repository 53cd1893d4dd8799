import type { PointResult, ReductionFigure } from '../../../analysis/results.ts';
import { flowIn, type FlowUnit } from '../../../analysis/sheetUnits.ts';
import { missingWords } from '../../../analysis/words/reasons.ts';
import { figure } from '../../kit/number.ts';

/** "26.9 ± 1.7": per cent with half of its 95 % interval. */
export function reductionWords({ fraction, interval95 }: ReductionFigure): string {
  return `${figure(100 * fraction, 1)} ± ${figure(50 * (interval95.high - interval95.low), 1)}`;
}

/** What stands where a number would be; null where there is one. */
export function inPlaceWords(point: PointResult): string | null {
  const { result } = point;
  switch (result.kind) {
    case 'none':
      return point.state === 'open'
        ? `open, ${missingWords(result.because)}`
        : missingWords(result.because);
    case 'baseline':
      return 'baseline';
    case 'valid':
    case 'indicative':
      return null;
  }
}

export function flowWords(unit: FlowUnit, flowKgPerS: number | null): string {
  return flowKgPerS === null ? 'not metered' : figure(flowIn(unit, flowKgPerS), 0);
}
