import { canonicalJson } from '../record/canonical.ts';
import { hashLine } from '../record/chain.ts';
import type { Entry } from '../record/entry.ts';
import { compareEntries } from '../record/merge.ts';

/**
 * The flight timeline file: JSON Lines in UTF-8. A first line says what it is, then one entry a line exactly as it was
 * written, sorted by (ord, rec, seq, id), then a last line with count, heads and digest. Nothing in it comes from
 * the writer's clock or app, so equal sets of entries give byte-identical files.
 */
export const TIMELINE_FORMAT = 1;

/** What the first line says, worked out from the entries; nobody has to trust it. */
export interface TimelineHeader {
  readonly flight: string;
  readonly title: string;
  readonly nature: string;
  readonly date: string;
}

export interface TimelineHead {
  readonly rec: string;
  readonly seq: number;
  readonly hash: string;
}

/**
 * @param entries one flight, in any order
 * @returns the text of the file, every line ended by LF
 * @throws RangeError when there is no entry, or when entries of two flights are mixed
 */
export function writeTimeline(entries: readonly Entry[]): string {
  const sorted = entries.toSorted(compareEntries);
  const lines = [
    canonicalJson({ kneeline: 'timeline', format: TIMELINE_FORMAT, ...headerOf(sorted) }),
  ];
  for (const entry of sorted) {
    lines.push(entry.line);
  }
  const body = `${lines.join('\n')}\n`;
  const end = canonicalJson({
    kneeline: 'end',
    count: sorted.length,
    heads: headsOf(sorted),
    digest: digestOf(sorted),
  });
  return `${body}${end}\n`;
}

/** SHA-256 of the entries' ids in file order, joined by LF: one fingerprint for two tablets to compare. */
export function digestOf(entries: readonly Entry[]): string {
  return hashLine(entries.map((entry) => entry.id).join('\n'));
}

/** @throws RangeError when there is no entry, or when entries of two flights are mixed */
export function headerOf(entries: readonly Entry[]): TimelineHeader {
  const first = entries[0];
  if (first === undefined) {
    throw new RangeError('a timeline file needs at least one entry, got none');
  }
  const stranger = entries.find((entry) => entry.flight !== first.flight);
  if (stranger !== undefined) {
    throw new RangeError(
      `a timeline file holds one flight, got ${first.flight} and ${stranger.flight}`,
    );
  }
  for (const entry of entries) {
    if (entry.kind === 'flightOpened') {
      const { title, nature, date } = entry.body;
      return { flight: first.flight, title, nature, date };
    }
  }
  return { flight: first.flight, title: '', nature: 'flight', date: '' };
}

/** The entries that no other entry follows: one a recorder, more where it forked. */
export function headsOf(entries: readonly Entry[]): readonly TimelineHead[] {
  const followed = new Set(entries.map((entry) => entry.prev));
  return entries
    .filter((entry) => !followed.has(entry.id))
    .toSorted(compareEntries)
    .map((entry) => ({ rec: entry.rec, seq: entry.seq, hash: entry.id }));
}
