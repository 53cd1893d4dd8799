import type { EpochMs } from '../../record/brand.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import type { FlightSheet } from '../../record/sheet.ts';

/** Where the entry's own time stands in for the touch: back-dated, or written long after. */
function statedTime(standing: StandingEntry): EpochMs | null {
  const { effective } = standing;
  return effective.kind === 'unrecognised' ? null : (effective.body.at ?? null);
}

export const isBackDated = (standing: StandingEntry): boolean => {
  const stated = statedTime(standing);
  return stated !== null && stated !== standing.entry.wall;
};

/** One standard uncertainty of the time, in seconds: as written, else what the flight sheet says of such an entry. */
export function doubtOf(standing: StandingEntry, sheet: FlightSheet | null): number | null {
  const { effective } = standing;
  if (effective.kind !== 'unrecognised' && effective.body.doubtS !== undefined) {
    return effective.body.doubtS;
  }
  if (sheet === null) {
    return null;
  }
  if (standing.late) {
    return sheet.timeDoubts.lateS;
  }
  const isReading = effective.kind === 'fuelRead' || effective.kind === 'airDataRead';
  return isReading ? sheet.timeDoubts.readingS : sheet.timeDoubts.touchS;
}

export function isQueried(standing: StandingEntry): boolean {
  const { effective } = standing;
  if (effective.kind === 'unrecognised') {
    return false;
  }
  return (effective.body.readings ?? []).some(
    (reading) => 'value' in reading && reading.queried !== undefined,
  );
}

/** Counts in no number and no lane of the standing record; the audit alone shows it. */
export const isStruck = (standing: StandingEntry): boolean =>
  standing.standing === 'withdrawn' || standing.standing === 'dropped';

/** Words that stand beside an entry wherever it is listed. */
export function marksBeside(standing: StandingEntry): readonly string[] {
  const words: string[] = [];
  if (standing.standing === 'withdrawn') {
    words.push('Withdrawn');
  }
  if (standing.standing === 'dropped') {
    words.push('Dropped');
  }
  if (standing.standing === 'unconfirmed') {
    words.push('Unconfirmed');
  }
  if (isQueried(standing)) {
    words.push('Queried');
  }
  if (standing.late) {
    words.push('Late');
  } else if (isBackDated(standing)) {
    words.push('Back-dated');
  }
  if (standing.amendedBy.length > 0) {
    words.push('Amended');
  }
  if (standing.conflicts.length > 0) {
    words.push('Amendments disagree');
  }
  return words;
}
