import { ready, requireFinite, requireNotNegative, unavailable, type Outcome } from './outcome.ts';

/** Share an intermittent area counts as laminar (a convention). */
export const INTERMITTENT_SHARE = 0.5;

/** How much of the coverage estimate itself is in doubt when the two are held together (a product choice). */
export const COVERAGE_DOUBT_FRACTION = 0.3;

export type FlowState = 'laminar' | 'intermittent' | 'turbulent';

/**
 * Share of the area that is laminar. An area share is not a drag share.
 *
 * @returns `noArea` when there is nothing to weigh
 * @throws RangeError for a negative area
 */
export function laminarAreaFraction(
  areas: readonly { readonly areaM2: number; readonly state: FlowState }[],
): Outcome<number, 'noArea'> {
  let total = 0;
  let laminar = 0;
  for (const { areaM2, state } of areas) {
    requireNotNegative('area', areaM2);
    total += areaM2;
    laminar += areaM2 * LAMINAR_SHARE[state];
  }
  return total === 0 ? unavailable('noArea') : ready(laminar / total);
}

/**
 * Most drag the laminar area could remove, φ f (1 − Cf_L/Cf_T).
 *
 * @param treatedShare φ, the share of total drag that is friction and form drag of the treated surfaces
 *   when turbulent. It belongs to one aircraft: there is no default
 * @throws RangeError for a share or ratio outside 0 to 1
 */
export function coverageDragReduction({
  laminarFraction,
  coefficientRatio,
  treatedShare,
}: {
  readonly laminarFraction: number;
  readonly coefficientRatio: number;
  readonly treatedShare: number;
}): number {
  requireShare('laminar fraction', laminarFraction);
  requireShare('friction coefficient ratio', coefficientRatio);
  requireShare('treated share', treatedShare);
  return treatedShare * laminarFraction * (1 - coefficientRatio);
}

/** Whether what the fuel says and what the coverage says can both be true. */
export function coverageVerdict({
  dragReductionFraction,
  expanded95,
  coverageEstimate,
}: {
  readonly dragReductionFraction: number;
  readonly expanded95: number;
  readonly coverageEstimate: number;
}): 'consistent' | 'differs' {
  requireFinite('drag reduction', dragReductionFraction);
  requireNotNegative('expanded uncertainty', expanded95);
  requireFinite('coverage estimate', coverageEstimate);
  const allowed = expanded95 + COVERAGE_DOUBT_FRACTION * Math.abs(coverageEstimate);
  return Math.abs(dragReductionFraction - coverageEstimate) < allowed ? 'consistent' : 'differs';
}

const LAMINAR_SHARE: Record<FlowState, number> = {
  laminar: 1,
  intermittent: INTERMITTENT_SHARE,
  turbulent: 0,
};

function requireShare(name: string, share: number): void {
  if (!(share >= 0 && share <= 1)) throw new RangeError(`${name} must be 0 to 1, got ${share}`);
}
