import type { RecorderId } from '../../record/brand.ts';
import type { Entry } from '../../record/entry.ts';
import type { KnownKind } from '../../record/kinds.ts';
import type { FlightView } from '../../record/flight.ts';
import type { StandingEntry } from '../../record/flightState.ts';

/** What no touch wrote, or what is no event: Undo passes over it. */
const PASSED_OVER: ReadonlySet<KnownKind> = new Set<KnownKind>([
  'flightOpened',
  'recorderJoined',
  'flightSheetChanged',
  'scribeChanged',
  'phaseChosen',
  'flightClosed',
  'logSigned',
  'headWitnessed',
  'entryWithdrawn',
  'unconfirmedSettled',
  'deviceNoted',
  'positionRead',
  'briefAccepted',
  'reminderShown',
  'reminderAnswered',
]);

/**
 * What Undo would take back: this recorder's newest entry that still stands. Read from the record, so it goes as deep
 * as the flight and is the same after a restart. Own entries rise in the order of writing, so the search ends early.
 */
export function undoTarget(
  entries: readonly Entry[],
  view: FlightView,
  recorder: RecorderId | null,
): StandingEntry | null {
  return newestOwn(entries, view, recorder, () => true);
}

/** The newest own event, amendments apart: what the back-date keys act on. */
export function newestEvent(
  entries: readonly Entry[],
  view: FlightView,
  recorder: RecorderId | null,
): StandingEntry | null {
  return newestOwn(entries, view, recorder, (entry) => entry.kind !== 'entryAmended');
}

function newestOwn(
  entries: readonly Entry[],
  view: FlightView,
  recorder: RecorderId | null,
  wanted: (entry: Entry) => boolean,
): StandingEntry | null {
  for (let index = entries.length - 1; index >= 0; index -= 1) {
    const entry = entries[index];
    if (
      entry === undefined ||
      entry.rec !== recorder ||
      entry.kind === 'unrecognised' ||
      PASSED_OVER.has(entry.kind) ||
      !wanted(entry)
    ) {
      continue;
    }
    const standing = view.byId(entry.id);
    if (
      standing !== undefined &&
      (standing.standing === 'stands' || standing.standing === 'unconfirmed')
    ) {
      return standing;
    }
  }
  return null;
}
