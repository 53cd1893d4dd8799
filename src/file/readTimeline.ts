import * as v from 'valibot';
import type { EntryId } from '../record/brand.ts';
import { compareEntries } from '../record/merge.ts';
import { parseEntry } from '../record/parse.ts';
import { FILE_BYTES_MAX, FILE_LINES_MAX } from './limits.ts';
import { findingsOf, setAsideAltered } from './soundness.ts';
import { headerOf, TIMELINE_FORMAT, type TimelineHeader } from './timelineFile.ts';
import type {
  LineRefusal,
  Row,
  SortedLines,
  TimelineReading,
  WholeRefusal,
} from './timelineReading.ts';

const firstLineSchema = v.object({
  kneeline: v.literal('timeline'),
  format: v.pipe(v.number(), v.integer(), v.minValue(TIMELINE_FORMAT)),
  flight: v.fallback(v.string(), ''),
  title: v.fallback(v.string(), ''),
  nature: v.fallback(v.string(), ''),
  date: v.fallback(v.string(), ''),
});

const endSchema = v.object({
  kneeline: v.literal('end'),
  count: v.number(),
  heads: v.array(v.object({ rec: v.string(), seq: v.number(), hash: v.string() })),
  digest: v.string(),
});

/**
 * Reads a timeline file from anywhere. Sound lines are kept whatever happened to the others; nothing is mended.
 *
 * @param text the whole file, decoded from UTF-8 (a byte-order mark and CR LF are tolerated)
 * @param bytes its size, judged before anything is read
 */
export function readTimeline(text: string, bytes: number): TimelineReading {
  if (bytes > FILE_BYTES_MAX) {
    return refused({ reason: 'tooLarge', bytes });
  }
  const lines = linesOf(text);
  if (lines.length === 0) {
    return refused({ reason: 'empty' });
  }
  if (lines.length > FILE_LINES_MAX) {
    return refused({ reason: 'tooManyLines', lines: lines.length });
  }
  const first = v.safeParse(firstLineSchema, parsed(lines[0] ?? ''));
  const said = first.success ? first.output : null;
  if (said !== null && said.format > TIMELINE_FORMAT) {
    return refused({ reason: 'newerFormat', found: said.format });
  }
  const sorted = sortLines(lines, said);
  if (said === null && sorted.good.length === 0) {
    return refused({ reason: 'notTimeline', starts: (lines[0] ?? '').slice(0, 40) });
  }
  const proven = setAsideAltered(sorted.good, sorted.end);
  const refusals = [...sorted.refused, ...proven.refused].toSorted((a, b) => a.line - b.line);
  const entries = proven.good.map((row) => row.entry).toSorted(compareEntries);
  if (entries.length === 0) {
    return refused({ reason: 'noEntry', refused: refusals });
  }
  const header = headerOf(entries);
  return {
    kind: 'read',
    header,
    entries,
    refused: refusals,
    findings: findingsOf(said, sorted, entries, refusals.length),
  };
}

/** @param said what the first line says; null when it is no first line, and judged like any other */
function sortLines(lines: readonly string[], said: TimelineHeader | null): SortedLines {
  const parsedRows: Row[] = [];
  const refusals: LineRefusal[] = [];
  let end: SortedLines['end'] = null;
  for (const [index, text] of lines.entries()) {
    const line = index + 1;
    if (index === 0 && said !== null) {
      continue;
    }
    const last = text.startsWith('{"count":') ? v.safeParse(endSchema, parsed(text)) : null;
    if (end !== null) {
      refusals.push({ line, text, fault: { reason: 'afterEnd' } });
    } else if (last?.success === true) {
      end = { line, end: last.output };
    } else {
      const entry = parseEntry(text);
      if (entry.ok) {
        parsedRows.push({ line, entry: entry.value });
      } else {
        refusals.push({ line, text, fault: entry.error });
      }
    }
  }
  return { ...oneFlightOnce(parsedRows, said?.flight ?? '', refusals), end };
}

/** Keeps the entries of one flight, each once: the one that the first line names, if any entry is of it. */
function oneFlightOnce(
  rows: readonly Row[],
  saidFlight: string,
  refusals: readonly LineRefusal[],
): Omit<SortedLines, 'end'> {
  const expected = rows.some(({ entry }) => entry.flight === saidFlight)
    ? saidFlight
    : mostCommonFlight(rows);
  const good: Row[] = [];
  const strangers: LineRefusal[] = [];
  const repeated: number[] = [];
  const seen = new Set<EntryId>();
  for (const row of rows) {
    const { flight, id, line: text } = row.entry;
    if (expected !== undefined && flight !== expected) {
      strangers.push({
        line: row.line,
        text,
        fault: { reason: 'otherFlight', found: flight, expected },
      });
    } else if (seen.has(id)) {
      repeated.push(row.line);
    } else {
      seen.add(id);
      good.push(row);
    }
  }
  return { good, refused: [...refusals, ...strangers], repeated };
}

function mostCommonFlight(rows: readonly Row[]): string | undefined {
  const counts = new Map<string, number>();
  for (const { entry } of rows) {
    counts.set(entry.flight, (counts.get(entry.flight) ?? 0) + 1);
  }
  const [most] = [...counts].sort(([, a], [, b]) => b - a);
  return most?.[0];
}

function linesOf(text: string): readonly string[] {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split('\n')
    .map((line) => (line.endsWith('\r') ? line.slice(0, -1) : line));
  while (lines.at(-1) === '') {
    lines.pop();
  }
  return lines;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined; // not JSON: the schema then refuses it by name
  }
}

function refused(refusal: WholeRefusal): TimelineReading {
  return { kind: 'refused', refusal };
}
