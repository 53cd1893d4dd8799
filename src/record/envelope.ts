import * as v from 'valibot';
import {
  type EntryId,
  type EpochMs,
  type FlightId,
  isEntryId,
  isEpochMs,
  isFlightId,
  isRecorderId,
  type RecorderId,
} from './brand.ts';
import type { Entry, KnownEntry } from './entry.ts';
import { bodySchemas, type KnownKind } from './kinds.ts';
import { bad, good, type Result } from './result.ts';

/** Why a line is no entry. Positions and fields are given so that a person can find the place. */
export type EntryFault =
  | { readonly reason: 'tooLong'; readonly bytes: number; readonly limitBytes: number }
  | { readonly reason: 'tooDeep'; readonly limit: number }
  | { readonly reason: 'notJson' }
  /** Valid JSON, but not written as the record writes it: something rewrote the line. `at` is the first differing character. */
  | { readonly reason: 'notCanonical'; readonly at: number }
  | { readonly reason: 'forbiddenKey'; readonly key: string }
  | { readonly reason: 'newerVersion'; readonly found: number; readonly readable: number }
  | { readonly reason: 'envelopeUnfit'; readonly field: string }
  | { readonly reason: 'bodyUnfit'; readonly kind: KnownKind; readonly field: string };

/** Version of the envelope that this release writes and reads; it rises only when the hash rule changes. */
export const ENVELOPE_VERSION = 1;

interface WrittenFields {
  readonly v: typeof ENVELOPE_VERSION;
  readonly flight: FlightId;
  readonly rec: RecorderId;
  readonly seq: number;
  readonly prev: EntryId | null;
  readonly ord: number;
  readonly wall: EpochMs;
  readonly mono: number;
  readonly boot: string;
  readonly author: string;
  readonly role: string;
  readonly kind: string;
  readonly body: unknown;
}

const isText =
  (limit: number, least = 0) =>
  (value: unknown): boolean =>
    typeof value === 'string' && value.length >= least && value.length <= limit;

/** Checked by hand: every line of a file comes through here, and twelve fields by schema cost as much as its hash. */
const FITS: Readonly<Record<keyof WrittenFields, (value: unknown) => boolean>> = {
  v: (value) => value === ENVELOPE_VERSION,
  flight: isFlightId,
  rec: isRecorderId,
  seq: (value) => Number.isSafeInteger(value) && Number(value) >= 1,
  prev: (value) => value === null || isEntryId(value),
  ord: Number.isSafeInteger,
  wall: isEpochMs,
  mono: Number.isFinite,
  boot: isText(64),
  author: isText(200),
  role: isText(200),
  kind: isText(100, 1),
  body: (value) => value !== undefined,
};
const FIELDS = Object.entries(FITS);

function isWritten(value: object): value is WrittenFields {
  return FIELDS.every(([field, fits]) => fits(Reflect.get(value, field)));
}

function firstUnfit(value: object): string {
  return FIELDS.find(([field, fits]) => !fits(Reflect.get(value, field)))?.[0] ?? '';
}

/**
 * What a parsed line says, as an entry. `value` must be what `line` reads as, and `id` the line's hash; callers are the
 * two doors, `parseEntry` and `sealEntry`. A kind from a newer release comes back as `unrecognised`; fields that this
 * release does not know stay in `line` and are not read.
 */
export function entryFrom(value: unknown, line: string, id: EntryId): Result<Entry, EntryFault> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return bad({ reason: 'envelopeUnfit', field: '' });
  }
  const version = 'v' in value ? value.v : undefined;
  if (typeof version === 'number' && version > ENVELOPE_VERSION) {
    return bad({ reason: 'newerVersion', found: version, readable: ENVELOPE_VERSION });
  }
  if (!isWritten(value)) {
    return bad({ reason: 'envelopeUnfit', field: firstUnfit(value) });
  }
  const { flight, rec, seq, prev, ord, wall, mono, boot, author, role, kind } = value;
  const envelope = { v: value.v, flight, rec, seq, prev, ord, wall, mono, boot, author, role };
  if (!isKnownKind(kind)) {
    return good({
      ...envelope,
      kind: 'unrecognised',
      writtenKind: kind,
      raw: value.body,
      id,
      line,
    });
  }
  const body = bodyFrom(kind, value.body);
  if (!body.ok) {
    return bad({ reason: 'bodyUnfit', kind, field: body.error });
  }
  return good(joined({ ...envelope, kind, body: body.value, id, line }));
}

/** The body of an amended entry, checked like any other; the error is the dotted path of the first field that does not fit. */
export function bodyFrom(kind: KnownKind, raw: unknown): Result<KnownEntry['body'], string> {
  const read = v.safeParse(bodySchemas[kind], raw, { abortEarly: true });
  return read.success ? good(read.output) : bad(pathOf(read.issues));
}

/** The same entry with another body of its kind; `body` must come from `bodyFrom` for that kind. */
export function withBody(entry: KnownEntry, body: KnownEntry['body']): KnownEntry {
  return joined({ ...entry, body });
}

type Loose = Omit<KnownEntry, 'kind' | 'body'> & Pick<KnownEntry, 'kind' | 'body'>;

/** @throws RangeError when the kind is not one of ours */
function joined(candidate: Loose): KnownEntry {
  if (!belongTogether(candidate)) {
    throw new RangeError(`a kind must be known, got ${candidate.kind}`);
  }
  return candidate;
}

/**
 * Kind and body belong together because `bodyFrom` chose the schema by the kind. TypeScript cannot follow that through
 * a lookup, so this guard says it; checking the body a second time would double the cost of reading a file.
 */
function belongTogether(candidate: Loose): candidate is KnownEntry {
  return isKnownKind(candidate.kind);
}

function isKnownKind(kind: string): kind is KnownKind {
  return Object.hasOwn(bodySchemas, kind);
}

interface Issue {
  readonly path?: readonly { readonly key: unknown }[] | undefined;
}

function pathOf(issues: readonly Issue[]): string {
  return (issues[0]?.path ?? []).map((step) => String(step.key)).join('.');
}
