import type { BecauseOf } from '../answer.ts';
import type { FuelForgoneAnswer } from '../encounters/fuelForgone.ts';
import type { NoLoss } from '../encounters/lossLags.ts';
import type { LostAreaAnswer, LostGate, LostTimeAnswer } from '../encounters/lostTime.ts';
import type { NoRecovery } from '../encounters/recoveryLags.ts';
import type { WatchEnd } from '../encounters/watch.ts';
import type { LagGate } from '../encounters/wingInMoisture.ts';
import type { LaminarCount } from '../encounters/wingLooks.ts';

const WATCH_ENDS: Readonly<Record<WatchEnd, string>> = {
  moistureOver: 'moisture long over',
  reentry: 'moisture again',
  suctionChange: 'suction moved',
  byCommand: 'lost by command',
  descent: 'descent',
  landing: 'landing',
  endOfRecord: 'end of the record',
};

const NO_LOSS: Readonly<Record<Exclude<NoLoss, WatchEnd>, string>> = {
  notAssessedAtEntry: 'not called before entry',
  suctionOff: 'suction off',
  turbulentAtEntry: 'turbulent already at entry',
};

const NO_RECOVERY: Readonly<Record<Exclude<NoRecovery, WatchEnd>, string>> = {
  nothingLost: 'nothing lost',
  moistureStillOpen: 'moisture never closed',
  backBeforeExit: 'back before exit',
  noCountBefore: 'no count before the loss',
};

const LAG_GATES: Readonly<Record<LagGate, string>> = {
  readingIsABound: 'found in a probe reading: then or before',
  lostBeforeEntryWithinDoubt: 'called before entry, within doubt',
};

const LOST_GATES: Readonly<Record<LostGate, string>> = {
  ...LAG_GATES,
  notRecovered: 'not whole again when watching ended: at least so long',
};

const NOTHING_LOST: Readonly<
  Record<
    BecauseOf<LostTimeAnswer> | BecauseOf<LostAreaAnswer> | BecauseOf<FuelForgoneAnswer>,
    string
  >
> = {
  nothingLost: 'nothing lost',
  notAssessed: 'flow not called',
  suctionOff: 'suction off',
  notLaminarBefore: 'nothing laminar before',
  noRunAtThisSetting: 'no finished point at this setting',
};

/** Why there is no time to loss. A wing that was watched kept its flow until then. */
export function noLossWords(because: NoLoss): string {
  return because in WATCH_ENDS
    ? `kept until ${{ ...WATCH_ENDS, ...NO_LOSS }[because]}`
    : { ...WATCH_ENDS, ...NO_LOSS }[because];
}

export function noRecoveryWords(because: NoRecovery): string {
  return because in WATCH_ENDS
    ? `not back by ${{ ...WATCH_ENDS, ...NO_RECOVERY }[because]}`
    : { ...WATCH_ENDS, ...NO_RECOVERY }[because];
}

export function lostGateWords(gate: LostGate): string {
  return LOST_GATES[gate];
}

export function nothingLostWords(because: keyof typeof NOTHING_LOST): string {
  return NOTHING_LOST[because];
}

/** `22 of 24`, or `4 of 6 panels`. */
export function countWords({ as, laminar, of }: LaminarCount): string {
  return as === 'probes' ? `${laminar} of ${of}` : `${laminar} of ${of} panels`;
}
