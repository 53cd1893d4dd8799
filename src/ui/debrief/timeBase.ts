import { epochMs, type EpochMs, type RecorderId } from '../../record/brand.ts';
import { clockFits, masterTimeOf, type ClockFit } from '../../analysis/clocks.ts';
import type { FlightState } from '../../record/flightState.ts';

/** Times as shown: moved from each tablet's clock to the aircraft time base where a time hack allows it. */
export interface TimeBase {
  readonly fits: readonly ClockFit[];
  readonly shown: (at: EpochMs, rec: RecorderId) => EpochMs;
  /** The tablet's own time of an instant typed on the aircraft time base. */
  readonly raw: (shown: EpochMs, rec: RecorderId | null) => EpochMs;
}

export function timeBaseOf(state: FlightState): TimeBase {
  const fits = clockFits(state);
  const shown = (at: EpochMs, rec: RecorderId): EpochMs => masterTimeOf(fits, rec, at);
  return {
    fits,
    shown,
    raw: (typed, rec) => {
      if (rec === null) {
        return typed;
      }
      // The offset changes by parts in a million, so one step back from the first guess is exact to the millisecond.
      const guess = epochMs(typed + (typed - shown(typed, rec)));
      return epochMs(guess + (typed - shown(guess, rec)));
    },
  };
}
