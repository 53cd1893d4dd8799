import type { FlightView } from '../record/flight.ts';
import { baselineDrift, type BaselineDrift } from './baselineDrift.ts';
import { chronicPanels, type ChronicPanels } from './encounters/chronicPanels.ts';
import { recoveryTimes, type RecoveryTimes } from './encounters/recovery.ts';
import { labourAcross } from './fuel/labourAcross.ts';
import type { LabourStep } from './fuel/labourResults.ts';
import { matchedReductions, type MatchedReduction } from './matchedReduction.ts';

/** What shows only when flights lie side by side; the same in whatever order they are named. */
export interface AcrossFlights {
  readonly chronic: ChronicPanels;
  readonly recovery: RecoveryTimes;
  readonly labour: readonly LabourStep[];
  readonly baselineDrift: readonly BaselineDrift[];
  readonly matchedReduction: readonly MatchedReduction[];
}

export function acrossFlights(views: readonly FlightView[]): AcrossFlights {
  return {
    chronic: chronicPanels(views),
    recovery: recoveryTimes(views),
    labour: labourAcross(views),
    baselineDrift: baselineDrift(views),
    matchedReduction: matchedReductions(views),
  };
}
