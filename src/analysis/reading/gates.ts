import type { Glance } from '../../record/flightState.ts';
import type { ReducedReading } from '../reduceReading.ts';
import type { Gate, LeftOut } from '../results.ts';
import type { Context } from './context.ts';
import { engineDisagrees, engineOutOfProportion } from './engineShares.ts';
import type { SheetTerms } from './sheetTerms.ts';

/** Flow and boundary layer settle this long after a suction command (a choice of the live method). */
const SUCTION_SETTLES_S = 120;
/** The aircraft settles this long after suction or throttle, unless somebody called it on condition. */
const AIRCRAFT_SETTLES_S = 300;

/** In the order in which a broken gate is named. */
export const LIVE_GATES = [
  'machDrift',
  'climb',
  'mach',
  'altitude',
  'turn',
  'moisture',
  'suctionChanging',
  'notOnCondition',
  'engineDisagrees',
  'noAirData',
  'amendmentsDisagree',
  'energyCorrectionTooLarge',
] as const satisfies readonly Gate[];

/** Gates that this reading breaks by what is known now; none means the number stands. */
export function brokenLive(
  { state, terms }: Context,
  glance: Glance,
  reading: ReducedReading,
): readonly Gate[] {
  const broken = new Set<Gate>(brokenByAir(terms, reading));
  const { circumstances } = glance;
  if (circumstances.turnSince !== null) broken.add('turn');
  if (circumstances.moistureSince !== null) broken.add('moisture');
  if (secondsSince(glance, circumstances.lastSuctionChangeAt) < SUCTION_SETTLES_S) {
    broken.add('suctionChanging');
  }
  if (notOnCondition(glance)) broken.add('notOnCondition');
  if (engineDisagrees(state, terms, reading.glance, reading.flow)) broken.add('engineDisagrees');
  if (glance.amendmentsDisagree) broken.add('amendmentsDisagree');
  return LIVE_GATES.filter((gate) => broken.has(gate));
}

/** Reasons to leave a reading out of its run's mean after landing. */
export function leftOut(
  { terms }: Context,
  glance: Glance,
  reading: ReducedReading,
  onConditionLaterInRun: boolean,
): readonly LeftOut[] {
  const broken: LeftOut[] = [...brokenByAir(terms, reading)];
  if (glance.circumstances.turnSince !== null) broken.push('turn');
  if (glance.circumstances.moistureSince !== null) broken.push('moisture');
  if (onConditionLaterInRun) broken.push('beforeOnCondition');
  if (engineOutOfProportion(reading.flow)) broken.push('engineDisagrees');
  if (glance.amendmentsDisagree) broken.push('amendmentsDisagree');
  return broken;
}

/** Nobody has called the aircraft on condition since it was last upset, or ever. */
export function onConditionCalled(glance: Glance): boolean {
  const { conditionReachedAt, lastUpsetAt } = glance.circumstances;
  if (conditionReachedAt === null) return false;
  return lastUpsetAt === null || conditionReachedAt >= lastUpsetAt;
}

function brokenByAir(terms: SheetTerms, reading: ReducedReading): readonly Gate[] {
  const { air } = reading;
  const broken: Gate[] = [
    ...outsideCard(terms, {
      mach: air.mach.value,
      pressureAltitudeM: air.pressureAltitude.value,
      machRatePerS: air.machRate.value,
      altitudeRateMPerS: air.altitudeRate.value,
    }),
  ];
  if (Object.values(air).some(({ from }) => from === 'stale')) broken.push('noAirData');
  if (reading.energyTooLarge) broken.push('energyCorrectionTooLarge');
  return broken;
}

/** What lies outside the card's tolerances; a field that was not read, null, is not judged. */
export function outsideCard(
  { tolerances, cardMach, cardAir }: SheetTerms,
  air: {
    readonly mach: number | null;
    readonly pressureAltitudeM: number | null;
    readonly machRatePerS: number | null;
    readonly altitudeRateMPerS: number | null;
  },
): readonly Gate[] {
  const { mach, pressureAltitudeM, machRatePerS, altitudeRateMPerS } = air;
  const broken: Gate[] = [];
  if (machRatePerS !== null && beyond(machRatePerS, tolerances.machRatePerS)) {
    broken.push('machDrift');
  }
  if (altitudeRateMPerS !== null && beyond(altitudeRateMPerS, tolerances.climbMPerS)) {
    broken.push('climb');
  }
  if (mach !== null && beyond(mach - cardMach, tolerances.mach)) broken.push('mach');
  if (
    pressureAltitudeM !== null &&
    beyond(pressureAltitudeM - cardAir.pressureAltitudeM, tolerances.altitudeM)
  ) {
    broken.push('altitude');
  }
  return broken;
}

/** At the limit is inside it; display values such as 0.725 less 0.720 carry rounding of their own. */
function beyond(value: number, limit: number): boolean {
  return Math.abs(value) > limit * (1 + 1e-9) + 1e-12;
}

function notOnCondition(glance: Glance): boolean {
  const since = secondsSince(glance, glance.circumstances.lastUpsetAt);
  return since < AIRCRAFT_SETTLES_S && !onConditionCalled(glance);
}

function secondsSince(glance: Glance, at: number | null): number {
  return at === null ? Infinity : (glance.at - at) / 1000;
}
