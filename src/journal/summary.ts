import type { FlightId } from '../record/brand.ts';
import type { Entry } from '../record/entry.ts';
import { viewOf } from '../record/flight.ts';
import type { FlightRow } from './database.ts';
import type { EntrySet } from './entrySet.ts';

type Summary = Pick<FlightRow, 'flight' | 'title' | 'date' | 'nature' | 'mark' | 'state'>;

/** What the list of flights says about these entries. */
export function summarise(flight: FlightId, entries: readonly Entry[]): Summary {
  const { state } = viewOf(entries);
  return {
    flight,
    title: state.title,
    date: state.date ?? '',
    nature: state.nature,
    mark: state.sheet?.aircraft.mark ?? '',
    state: standing(state),
  };
}

function standing({ closed, signed }: ReturnType<typeof viewOf>['state']): FlightRow['state'] {
  if (signed.length > 0) {
    return 'signed';
  }
  if (closed === null) {
    return 'open';
  }
  return closed.how === 'aborted' ? 'aborted' : 'closed';
}

const SUMMARISED = ['flightOpened', 'flightSheetChanged', 'flightClosed', 'logSigned'];

/** Whether the entry may change a summary: folding a whole flight is not for every touch. */
export function changesSummary(entry: Entry, entries: EntrySet): boolean {
  if (
    entry.kind !== 'entryWithdrawn' &&
    entry.kind !== 'entryAmended' &&
    entry.kind !== 'unconfirmedSettled'
  ) {
    return SUMMARISED.includes(entry.kind);
  }
  const target = entries.byId(entry.body.target);
  return target === undefined || changesSummary(target, entries);
}
