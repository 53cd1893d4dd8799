import type { PointResult, ReductionFigure } from '../../../analysis/results.ts';
import { figure } from '../../kit/number.ts';
import { flowIn, missingWords } from '../resultWords.ts';

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

const STATES: Readonly<Record<PointResult['state'], string>> = {
  open: 'open',
  complete: 'complete',
  interrupted: 'interrupted',
  terminated: 'terminated',
};
export const stateWords = (point: PointResult): string => STATES[point.state];

export function flowWords(unit: 'lb/h' | 'kg/h', flowKgPerS: number | null): string {
  return flowKgPerS === null ? 'not metered' : figure(flowIn(unit, flowKgPerS), 0);
}
