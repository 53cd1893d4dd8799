import type { Clock, Journal, Shelf } from '../../journal/journal.ts';

export interface Start {
  readonly screen: 'start' | 'brief' | 'fly';
  readonly journal: Journal | null;
}

/**
 * Where the app opens: on Fly when a flight is open, whatever happened to the last window; on the start screen when the
 * tablet holds nothing; else on Brief. A flight that goes on says so in its own record.
 */
export async function startingPlace(given: {
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly build: string;
}): Promise<Start> {
  const { shelf, clock, build } = given;
  const flight = await shelf.openedFlight();
  if (flight !== null) {
    const journal = await shelf.journalOf(flight);
    const stamp = clock.stampNow();
    const last = journal.entries().findLast(({ rec }) => rec === journal.recorder());
    const awayS = last === undefined ? null : Math.round((stamp.wall - last.wall) / 1000);
    const body = {
      what: 'resumed',
      build,
      // A clock that went back is told by its own entry, never as a gap.
      ...(awayS !== null && awayS >= 0 && { awayS }),
      ...(shelf.stoppedUncleanly() && { words: 'unclean stop' }),
    } as const;
    // Another window may hold the pen; this one then only reads, and says so on Fly.
    journal.append({ kind: 'deviceNoted', body, stamp }).catch(() => undefined);
    return { screen: 'fly', journal };
  }
  const [flights, sheets] = await Promise.all([shelf.flights(), shelf.sheets()]);
  return { screen: flights.length + sheets.length === 0 ? 'start' : 'brief', journal: null };
}
