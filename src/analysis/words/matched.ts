import type { NoMatch } from '../matchedReduction.ts';

const NO_MATCH: Readonly<Record<NoMatch, string>> = {
  noFlightSheet: 'no flight sheet',
  otherAircraft: 'another aircraft',
  otherCard: 'another Mach number or height',
  noNominalPoint: 'no valid point at that setting',
  otherWeight: 'no point near that weight',
};

/** Why a flight has no reduction to set beside the others. */
export function noMatchWords(because: NoMatch): string {
  return NO_MATCH[because];
}
