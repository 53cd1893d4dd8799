import { digestOf, headsOf, type TimelineHeader } from '../file/timelineFile.ts';
import { findingWords } from '../file/words.ts';
import { doubtRuleWords } from '../analysis/words/orderRules.ts';
import { checkChains } from '../record/chain.ts';
import type { Entry } from '../record/entry.ts';
import { viewOf } from '../record/flight.ts';
import { items } from '../record/trail.ts';
import { asText, worst, type Outcome } from './outcome.ts';
import { dayAndClock } from './pageTime.ts';
import { printable } from './printable.ts';
import {
  byFlight,
  openAll,
  troubleWith,
  type OneFlight,
  type Opened,
  type Source,
} from './sources.ts';

/** Says of each file whether it is whole: chain, order, forks, gaps, lines put aside, a cut end. */
export function check(sources: readonly Source[]): Outcome {
  const { opened, refused, code } = openAll(sources);
  const together = byFlight(opened)
    .filter(({ files }) => files.length > 1)
    .map(togetherLines);
  const troubled =
    opened.some((file) => troubleWith(file).length > 0) || together.some(({ troubled: is }) => is);
  const blocks = [...opened.map(fileLines), ...together.map(({ lines }) => lines)];
  return {
    code: worst([code, troubled ? 1 : 0]),
    out: blocks.map((lines) => asText(lines.map(printable))).join('\n'),
    err: asText(refused.map(printable)),
    files: [],
  };
}

function fileLines(file: Opened): readonly string[] {
  const { header, entries } = file.reading;
  const trouble = troubleWith(file);
  return [
    `${file.name}: ${trouble.length === 0 ? 'sound' : countOf(trouble.length, 'thing to look at', 'things to look at')}`,
    ...trouble.map((words) => `  ! ${words}`),
    `  Flight     ${flightWords(header)}`,
    ...recordLines(entries),
  ];
}

/** A fork or a gap may show only when the copies lie side by side. */
function togetherLines({ files, entries }: OneFlight): {
  readonly lines: readonly string[];
  readonly troubled: boolean;
} {
  const findings = checkChains(entries).map(findingWords);
  const names = files.map(({ name }) => name).join(', ');
  const verdict = findings.length === 0 ? 'the chain is whole' : `${findings.length} to look at`;
  return {
    troubled: findings.length > 0,
    lines: [
      `Together, ${names}: ${verdict}`,
      ...findings.map((words) => `  ! ${words}`),
      ...recordLines(entries),
    ],
  };
}

function recordLines(entries: readonly Entry[]): readonly string[] {
  const view = viewOf(entries);
  const times = view.standing.map(({ at }) => at);
  const [first, last] = [times[0], times.at(-1)];
  const questions = [...items(view.state.doubts)];
  return [
    `  Entries    ${entries.length}${standingWords(view.standing)}`,
    ...(first === undefined || last === undefined
      ? []
      : [`  Times      ${dayAndClock(first)} to ${dayAndClock(last)}, as touched`]),
    ...headsOf(entries).map(
      ({ rec, seq, hash }) =>
        `  Recorder   ${rec.slice(0, 8)}, newest entry ${seq} (${hash.slice(0, 8)})`,
    ),
    `  Digest     ${digestOf(entries)}`,
    ...(questions.length === 0
      ? []
      : [`  Questions  ${questions.length} about the order of events; no fault of the file`]),
    ...questions.map((doubt) => `    ${dayAndClock(doubt.at)} ${doubtRuleWords(doubt)}`),
  ];
}

function standingWords(standing: ReturnType<typeof viewOf>['standing']): string {
  const counted = (words: string, is: (row: (typeof standing)[number]) => boolean): string => {
    const count = standing.filter(is).length;
    return count === 0 ? '' : `, ${count} ${words}`;
  };
  return [
    counted('withdrawn', (row) => row.standing === 'withdrawn'),
    counted('unconfirmed', (row) => row.standing === 'unconfirmed'),
    counted('amended', (row) => row.amendedBy.length > 0),
    counted('with amendments that disagree', (row) => row.conflicts.length > 0),
    counted('of a newer kind', (row) => row.entry.kind === 'unrecognised'),
  ].join('');
}

/** `“Slot check” of 2031-05-06 (f1f1f1f1)`: title, day, and enough of the id to tell flights apart. */
export function flightWords({ title, nature, date, flight }: TimelineHeader): string {
  const kind = nature === 'flight' ? '' : `, ${nature}`;
  return `${title === '' ? 'untitled' : `“${title}”`} of ${date === '' ? 'unknown date' : date}${kind} (${flight.slice(0, 8)})`;
}

function countOf(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}
