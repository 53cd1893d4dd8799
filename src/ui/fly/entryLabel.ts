import { entryWords } from '../../record/lang.ts';
import type { KnownKind } from '../../record/kinds.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import type { FlightSheet } from '../../record/sheet.ts';

/** What an entry says now, in a few words. */
export function entryLabel(standing: StandingEntry, sheet: FlightSheet | null): string {
  return entryWords(standing.effective, sheet);
}

const NOT_EVENTS: ReadonlySet<KnownKind> = new Set<KnownKind>([
  'deviceNoted',
  'phaseChosen',
  'reminderAnswered',
  'unconfirmedSettled',
  'entryAmended',
  'headWitnessed',
]);

/** Whether the short list of last entries shows it: events and readings, not the house-keeping. */
export function isShown(standing: StandingEntry): boolean {
  return standing.entry.kind === 'unrecognised' || !NOT_EVENTS.has(standing.entry.kind);
}
