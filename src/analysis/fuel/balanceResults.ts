import type { EpochMs } from '../../record/brand.ts';
import type { Answer } from '../answer.ts';

/** Four ways to say how much fuel is gone. */
export const FUEL_SOURCES = ['flow', 'counters', 'tanks', 'uplift'] as const;
export type FuelSource = (typeof FUEL_SOURCES)[number];

/** Fuel gone between two instants by one source. */
export interface FuelUsed {
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly kg: number;
  readonly standardUncertaintyKg: number;
}

export type NoFuelUsed =
  | 'noFlightSheet'
  | 'noReading'
  | 'oneReading'
  /** Too long without a look: what the flow did meanwhile nobody knows. */
  | 'tooSparse'
  | 'countersNotRead'
  | 'counterWentBack'
  | 'tanksNotRead'
  | 'noUplift'
  /** A volume without a density is no mass. */
  | 'noDensity'
  /** What was uplifted says something only between two looks at the tanks. */
  | 'tanksNotReadAboutUplift'
  | 'unitUnknown';

export type FuelMethod =
  'straightLinesBetweenReadings' | 'lastLessFirst' | 'startLessRest' | 'upliftAndTanks';

export type FuelGate =
  /** What was in the tanks at the start stands in the preflight record or the flight sheet; no gauge was noted. */
  | 'startNotGauged'
  /** A density taken from the preflight record, at another temperature than the fuel that was uplifted. */
  | 'densityAtOtherTemperature';

export type FuelUsedAnswer = Answer<FuelUsed, NoFuelUsed, FuelMethod, FuelGate>;

/** Two sources over the time that both cover. */
export interface FuelPair {
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly oneKg: number;
  readonly otherKg: number;
  /** One less other. */
  readonly differenceKg: number;
  readonly standardUncertaintyKg: number;
  readonly agrees: boolean;
}

export interface ComparedPair {
  readonly one: FuelSource;
  readonly other: FuelSource;
  readonly compared: Answer<FuelPair, 'sourceMissing' | 'noCommonTime', 'overCommonTime', FuelGate>;
}

export type BalanceVerdict =
  | { readonly kind: 'nothingToCompare' }
  | { readonly kind: 'allAgree' }
  /** Two that agree with each other, closely enough to rule out that either is off by the whole difference. */
  | { readonly kind: 'oddOneOut'; readonly odd: FuelSource }
  | { readonly kind: 'nobodyCanTell' };

export interface FuelBalance {
  readonly used: Readonly<Record<FuelSource, FuelUsedAnswer>>;
  readonly pairs: readonly ComparedPair[];
  readonly verdict: BalanceVerdict;
}
