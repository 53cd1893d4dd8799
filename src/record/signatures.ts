import type { EntryId, EpochMs, RecorderId } from './brand.ts';
import type { Entry } from './entry.ts';
import type { FlightView } from './flight.ts';
import type { StandingEntry } from './flightState.ts';
import { headCode, readCode } from './headCode.ts';

/** A version that a signature froze: what it names, and what came after. */
export interface SignedVersion {
  readonly by: EntryId;
  readonly at: EpochMs;
  readonly signedBy: readonly string[];
  /** What the signature itself names as open. */
  readonly openItems: readonly string[];
  /** Of the signature, whose hash holds the heads that it names and all that leads to them. */
  readonly code: string;
  /** How many entries the version holds, the signature among them. */
  readonly entryCount: number;
  /** Heads that it names and that are not here: another copy holds them. */
  readonly missing: readonly { readonly rec: string; readonly seq: number }[];
  /** What was written about the flight after it, in order of writing; it stands beside the version and not in it. */
  readonly addenda: readonly StandingEntry[];
}

/** Every standing signature, oldest first. */
export function signedVersions(view: FlightView): readonly SignedVersion[] {
  return view.state.signed.flatMap(({ by, at, signedBy }): readonly SignedVersion[] => {
    const entry = view.byId(by)?.entry;
    if (entry?.kind !== 'logSigned') return [];
    const { heads, openItems } = entry.body;
    const frozen = leadingTo(view, [by, ...heads.map(({ hash }) => hash)]);
    return [
      {
        by,
        at,
        signedBy,
        openItems,
        code: headCode([by]),
        entryCount: frozen.size,
        missing: heads
          .filter(({ hash }) => view.byId(hash) === undefined)
          .map(({ rec, seq }) => ({ rec, seq })),
        addenda: view.standing
          .filter((one) => !frozen.has(one.entry.id) && isAboutFlight(one.entry))
          .toSorted((a, b) => a.entry.ord - b.entry.ord),
      },
    ];
  });
}

/** Every entry on the way back from these, those that are here. */
function leadingTo(view: FlightView, ids: readonly EntryId[]): ReadonlySet<EntryId> {
  const found = new Set<EntryId>();
  for (const id of ids) {
    let entry = view.byId(id)?.entry;
    while (entry !== undefined && !found.has(entry.id)) {
      found.add(entry.id);
      entry = entry.prev === null ? undefined : view.byId(entry.prev)?.entry;
    }
  }
  return found;
}

/** Not what a tablet writes about itself, and not another signature. */
function isAboutFlight({ kind }: Entry): boolean {
  switch (kind) {
    case 'logSigned':
    case 'headWitnessed':
    case 'recorderJoined':
    case 'deviceNoted':
      return false;
    default:
      return true;
  }
}

/** What a code heard from somebody else says about their record and this one. */
export type CodeHeard =
  | { readonly kind: 'notACode' }
  /** Both hold the same entries. */
  | { readonly kind: 'same' }
  /** They hold a version that was signed; here are `more` entries beside it. */
  | { readonly kind: 'signed'; readonly version: SignedVersion; readonly more: number }
  /** They end at an entry that is here and not the last: this record holds more than theirs of that recorder. */
  | { readonly kind: 'earlier'; readonly rec: RecorderId; readonly seq: number }
  /** They hold something that is not here, or a code was misheard. */
  | { readonly kind: 'unknown' };

/** @param heads of the record as it stands here */
export function codeHeard(view: FlightView, heads: readonly EntryId[], typed: string): CodeHeard {
  const code = readCode(typed);
  if (code === null) return { kind: 'notACode' };
  if (heads.length > 0 && code === headCode(heads)) return { kind: 'same' };
  const version = signedVersions(view).find((one) => one.code === code);
  if (version !== undefined) {
    return { kind: 'signed', version, more: view.standing.length - version.entryCount };
  }
  const end = view.standing.find(({ entry }) => headCode([entry.id]) === code)?.entry;
  return end === undefined ? { kind: 'unknown' } : { kind: 'earlier', rec: end.rec, seq: end.seq };
}
