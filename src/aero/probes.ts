import type { FlowState } from './laminarArea.ts';
import { requireFinite, requireNotNegative, requirePositive } from './outcome.ts';

/*
 * Trailing-edge total-pressure probe at a small fixed height: a thick turbulent layer covers it, a thin
 * laminar one does not. Check values: test/reference/probes.json
 */

/**
 * Below what total-pressure deficit the layer is called laminar. The flight sheet chooses; a fixed
 * pressure is twice as strict, relative to q, at 25 000 ft as at 40 000 ft. Within `deadBand` either side
 * of the limit the layer is called intermittent.
 */
export type LaminarLimit =
  | { readonly kind: 'pressure'; readonly limitPa: number; readonly deadBandPa: number }
  | { readonly kind: 'fractionOfDynamic'; readonly limit: number; readonly deadBand: number };

interface Fractions {
  /** Δ/q; left out where there is no air data. */
  readonly fractionOfDynamic?: number;
  /** Δ/qc; left out where there is no air data. */
  readonly fractionOfImpact?: number;
}

export type ProbeVerdict =
  | (Fractions & { readonly kind: FlowState })
  | (Fractions & {
      readonly kind: 'suspect';
      /** A deficit below zero beyond the gauge's error, or above what the pitot itself sees. */
      readonly because: 'leakOrOffset' | 'blocked';
    })
  /** The limit is a share of q and there is no air data. */
  | { readonly kind: 'unavailable'; readonly because: 'noDynamicPressure' };

/** Dynamic and impact pressure at the moment of the reading. */
export interface StreamPressures {
  readonly dynamicPressurePa: number;
  readonly impactPressurePa: number;
}

/**
 * What a probe says of the layer over it.
 *
 * @param deficitPa free-stream total pressure less the probe's, pascals; may be negative
 * @param gaugeErrorPa how far below zero a sound gauge may read
 * @throws RangeError when a number is not finite, a limit or error negative, or a pressure not above zero
 */
export function judgeProbe({
  deficitPa,
  stream,
  gaugeErrorPa,
  laminarBelow,
}: {
  readonly deficitPa: number;
  readonly stream: StreamPressures | undefined;
  readonly gaugeErrorPa: number;
  readonly laminarBelow: LaminarLimit;
}): ProbeVerdict {
  requireFinite('total-pressure deficit', deficitPa);
  requireNotNegative('gauge error', gaugeErrorPa);
  const fractions = stream === undefined ? {} : fractionsOf(deficitPa, stream);
  if (deficitPa < -gaugeErrorPa) return { kind: 'suspect', because: 'leakOrOffset', ...fractions };
  if (fractions.fractionOfImpact !== undefined && fractions.fractionOfImpact > 1) {
    return { kind: 'suspect', because: 'blocked', ...fractions };
  }
  if (laminarBelow.kind === 'pressure') {
    const { limitPa, deadBandPa } = laminarBelow;
    return { kind: stateOf(deficitPa, limitPa, deadBandPa), ...fractions };
  }
  if (fractions.fractionOfDynamic === undefined) {
    return { kind: 'unavailable', because: 'noDynamicPressure' };
  }
  const { limit, deadBand } = laminarBelow;
  return { kind: stateOf(fractions.fractionOfDynamic, limit, deadBand), ...fractions };
}

function fractionsOf(deficitPa: number, stream: StreamPressures): Fractions {
  requirePositive('dynamic pressure', stream.dynamicPressurePa);
  requirePositive('impact pressure', stream.impactPressurePa);
  return {
    fractionOfDynamic: deficitPa / stream.dynamicPressurePa,
    fractionOfImpact: deficitPa / stream.impactPressurePa,
  };
}

function stateOf(value: number, limit: number, deadBand: number): FlowState {
  requireNotNegative('laminar limit', limit);
  requireNotNegative('dead band', deadBand);
  if (value < limit - deadBand) return 'laminar';
  // Without a dead band the limit itself is turbulent: laminar is what lies below it.
  return value >= limit + deadBand ? 'turbulent' : 'intermittent';
}
