import { acrossFlights, type AcrossFlights } from '../analysis/acrossFlights.ts';
import { flightResults, type FlightResults } from '../analysis/flightResults.ts';
import { digestOf } from '../file/timelineFile.ts';
import { resultsDocument } from '../handover/resultsDocument.ts';
import { viewOf, type FlightView } from '../record/flight.ts';
import { asText, worst, type Outcome } from './outcome.ts';
import { acrossPage } from './page/across.ts';
import { pageOf } from './page/page.ts';
import { printable, printableJson } from './printable.ts';
import { byFlight, openAll, troubleWith, type OneFlight, type Source } from './sources.ts';

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
  const documented = flights.map((one) => ({
    files: one.of.files.map(({ name }) => name),
    entries: one.of.entries,
    results: one.results,
  }));
  const said = json
    ? `${printableJson(resultsDocument(documented, acrossOf(flights), build))}\n`
    : pages(flights, build);
  return {
    code: worst([code, trouble.length > 0 ? 1 : 0]),
    out: flights.length === 0 ? '' : said,
    err: asText([...refused, ...trouble].map(printable)),
    files: [],
  };
}

interface WorkedOut {
  readonly of: OneFlight;
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
    return { of, view, results: flightResults(view, earlier) };
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
