import { FILE_BYTES_MAX } from '../file/limits.ts';
import { readTimeline } from '../file/readTimeline.ts';
import type { TimelineReading } from '../file/timelineReading.ts';
import { findingWords, lineRefusalWords, wholeRefusalWords } from '../file/words.ts';
import type { Entry } from '../record/entry.ts';
import { union } from '../record/merge.ts';
import { worst, type ExitCode } from './outcome.ts';

/** Why the bytes of a named file are not there. */
export type SourceFault =
  | { readonly fault: 'missing' }
  | { readonly fault: 'folder' }
  | { readonly fault: 'notAllowed' }
  | { readonly fault: 'tooLarge'; readonly bytes: number }
  | { readonly fault: 'failed'; readonly said: string };

/** A file as it was named on the command line, and what came of reading it. */
export interface Source {
  readonly name: string;
  readonly content: Uint8Array | SourceFault;
}

/** A file of one flight that could be read, perhaps not every line of it. */
export interface Opened {
  readonly name: string;
  readonly bytes: number;
  readonly reading: Extract<TimelineReading, { readonly kind: 'read' }>;
}

export interface OpenedFiles {
  readonly opened: readonly Opened[];
  /** A sentence for each file of which nothing could be used. */
  readonly refused: readonly string[];
  readonly code: ExitCode;
}

/** Reads every file that can be read. What one of them lacks is no reason to leave out the others. */
export function openAll(sources: readonly Source[]): OpenedFiles {
  const opened: Opened[] = [];
  const refused: string[] = [];
  const codes: ExitCode[] = [];
  for (const source of sources) {
    const one = openOne(source);
    if ('because' in one) {
      refused.push(`${source.name}: ${one.because}`);
      codes.push(one.code);
    } else {
      opened.push(one);
    }
  }
  return { opened, refused, code: worst(codes) };
}

type Refused = { readonly because: string; readonly code: ExitCode };

function openOne({ name, content }: Source): Opened | Refused {
  if ('fault' in content) return { because: faultWords(content), code: 3 };
  const binary = binaryWords(content);
  if (binary !== null) return { because: binary, code: 1 };
  const reading = readTimeline(new TextDecoder().decode(content), content.length);
  if (reading.kind === 'refused') {
    const { refusal } = reading;
    const lines = refusal.reason === 'noEntry' ? refusal.refused.map(lineRefusalWords) : [];
    return { because: [wholeRefusalWords(refusal), ...lines].join('\n  '), code: 1 };
  }
  return { name, bytes: content.length, reading };
}

function faultWords(fault: SourceFault): string {
  switch (fault.fault) {
    case 'missing':
      return 'there is no such file.';
    case 'folder':
      return 'this is a folder; name the files in it.';
    case 'notAllowed':
      return 'you may not read this file.';
    case 'tooLarge':
      return wholeRefusalWords({ reason: 'tooLarge', bytes: fault.bytes });
    case 'failed':
      return `it could not be read (${fault.said}).`;
  }
}

const LOOKED_AT_BYTES = 4096;

/** A timeline file is text: says what else the file looks like, or null. */
function binaryWords(content: Uint8Array): string | null {
  if (content[0] === 0x1f && content[1] === 0x8b) {
    return 'this is a compressed file (gzip). Unpack it first.';
  }
  if (content[0] === 0x50 && content[1] === 0x4b && content[2] === 0x03 && content[3] === 0x04) {
    return 'this is a compressed file (zip). Unpack it first.';
  }
  return content.subarray(0, LOOKED_AT_BYTES).includes(0)
    ? 'this is not text, so it is no timeline file. Choose a file that ends in .jsonl.'
    : null;
}

/** What was wrong with a file that was read all the same, a sentence each. */
export function troubleWith({ reading }: Opened): readonly string[] {
  return [...reading.refused.map(lineRefusalWords), ...reading.findings.map(findingWords)];
}

/** All that the files say about one flight. */
export interface OneFlight {
  readonly flight: string;
  readonly files: readonly Opened[];
  readonly entries: readonly Entry[];
}

/** The files by flight, each flight's entries as one set. Flights stand in order of their date, then of their id. */
export function byFlight(opened: readonly Opened[]): readonly OneFlight[] {
  const flights = new Map<string, OneFlight>();
  for (const file of opened) {
    const { flight } = file.reading.header;
    const before = flights.get(flight);
    flights.set(flight, {
      flight,
      files: [...(before?.files ?? []), file],
      entries: union(before?.entries ?? [], file.reading.entries),
    });
  }
  return [...flights.values()].sort((a, b) => (dateOf(a) < dateOf(b) ? -1 : 1));
}

function dateOf({ flight, files }: OneFlight): string {
  return `${files[0]?.reading.header.date ?? ''} ${flight}`;
}

/** The limit is the app's own: a file that the tablet would refuse is refused here. */
export const SOURCE_BYTES_MAX = FILE_BYTES_MAX;
