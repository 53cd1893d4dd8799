import type { AcrossFlights } from '../analysis/acrossFlights.ts';
import type { FlightResults } from '../analysis/flightResults.ts';
import { digestOf, headerOf, headsOf } from '../file/timelineFile.ts';
import type { Entry } from '../record/entry.ts';

/** Version of the JSON of results. It rises when a field changes its meaning or goes. */
export const RESULTS_FORMAT = 1;

export interface FlightOfDocument {
  /** Names of the files that it was read from. */
  readonly files: readonly string[];
  readonly entries: readonly Entry[];
  readonly results: FlightResults;
}

/** Results as JSON, the same from a tablet and from the command line. `across` is null for one flight. */
export function resultsDocument(
  flights: readonly FlightOfDocument[],
  across: AcrossFlights | null,
  build: string,
): object {
  return {
    kneeline: 'results',
    format: RESULTS_FORMAT,
    build,
    about:
      'SI units, named at the end of each name; shares of one; times in milliseconds since 1970-01-01T00:00:00Z on the ' +
      'clock of the tablet; entries by id. A record, not an instrument.',
    flights: flights.map(({ files, entries, results }) => ({
      header: headerOf(entries),
      record: {
        files,
        entries: entries.length,
        digest: digestOf(entries),
        heads: headsOf(entries),
      },
      results,
    })),
    across,
  };
}
