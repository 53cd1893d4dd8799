import type * as v from 'valibot';
import type { EntryId, EpochMs, FlightId, Immutable, RecorderId } from './brand.ts';
import type { readingSchema, wingProbesSchema } from './bodyParts.ts';
import type { bodySchemas, KnownKind } from './kinds.ts';

/** The body of one kind, as written. */
export type Body<Kind extends KnownKind> = Immutable<v.InferOutput<(typeof bodySchemas)[Kind]>>;

export type Reading = Immutable<v.InferOutput<typeof readingSchema>>;
export type WingProbes = Immutable<v.InferOutput<typeof wingProbesSchema>>;

/** When a finger touched, by the only clock. */
export interface Stamp {
  /** Tablet wall clock at first contact, raw. */
  readonly wall: EpochMs;
  /** Monotonic milliseconds of this page load at first contact, to 0.1 ms. */
  readonly mono: number;
  /** New for every page load: says which monotonic clock `mono` belongs to. */
  readonly boot: string;
}

/** Who holds the pen. */
export interface Author {
  readonly author: string;
  readonly role: string;
}

interface Envelope extends Stamp, Author {
  readonly v: 1;
  readonly flight: FlightId;
  readonly rec: RecorderId;
  /** 1..n without a gap in each recorder. */
  readonly seq: number;
  /** Id of this recorder's entry before; `null` at seq 1. */
  readonly prev: EntryId | null;
  /** max(previous + 1, wall): rises strictly in each recorder even when its clock goes back. */
  readonly ord: number;
}

/** One line of the record: its exact bytes, what they say, and the hash that names it. */
interface Written {
  readonly id: EntryId;
  /** The canonical JSON text, kept and shipped as it is; verifying never writes it anew. */
  readonly line: string;
}

export type KnownEntry = {
  readonly [Kind in KnownKind]: Envelope &
    Written & { readonly kind: Kind; readonly body: Body<Kind> };
}[KnownKind];

/** An entry of a kind from a newer release: kept, merged and shown, never dropped. */
export type UnrecognisedEntry = Envelope &
  Written & { readonly kind: 'unrecognised'; readonly writtenKind: string; readonly raw: unknown };

export type Entry = KnownEntry | UnrecognisedEntry;
export type EntryOf<Kind extends KnownKind> = Extract<KnownEntry, { readonly kind: Kind }>;

/** What a screen hands to the journal; the journal adds recorder, number, hash of the one before and order key. */
export type Draft = {
  readonly [Kind in KnownKind]: {
    readonly kind: Kind;
    readonly body: Body<Kind>;
    readonly stamp: Stamp;
  };
}[KnownKind];

/** Closes a switch over a closed union: a forgotten member fails to compile. */
export function unreachable(value: never): never {
  throw new Error(`not a member of the union: ${JSON.stringify(value)}`);
}
