import { headerOf, writeTimeline } from '../file/timelineFile.ts';
import { findingWords } from '../file/words.ts';
import { checkChains } from '../record/chain.ts';
import { flightWords } from './check.ts';
import { asText, worst, type Outcome } from './outcome.ts';
import { printable } from './printable.ts';
import {
  byFlight,
  openAll,
  troubleWith,
  type OneFlight,
  type Opened,
  type Source,
} from './sources.ts';

/** Where `--out` sends the file to standard output. */
const STANDARD_OUTPUT = '-';

/** One timeline file of the union of all files, byte for byte what the app would save. Nothing is written unless all can be read. */
export function merge(sources: readonly Source[], { out }: { readonly out: string }): Outcome {
  const { opened, refused, code } = openAll(sources);
  if (refused.length > 0) return nothingWritten(refused, code);
  const flights = byFlight(opened);
  const [flight, ...others] = flights;
  if (flight === undefined || others.length > 0) {
    return nothingWritten(differentFlights(opened), 1);
  }
  const trouble = [...opened.flatMap(lostLines), ...checkChains(flight.entries).map(findingWords)];
  const text = writeTimeline(flight.entries);
  const toStandardOutput = out === STANDARD_OUTPUT;
  return {
    code: trouble.length > 0 ? 1 : 0,
    out: toStandardOutput ? text : asText(saying(flight, out).map(printable)),
    err: asText(trouble.map(printable)),
    files: toStandardOutput ? [] : [{ path: out, content: text }],
  };
}

function saying({ files, entries }: OneFlight, out: string): readonly string[] {
  return [
    `${out}: ${flightWords(headerOf(entries))}, ${entries.length} entries`,
    ...files.map(({ name, reading }) => `  ${reading.entries.length} of ${name}`),
  ];
}

/** A line that was put aside is in no merged file: whoever merges must keep the copy that holds it. */
function lostLines(file: Opened): readonly string[] {
  const trouble = troubleWith(file).map((words) => `${file.name}: ${words}`);
  const { length } = file.reading.refused;
  return length === 0
    ? trouble
    : [
        ...trouble,
        `${file.name}: keep it; ${length === 1 ? '1 line is' : `${length} lines are`} not in the merged file.`,
      ];
}

function differentFlights(opened: readonly Opened[]): readonly string[] {
  return [
    'These files are of different flights and cannot become one:',
    ...opened.map(({ name, reading }) => `  ${name} is ${flightWords(reading.header)}`),
  ];
}

function nothingWritten(because: readonly string[], code: Outcome['code']): Outcome {
  return {
    code: worst([code, 1]),
    out: '',
    err: asText([...because, 'Nothing was written.'].map(printable)),
    files: [],
  };
}
