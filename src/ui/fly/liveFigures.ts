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
