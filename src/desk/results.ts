import { acrossFlights, type AcrossFlights } from '../analysis/acrossFlights.ts';
import { flightResults, type FlightResults } from '../analysis/flightResults.ts';
import { digestOf, headerOf, headsOf, type TimelineHeader } from '../file/timelineFile.ts';
import { viewOf, type FlightView } from '../record/flight.ts';
import { asText, worst, type Outcome } from './outcome.ts';
import { acrossPage } from './page/across.ts';
import { pageOf } from './page/page.ts';
import { printable, printableJson } from './printable.ts';
import { byFlight, openAll, troubleWith, type OneFlight, type Source } from './sources.ts';

/** Version of the JSON that `results --json` prints. It rises when a field changes its meaning or goes. */
export const RESULTS_FORMAT = 1;

export interface ResultsOptions {
  readonly json: boolean;
  readonly build: string;
}

/** What each flight came to, and, of several, what shows only across them. */
export function results(sources: readonly Source[], { json, build }: ResultsOptions): Outcome {
  const { opened, refused, code } = openAll(sources);
  const trouble = opened.flatMap((file) =>
    troubleWith(file).map((words) => `${file.name}: ${words}`),
  );
  const flights = workedOut(byFlight(opened));
  const said = json ? `${printableJson(document(flights, build))}\n` : pages(flights, build);
  return {
    code: worst([code, trouble.length > 0 ? 1 : 0]),
    out: flights.length === 0 ? '' : said,
    err: asText([...refused, ...trouble].map(printable)),
    files: [],
  };
}

interface WorkedOut {
  readonly of: OneFlight;
  readonly header: TimelineHeader;
  readonly view: FlightView;
  readonly results: FlightResults;
}

/** Earlier flights of the same aircraft tell what is chronic in a later one. */
function workedOut(flights: readonly OneFlight[]): readonly WorkedOut[] {
  const all = flights.map((of) => ({ of, view: viewOf(of.entries) }));
  return all.map(({ of, view }) => {
    const earlier = all
      .map((other) => other.view)
      .filter((other) => markOf(other) === markOf(view) && openedAt(other) < openedAt(view));
    return { of, header: headerOf(of.entries), view, results: flightResults(view, earlier) };
  });
}

function openedAt({ state }: FlightView): number {
  return state.openedAt ?? Number.POSITIVE_INFINITY;
}

function markOf({ state }: FlightView): string | null {
  return state.sheet?.aircraft.mark ?? null;
}

/** Null of one flight: nothing lies beside it. */
function acrossOf(flights: readonly WorkedOut[]): AcrossFlights | null {
  return flights.length < 2 ? null : acrossFlights(flights.map(({ view }) => view));
}

function pages(flights: readonly WorkedOut[], build: string): string {
  const own = flights.map(({ of, view, results: found }) => {
    const files = of.files.map(({ name }) => name);
    return pageOf(view, found, { files, digest: digestOf(of.entries), build });
  });
  const across = acrossOf(flights);
  const all = across === null ? own : [...own, acrossPage(across, flights.length)];
  // A form feed parts the sheets: a printer starts a new one, a screen shows an empty line.
  return all.map((page) => asText(page.map(printable))).join('\n\f\n');
}

function document(flights: readonly WorkedOut[], build: string): object {
  return {
    kneeline: 'results',
    format: RESULTS_FORMAT,
    build,
    about:
      'SI units, named at the end of each name; shares of one; times in milliseconds since 1970-01-01T00:00:00Z on the ' +
      'clock of the tablet; entries by id. A record, not an instrument.',
    flights: flights.map(({ of, header, results: found }) => ({
      header,
      record: {
        files: of.files.map(({ name }) => name),
        entries: of.entries.length,
        digest: digestOf(of.entries),
        heads: headsOf(of.entries),
      },
      results: found,
    })),
    across: acrossOf(flights),
  };
}
