import { checkChains } from '../record/chain.ts';
import type { Entry } from '../record/entry.ts';
import {
  digestOf,
  headerOf,
  headsOf,
  type TimelineHead,
  type TimelineHeader,
} from './timelineFile.ts';
import type { FileFinding, LineRefusal, Row, SortedLines } from './timelineReading.ts';

/**
 * Puts aside each line that sound lines speak against: an edit changes a line's own fingerprint, so exactly the edited
 * line is found, and its neighbours stay good. A line that was put aside has no say about others.
 */
export function setAsideAltered(
  rows: readonly Row[],
  end: SortedLines['end'],
): { readonly good: readonly Row[]; readonly refused: readonly LineRefusal[] } {
  if (everyLineIsNamed(rows, end) || digestAgrees(rows, end)) {
    return { good: rows, refused: [] };
  }
  const byId = new Map<string, Entry>(rows.map(({ entry }) => [entry.id, entry]));
  const named = new Map<string, Set<string>>();
  const name = (rec: string, seq: number, hash: string): void => {
    const place = `${rec} ${seq}`;
    named.set(place, (named.get(place) ?? new Set()).add(hash));
  };
  for (const head of end?.end.heads ?? []) {
    name(head.rec, head.seq, head.hash);
  }
  const aside = new Map<number, LineRefusal>();
  // The newest first: only the line after it and the last line of the file can speak about a line.
  for (const { line, entry } of rows.toSorted((a, b) => b.entry.seq - a.entry.seq)) {
    const { rec, seq, id, prev, line: text } = entry;
    const hashes = named.get(`${rec} ${seq}`);
    if (isOutOfPlace(entry, byId) || (hashes === undefined && isStranger(entry, end))) {
      aside.set(line, { line, text, fault: { reason: 'outOfPlace', rec, seq } });
    } else if (hashes !== undefined && !hashes.has(id)) {
      aside.set(line, { line, text, fault: { reason: 'altered', rec, seq } });
    } else if (prev !== null) {
      name(rec, seq - 1, prev);
    }
  }
  return { good: rows.filter(({ line }) => !aside.has(line)), refused: [...aside.values()] };
}

/** It names the entry that it follows, and that one stands at another number or under another recorder. */
function isOutOfPlace(entry: Entry, byId: ReadonlyMap<string, Entry>): boolean {
  const before = entry.prev === null ? undefined : byId.get(entry.prev);
  return before !== undefined && (before.rec !== entry.rec || before.seq !== entry.seq - 1);
}

/** No line was put in, and the last line of the file knows no such number of any such recorder. */
function isStranger({ rec, seq }: Entry, end: SortedLines['end']): boolean {
  return (
    end !== null &&
    end.line - LINES_AROUND <= end.end.count &&
    !end.end.heads.some((head) => head.rec === rec && head.seq >= seq)
  );
}

/** The first line and the last one. */
const LINES_AROUND = 2;

/** The file as it was saved, nearly always: each line names the one before it, and the last line names the newest. */
function everyLineIsNamed(rows: readonly Row[], end: SortedLines['end']): boolean {
  const newest = new Map<string, Entry>();
  for (const { entry } of rows) {
    const before = newest.get(entry.rec);
    if (
      entry.prev !== (before?.id ?? null) ||
      (before !== undefined && entry.seq !== before.seq + 1)
    ) {
      return false;
    }
    newest.set(entry.rec, entry);
  }
  const heads = new Set(end?.end.heads.map((head) => head.hash));
  return end === null || [...newest.values()].every(({ id }) => heads.has(id));
}

/** Every entry stands as it was saved, in its place: then it is the last line that was changed. */
function digestAgrees(rows: readonly Row[], end: SortedLines['end']): boolean {
  return end !== null && digestOf(rows.map((row) => row.entry)) === end.end.digest;
}

/** What is doubtful about the file as a whole. */
export function findingsOf(
  said: TimelineHeader | null,
  sorted: SortedLines,
  entries: readonly Entry[],
  refusedCount: number,
): readonly FileFinding[] {
  const findings: FileFinding[] = [
    ...endFindings(sorted, entries),
    ...(said === null ? [{ kind: 'noStart' } as const] : headerFindings(said, headerOf(entries))),
    ...checkChains(entries),
  ];
  if (sorted.repeated.length > 0) {
    findings.push({ kind: 'repeated', lines: sorted.repeated });
  }
  // Any fault found above explains a digest that differs; alone, it says that lines were moved, or what the last line is.
  if (findings.length + refusedCount === 0 && !digestAgrees(sorted.good, sorted.end)) {
    const inOrder = sorted.good.every(({ entry }, index) => entry === entries[index]);
    findings.push({ kind: inOrder ? 'endDiffers' : 'orderDiffers' });
  }
  return findings;
}

function endFindings(
  { end, good }: SortedLines,
  entries: readonly Entry[],
): readonly FileFinding[] {
  if (end === null) {
    return [{ kind: 'noEnd', entries: entries.length }];
  }
  const findings: FileFinding[] = [];
  const byId = new Map<string, Entry>(entries.map((entry) => [entry.id, entry]));
  for (const head of end.end.heads) {
    const entry = byId.get(head.hash);
    if (entry?.rec !== head.rec || entry.seq !== head.seq) {
      findings.push(missingHead(head, entries));
    }
  }
  if (end.end.count !== good.length) {
    findings.push({ kind: 'countDiffers', said: end.end.count, found: good.length });
  }
  const doubtful = findings.length > 0 || end.end.heads.length !== headsOf(entries).length;
  return doubtful && digestAgrees(good, end) ? [{ kind: 'endDiffers' }] : findings;
}

function missingHead(head: TimelineHead, entries: readonly Entry[]): FileFinding {
  const seqs = entries.filter((entry) => entry.rec === head.rec).map((entry) => entry.seq);
  return {
    kind: 'headMissing',
    rec: head.rec,
    seq: head.seq,
    lastFound: seqs.reduce((a, b) => Math.max(a, b), 0),
  };
}

function headerFindings(said: TimelineHeader, found: TimelineHeader): readonly FileFinding[] {
  const fields = ['flight', 'title', 'nature', 'date'] as const;
  return fields
    .filter((field) => said[field] !== found[field])
    .map((field) => ({ kind: 'headerDiffers', field, said: said[field], found: found[field] }));
}
