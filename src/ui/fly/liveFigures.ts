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

/** "23.1 ± 1.9", in per cent. */
function plusMinus(fraction: number, low: number, high: number): string {
  const half = ((high - low) / 2) * 100;
  const decimals = Math.min(1, decimalsFor(half));
  return `${figure(fraction * 100, decimals)}\u00a0±\u00a0${figure(half, decimals)}`;
}

export function netWords(estimate: LiveEstimate): string {
  if (estimate.kind !== 'value' && estimate.kind !== 'struck') {
    return 'not yet';
  }
  const { net } = estimate;
  return net === null
    ? 'suction fuel not metered'
    : `${plusMinus(net.fraction, net.interval95.low, net.interval95.high)}\u00a0%`;
}

export function laminarWords(laminar: LaminarNow): string {
  if (laminar.kind === 'notYet') {
    return laminar.because === 'notAssessed' ? 'not assessed' : 'no probes';
  }
  const share = `${figure(laminar.byAreaFraction * 100, 0)}\u00a0%`;
  return laminar.observedFraction > 0.995
    ? `${share} of area`
    : `${share} of ${figure(laminar.observedFraction * 100, 0)}\u00a0% seen`;
}
