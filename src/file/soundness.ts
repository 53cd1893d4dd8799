import { checkChains } from '../record/chain.ts';
import type { Entry } from '../record/entry.ts';
import { digestOf, headerOf, type TimelineHead, type TimelineHeader } from './timelineFile.ts';
import type { FileFinding, LineRefusal, Row, SortedLines } from './timelineReading.ts';

/**
 * Puts aside each line whose fingerprint nobody names although somebody should: an edit changes a line's own
 * fingerprint, so exactly the edited line is found, and the line after it stays good.
 */
export function setAsideAltered(
  rows: readonly Row[],
  end: SortedLines['end'],
): { readonly good: readonly Row[]; readonly refused: readonly LineRefusal[] } {
  if (everyLineIsNamed(rows, end)) {
    return { good: rows, refused: [] };
  }
  const named = new Set<string>();
  const followed = new Map<string, Set<number>>();
  const follow = (rec: string, seq: number, hash: string | null): void => {
    const seqs = followed.get(rec) ?? new Set();
    followed.set(rec, seqs.add(seq));
    if (hash !== null) {
      named.add(hash);
    }
  };
  for (const { entry } of rows) {
    follow(entry.rec, entry.seq - 1, entry.prev);
  }
  for (const head of end?.end.heads ?? []) {
    follow(head.rec, head.seq, head.hash);
  }
  const good: Row[] = [];
  const refusals: LineRefusal[] = [];
  for (const row of rows) {
    const { rec, seq, id, line: text } = row.entry;
    if (named.has(id) || followed.get(rec)?.has(seq) !== true) {
      good.push(row);
    } else {
      refusals.push({ line: row.line, text, fault: { reason: 'altered', rec, seq } });
    }
  }
  return { good, refused: refusals };
}

/** The file as it was saved, nearly always: each line names the one before it, and the last line names the newest. */
function everyLineIsNamed(rows: readonly Row[], end: SortedLines['end']): boolean {
  const newest = new Map<string, string>();
  for (const { entry } of rows) {
    if (entry.prev !== (newest.get(entry.rec) ?? null)) {
      return false;
    }
    newest.set(entry.rec, entry.id);
  }
  const heads = new Set(end?.end.heads.map((head) => head.hash));
  return end === null || [...newest.values()].every((id) => heads.has(id));
}

/** What is doubtful about the file as a whole. */
export function findingsOf(
  said: TimelineHeader,
  sorted: SortedLines,
  entries: readonly Entry[],
  refusedCount: number,
): readonly FileFinding[] {
  const findings: FileFinding[] = [
    ...endFindings(sorted, entries),
    ...headerFindings(said, headerOf(entries)),
    ...checkChains(entries),
  ];
  if (sorted.repeated.length > 0) {
    findings.push({ kind: 'repeated', lines: sorted.repeated });
  }
  // Any fault found above explains a digest that differs; alone, it says that lines were moved.
  if (findings.length + refusedCount === 0 && sorted.end !== null) {
    const digest = digestOf(sorted.good.map((row) => row.entry));
    if (digest !== sorted.end.end.digest) {
      findings.push({ kind: 'orderDiffers' });
    }
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
  return findings;
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
