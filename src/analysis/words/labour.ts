import type { BecauseOf } from '../answer.ts';
import type { BaselineDrift } from '../baselineDrift.ts';
import type { ChronicPanel } from '../encounters/chronicPanels.ts';
import type { LabourAnswer, LabourGate, LabourStep, NotFlown } from '../fuel/labourResults.ts';

const NO_LABOUR: Readonly<Record<BecauseOf<LabourAnswer> | NotFlown, string>> = {
  nothingWritten: 'no work was written',
  noHoursGiven: 'no hours were given',
  startNotWritten: 'its start was not written',
  endNotWritten: 'its end was not written',
};

const GATES: Readonly<Record<LabourGate, string>> = {
  hoursMissing: 'some work has no hours: at least so many',
  maybeTwice: 'some work may be counted twice',
};

const NO_NET: Readonly<Record<BecauseOf<NonNullable<LabourStep['next']>['netSaving']>, string>> = {
  noSuctionSpan: 'suction never on',
  noNetSaving: 'no net saving',
};

const NO_RANK: Readonly<Record<BecauseOf<ChronicPanel['rank']>, string>> = {
  noProbe: 'no probe',
  noEligibleFlight: 'no flight counts',
  noLabourStated: 'no hours stated',
  neverTurbulent: 'never turbulent',
};

const NO_DRIFT: Readonly<Record<BecauseOf<BaselineDrift['drift']>, string>> = {
  noFlightSheet: 'no flight sheet',
  noBaselineRun: 'no finished suction-off run',
  isTheFirst: 'the first, which the others are held against',
  otherAircraft: 'another aircraft',
  otherCard: 'another Mach number or height',
};

type DriftGate = Extract<
  BaselineDrift['drift'],
  { readonly kind: 'answer' }
>['how']['broken'][number];
const DRIFT_GATES: Readonly<Record<DriftGate, string>> = {
  outsideFirstWeights: 'beyond the weights of the first flight',
  calibratedBetween: 'gauges calibrated in between',
};

export function noLabourWords(because: keyof typeof NO_LABOUR): string {
  return NO_LABOUR[because];
}

export function labourGateWords(gate: LabourGate): string {
  return GATES[gate];
}

export function noNetSavingWords(because: keyof typeof NO_NET): string {
  return NO_NET[because];
}

export function noRankWords(because: keyof typeof NO_RANK): string {
  return NO_RANK[because];
}

export function noDriftWords(because: keyof typeof NO_DRIFT): string {
  return NO_DRIFT[because];
}

export function driftGateWords(gate: DriftGate): string {
  return DRIFT_GATES[gate];
}
