import { BASELINE_LIMITS } from '../../aero/baselineGates.ts';
import type { EpochMs } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import type { Along } from './along.ts';
import type { Burnt } from './counters.ts';
import { cornersWithin } from './lines.ts';
import type { SpanGate } from './spanResults.ts';
import type { SuctionOn } from './suctionOn.ts';
import type { TurbulentFuel } from './turbulentFuel.ts';

/** Counters further apart than this say little about the moment between them (a choice). */
const FARTHEST_COUNTERS_S = 1800;

/** What strikes a span: the number stays, the gate is named. */
export function spanGates({
  state,
  along,
  stretch,
  to,
  burnt,
  turbulent,
  cardAltitudeM,
}: {
  readonly state: FlightState;
  readonly along: Along;
  readonly stretch: SuctionOn;
  readonly to: EpochMs;
  readonly burnt: Burnt;
  readonly turbulent: TurbulentFuel;
  readonly cardAltitudeM: number;
}): readonly SpanGate[] {
  const broken: SpanGate[] = [];
  const from = stretch.on.at;
  const { inUse } = turbulent;
  if (turbulent.broken.includes('outsideBaseline')) broken.push('outsideBaseline');
  if (inUse.means.length === 1 && inUse.borrowedFrom === null) broken.push('oneBaselineRun');
  if (stretch.off === null) broken.push('notTurnedOff');
  const { levelOff, topOfDescent } = state.milestones;
  const early = levelOff !== undefined && from < levelOff.at;
  const late = topOfDescent !== undefined && topOfDescent.at > from && to > topOfDescent.at;
  if (early || late) broken.push('notLevel');
  if (burnt.longestGapS > FARTHEST_COUNTERS_S) broken.push('countersFarApart');
  const isFar = cornersWithin(along.corners, from, to).some(
    (at) =>
      Math.abs(along.air(at).pressureAltitudeM - cardAltitudeM) >
      BASELINE_LIMITS.altitudeDifferenceM,
  );
  if (isFar) broken.push('farFromCardHeight');
  if (!along.wasAirRead) broken.push('noAirData');
  return broken;
}
