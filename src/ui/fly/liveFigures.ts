import type { ExpectedDrag } from '../../analysis/coverage/expectedResults.ts';
import type { LaminarNow } from '../../analysis/laminar.ts';
import type { LiveEstimate } from '../../analysis/results.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { decimalsFor, figure } from '../kit/number.ts';

const SECONDS_PER_HOUR = 3600;
/** Pound, exact by definition. */
const KG_PER_LB = 0.45359237;

/** A flow in the flight sheet's unit. */
export function flowWords(flowKgPerS: number, sheet: FlightSheet | null): string {
  const pounds = sheet?.massUnit !== 'kg';
  const perHour = (flowKgPerS * SECONDS_PER_HOUR) / (pounds ? KG_PER_LB : 1);
  return `${figure(perHour, 0)}\u00a0${pounds ? 'lb/h' : 'kg/h'}`;
}

/** Gross less the suction's own fuel, as its parts; or why it is not there. */
export type NetParts =
  | { readonly kind: 'notYet' }
  | { readonly kind: 'notMetered' }
  | { readonly kind: 'net'; readonly percent: string; readonly half: string };

export function netParts(estimate: LiveEstimate): NetParts {
  if (estimate.kind !== 'value' && estimate.kind !== 'struck') {
    return { kind: 'notYet' };
  }
  const { net } = estimate;
  if (net === null) {
    return { kind: 'notMetered' };
  }
  const half = ((net.interval95.high - net.interval95.low) / 2) * 100;
  const decimals = Math.min(1, decimalsFor(half));
  return {
    kind: 'net',
    percent: figure(net.fraction * 100, decimals),
    half: figure(half, decimals),
  };
}

/** "90 %" of the area; "90 % of seen" while nobody has called all of it: what was not seen is not turbulent. */
export function laminarWords(laminar: LaminarNow): string {
  if (laminar.kind === 'notYet') {
    return laminar.because === 'notAssessed' ? 'not called' : 'no probes';
  }
  const share = `${figure(laminar.byAreaFraction * 100, 0)}\u00a0%`;
  return laminar.observedFraction > 0.995 ? share : `${share} of seen`;
}

/** Two standard uncertainties: 95 % of a normal distribution. */
const COVERS_95 = 1.96;

/** What the laminar area should take off the drag, with its 95 % interval where its doubt is stated; null without one. */
export function expectedRange(
  expected: ExpectedDrag['expected'] | null,
): { readonly fraction: number; readonly half: number | null } | null {
  if (expected === null || expected.kind === 'noAnswer') {
    return null;
  }
  const { estimateFraction, estimateStandardUncertainty: doubt } = expected.value;
  return { fraction: estimateFraction, half: doubt === null ? null : COVERS_95 * doubt };
}

export function expectedWords(expected: ExpectedDrag['expected'] | null): string | null {
  const range = expectedRange(expected);
  if (range === null) {
    return null;
  }
  const isBound = expected?.kind === 'answer' && expected.how.method === 'upperBound';
  const percent = figure(range.fraction * 100, 0);
  return range.half === null
    ? `${isBound ? 'at most ' : ''}${percent}\u00a0%`
    : `${percent}\u00a0±\u00a0${figure(range.half * 100, 0)}\u00a0%`;
}
