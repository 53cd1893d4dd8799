import { flightResults } from '../analysis/flightResults.ts';
import { masterTimeOf } from '../analysis/clocks.ts';
import { writeCsv, type Table } from '../file/csv.ts';
import { timelineFileName } from '../file/names.ts';
import { headerOf } from '../file/timelineFile.ts';
import type { Entry } from '../record/entry.ts';
import { viewOf, type FlightView } from '../record/flight.ts';
import { signedVersions } from '../record/signatures.ts';
import { geoJsonOf } from './geoJson.ts';
import { writeParquet } from './parquet.ts';
import { resultsDocument } from './resultsDocument.ts';
import { flightTables } from './tables.ts';

/** What a file of a hand-over is for. */
export type HandedGroup = 'log' | 'results' | 'kinds' | 'programs';

export interface HandedFile {
  readonly group: HandedGroup;
  /** Without the stem of the flight: `points.csv`. */
  readonly ending: string;
  readonly name: string;
  readonly mediaType: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
}

/** Files beside the timeline file, named after it: CSV for a spreadsheet; JSON, GeoJSON and Parquet for programs. */
export function handOver(
  entries: readonly Entry[],
  { build, files }: { readonly build: string; readonly files: readonly string[] },
  view: FlightView = viewOf(entries),
): readonly HandedFile[] {
  const stem = timelineFileName(headerOf(entries)).replace(/\.jsonl$/, '');
  const results = flightResults(view);
  const tables = flightTables(view, results);
  const csv =
    (group: HandedGroup) =>
    (table: Table): Omit<HandedFile, 'name'> => ({
      group,
      ending: `${table.name}.csv`,
      mediaType: 'text/csv;charset=utf-8',
      content: writeCsv(table),
    });
  const of = columnsOf(view, headerOf(entries));
  const parquet = (table: Table): Omit<HandedFile, 'name'> => ({
    group: 'programs',
    ending: `${table.name}.parquet`,
    mediaType: 'application/vnd.apache.parquet',
    content: writeParquet(table, of, build),
  });
  const toBase = (
    at: Parameters<typeof masterTimeOf>[2],
    rec: Parameters<typeof masterTimeOf>[1],
  ) => masterTimeOf(results.clocks.fits, rec, at);
  const geoJson = geoJsonOf(view, { toBase });
  const document = resultsDocument([{ files, entries, results }], null, build);
  return [
    csv('log')(tables.entries),
    ...tables.readingsByQuantity.map(csv('log')),
    ...tables.results.map(csv('results')),
    ...tables.kinds.map(csv('kinds')),
    {
      group: 'programs' as const,
      ending: 'results.json',
      mediaType: 'application/json',
      content: `${JSON.stringify(document, null, 2)}\n`,
    },
    ...(geoJson === null
      ? []
      : [
          {
            group: 'programs' as const,
            ending: 'track.geojson',
            mediaType: 'application/geo+json',
            content: `${JSON.stringify(geoJson, null, 2)}\n`,
          },
        ]),
    ...[tables.entries, tables.readings, ...tables.results].map(parquet),
  ].map((file) => ({ ...file, name: `${stem}-${file.ending}` }));
}

function columnsOf(view: FlightView, header: ReturnType<typeof headerOf>) {
  return {
    flight: header.flight,
    date: header.date,
    nature: header.nature,
    aircraft: view.state.sheet?.aircraft.mark ?? '',
    signedCode: signedVersions(view).at(-1)?.code ?? '',
  };
}
