export const VERBS = ['check', 'merge', 'results', 'tables'] as const;
export type Verb = (typeof VERBS)[number];

const CODES = `Exit codes: 0 all is well; 1 something was found or refused; 2 wrong use;
3 something cannot be read or written.`;

/** What `kneeline --help` says. */
export const USAGE = `Kneeline on the ground: works on flight timeline files, with no browser and no network.

  kneeline check FILE...                    is the record whole? chain, order, forks, gaps, lines put aside
  kneeline merge FILE... --out FILE         copies of one flight become one file
  kneeline results FILE... [--json]         what the flight came to, one page or JSON
  kneeline tables FILE... --into FOLDER     tables for a spreadsheet, and files for other programs

  kneeline VERB --help                      more about one verb
  kneeline --version                        which build this is

FILE may be -, which reads standard input. Files are only read; what is written is written beside, read back
and only then given its name. Nothing that exists is overwritten without --force.

${CODES}

A record, not an instrument: the operator's approval and the test safety plan overrule this program.
`;

const HELP: Readonly<Record<Verb, string>> = {
  check: `kneeline check FILE...

Reads each timeline file and says whether it is whole: every entry follows on the one before it by the same
recorder, none is missing, none was changed, none is there in two versions, the order rises, the end is there.
Files of one flight are looked at together as well: a fork may show only then. Questions about the order of
events (covers before gear up, and the like) are listed and are no fault of the file.

${CODES}
`,
  merge: `kneeline merge FILE... --out FILE [--force]

Makes one timeline file of all copies of one flight: every sound entry of every file once, byte for byte what
the app saves. Files of different flights are refused. Lines that were put aside are in no merged file: keep
the copy that holds them.

  --out FILE   where to write; - writes to standard output
  --force      replace FILE if it exists; never a file that is being merged

${CODES}
`,
  results: `kneeline results FILE... [--json]

Prints what a flight came to: points with 95 % intervals and the gates that struck them, gross and net savings,
losses with their evidence, encounters, laminar share, fuel balance, clocks, completion and what to fly again,
and every doubt. Copies of one flight are taken together; several flights are printed one after the other, and
then what shows only across flights.

  --json       the same as JSON: SI, units in the names, times as milliseconds since 1970 UTC, entries by id

${CODES}
`,
  tables: `kneeline tables FILE... --into FOLDER [--force]

Writes what is handed over beside the timeline file. For a spreadsheet (CSV, one header row, one unit a column,
times in UTC): every entry, readings by quantity as read beside as corrected, the fields of each kind of entry,
and the results. For other programs: the results as JSON, the track as GeoJSON where positions were written, and
entries, readings and results as Parquet, with the flight in every row, so that the files of many flights can be
asked as one. The timeline file is the record; these are views of it.

  --into FOLDER   where to write; it is made if it is not there
  --force         replace tables that exist

${CODES}
`,
};

export function helpOf(verb: Verb): string {
  return HELP[verb];
}
