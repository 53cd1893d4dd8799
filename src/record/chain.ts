import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { entryId, type EntryId, type EpochMs, type FlightId, type RecorderId } from './brand.ts';
import { canonicalJson } from './canonical.ts';
import type { Author, Draft, Entry } from './entry.ts';
import { entryFrom, ENVELOPE_VERSION } from './envelope.ts';
import { compareEntries } from './merge.ts';

const DAY_MS = 86_400_000;

/** SHA-256 of the line's UTF-8 bytes. Synchronous, because awaiting a digest would end a database transaction. */
export function hashLine(line: string): EntryId {
  return hashBytes(utf8ToBytes(line));
}

export function hashBytes(bytes: Uint8Array): EntryId {
  return entryId(bytesToHex(sha256(bytes)));
}

export interface SealFields {
  readonly flight: FlightId;
  readonly rec: RecorderId;
  readonly seq: number;
  readonly prev: EntryId | null;
  readonly ord: number;
  readonly draft: Draft;
  readonly author: Author;
}

/**
 * Writes a draft as the next line of a recorder's chain. The entry is read back from the line, so what is in memory is
 * what the bytes say.
 * @throws RangeError when the draft does not fit its kind: that is a fault of the caller, not of the world
 */
export function sealEntry(fields: SealFields): Entry {
  const { flight, rec, seq, prev, ord, draft, author } = fields;
  const line = canonicalJson({
    v: ENVELOPE_VERSION,
    flight,
    rec,
    seq,
    prev,
    ord,
    wall: draft.stamp.wall,
    mono: draft.stamp.mono,
    boot: draft.stamp.boot,
    author: author.author,
    role: author.role,
    kind: draft.kind,
    body: draft.body,
  });
  const read = entryFrom(JSON.parse(line), line, hashLine(line));
  if (!read.ok) {
    throw new RangeError(`a draft must fit its kind: ${JSON.stringify(read.error)}`);
  }
  return read.value;
}

/**
 * Order key of a recorder's next entry: rises strictly in the recorder, follows its clock, and stays behind nothing it
 * has seen. Keys of others more than a day ahead of `now` are ignored, so that one bad clock cannot carry all the
 * others with it.
 *
 * @param seenOrd greatest key among entries of other recorders, `null` when there are none
 */
export function nextOrd(
  prevOrd: number | null,
  wall: EpochMs,
  seenOrd: number | null,
  now: EpochMs,
): number {
  const own = prevOrd === null ? wall : Math.max(prevOrd + 1, wall);
  return seenOrd === null || seenOrd > now + DAY_MS ? own : Math.max(own, seenOrd + 1);
}

/** What does not hold together in the chains of a flight. A cut tail cannot be seen from inside; witnesses show it. */
export type ChainFinding =
  /** Entries `fromSeq` to `toSeq`, both included, are missing before an entry that is there. */
  | {
      readonly kind: 'gap';
      readonly rec: RecorderId;
      readonly fromSeq: number;
      readonly toSeq: number;
    }
  /** One number, two contents: an image was restored or a profile copied. All are kept. */
  | {
      readonly kind: 'fork';
      readonly rec: RecorderId;
      readonly seq: number;
      readonly ids: readonly EntryId[];
    }
  /** The entry names a predecessor that is not the one here. */
  | {
      readonly kind: 'prevMismatch';
      readonly rec: RecorderId;
      readonly seq: number;
      readonly id: EntryId;
    }
  /** The entry says that it belongs to another flight than the earliest entry here. */
  | {
      readonly kind: 'flightMismatch';
      readonly rec: RecorderId;
      readonly seq: number;
      readonly id: EntryId;
    }
  /** The order key does not rise above that of the entry it follows. */
  | {
      readonly kind: 'ordNotRising';
      readonly rec: RecorderId;
      readonly seq: number;
      readonly id: EntryId;
    };

/** Every break, by recorder and sequence number. Reports and refuses nothing: what is there is still shown. */
export function checkChains(entries: readonly Entry[]): readonly ChainFinding[] {
  const first = entries.reduce<Entry | null>(
    (least, entry) => (least === null || compareEntries(entry, least) < 0 ? entry : least),
    null,
  );
  if (first === null) {
    return [];
  }
  const byRec = grouped(entries, (entry) => entry.rec);
  const recorders = [...byRec].sort(([a], [b]) => (a < b ? -1 : 1));
  return recorders.flatMap(([rec, own]) => checkRecorder(rec, own, first.flight));
}

function checkRecorder(
  rec: RecorderId,
  entries: readonly Entry[],
  flight: FlightId,
): readonly ChainFinding[] {
  if (isWhole(entries, flight)) {
    return [];
  }
  const findings: ChainFinding[] = [];
  const bySeq = [...grouped(entries, (entry) => entry.seq)].sort(([a], [b]) => a - b);
  let before: readonly Entry[] = [];
  let expected = 1;
  for (const [seq, found] of bySeq) {
    const here = distinct(found);
    if (seq > expected) {
      findings.push({ kind: 'gap', rec, fromSeq: expected, toSeq: seq - 1 });
      before = [];
    }
    if (here.length > 1) {
      findings.push({ kind: 'fork', rec, seq, ids: here.map((entry) => entry.id) });
    }
    for (const entry of here) {
      findings.push(...checkLink(entry, before, flight));
    }
    before = here;
    expected = seq + 1;
  }
  return findings;
}

/** Nearly every chain: each entry once, in order, from the first, each on the one before. Nothing more to look for. */
function isWhole(entries: readonly Entry[], flight: FlightId): boolean {
  let before: Entry | null = null;
  for (const entry of entries) {
    if (
      entry.seq !== (before?.seq ?? 0) + 1 ||
      entry.prev !== (before?.id ?? null) ||
      entry.flight !== flight ||
      (before !== null && entry.ord <= before.ord)
    ) {
      return false;
    }
    before = entry;
  }
  return true;
}

function checkLink(
  entry: Entry,
  before: readonly Entry[],
  flight: FlightId,
): readonly ChainFinding[] {
  const { rec, seq, id } = entry;
  const findings: ChainFinding[] = [];
  if (entry.flight !== flight) {
    findings.push({ kind: 'flightMismatch', rec, seq, id });
  }
  const follows = before.find((earlier) => earlier.id === entry.prev);
  if (seq === 1 ? entry.prev !== null : before.length > 0 && follows === undefined) {
    findings.push({ kind: 'prevMismatch', rec, seq, id });
  }
  if (follows !== undefined && entry.ord <= follows.ord) {
    findings.push({ kind: 'ordNotRising', rec, seq, id });
  }
  return findings;
}

function distinct(entries: readonly Entry[]): readonly Entry[] {
  return [...new Map(entries.map((entry) => [entry.id, entry])).values()].sort(compareEntries);
}

function grouped<Key>(
  entries: readonly Entry[],
  keyOf: (entry: Entry) => Key,
): ReadonlyMap<Key, readonly Entry[]> {
  const groups = new Map<Key, Entry[]>();
  for (const entry of entries) {
    const group = groups.get(keyOf(entry));
    if (group === undefined) {
      groups.set(keyOf(entry), [entry]);
    } else {
      group.push(entry);
    }
  }
  return groups;
}
