import { correctedInUnit } from '../analysis/correctedInUnit.ts';
import { masterTimeOf } from '../analysis/clocks.ts';
import { flightResults } from '../analysis/flightResults.ts';
import { resultTables } from '../analysis/tables/resultTables.ts';
import { writeCsv } from '../file/csv.ts';
import { timelineFileName } from '../file/names.ts';
import { entriesTable, readingsTable, type Meaning } from '../file/tables.ts';
import { headerOf } from '../file/timelineFile.ts';
import { viewOf } from '../record/flight.ts';
import { asText, worst, type FileToWrite, type Outcome } from './outcome.ts';
import { printable } from './printable.ts';
import { byFlight, openAll, troubleWith, type OneFlight, type Source } from './sources.ts';

/** Tables of every flight, each named after its timeline file. Nothing is written unless all files can be read. */
export function tables(sources: readonly Source[], { into }: { readonly into: string }): Outcome {
  const { opened, refused, code } = openAll(sources);
  const trouble = opened.flatMap((file) =>
    troubleWith(file).map((words) => `${file.name}: ${words}`),
  );
  if (refused.length > 0) {
    const err = asText([...refused, 'Nothing was written.'].map(printable));
    return { code, out: '', err, files: [] };
  }
  const files = byFlight(opened).flatMap((flight) => tablesOf(flight, into));
  return {
    code: worst([code, trouble.length > 0 ? 1 : 0]),
    out: asText(files.map(({ path }) => printable(path))),
    err: asText(trouble.map(printable)),
    files,
  };
}

function tablesOf({ entries }: OneFlight, into: string): readonly FileToWrite[] {
  const view = viewOf(entries);
  const { standing, state } = view;
  const results = flightResults(view);
  const { fits } = results.clocks;
  const meaning: Meaning = {
    toBase: (at, rec) => masterTimeOf(fits, rec, at),
    corrected: (reading) => correctedInUnit(state.sheet, reading),
  };
  const stem = timelineFileName(headerOf(entries)).replace(/\.jsonl$/, '');
  const named = [
    { name: 'entries', text: entriesTable(standing, state.sheet, meaning) },
    { name: 'readings', text: readingsTable(standing, state.sheet, meaning) },
    ...resultTables(view, results).map(({ name, header, rows }) => ({
      name,
      text: writeCsv(header, rows),
    })),
  ];
  const folder = into.replace(/[/\\]+$/, '');
  return named.map(({ name, text }) => ({ path: `${folder}/${stem}-${name}.csv`, text }));
}
