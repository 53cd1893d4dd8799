import type { EntryId } from './brand.ts';
import { canonicalJson } from './canonical.ts';
import type { Entry, EntryOf } from './entry.ts';
import { bodyFrom, withBody } from './envelope.ts';
import { changedField, fieldAt } from './fieldPath.ts';
import { compareEntries } from './merge.ts';

export type Amendment = EntryOf<'entryAmended'>;

export interface Amended {
  readonly effective: Entry;
  readonly amendedBy: readonly EntryId[];
  readonly conflicts: readonly string[];
  readonly unapplied: readonly string[];
}

/**
 * Fields by which entries about entries are wired together. They cannot be amended: whether an amendment holds must not
 * depend on itself.
 */
const WIRING = ['target', 'replaces', 'changes', 'kept', 'other', 'verdict'] as const;

/**
 * The entry with every amendment applied: what an amendment knew comes before it, and of two that do not know each other
 * the one later in order of writing is shown. `amendments` are those in effect that name this entry.
 */
export function amended(entry: Entry, amendments: readonly Amendment[]): Amended {
  if (amendments.length === 0) {
    return { effective: entry, amendedBy: [], conflicts: [], unapplied: [] };
  }
  const ordered = inOrder(amendments);
  let effective = entry;
  const unapplied = new Set<string>();
  for (const amendment of ordered) {
    const next = withChanges(effective, amendment);
    if (next === null) {
      amendment.body.changes.forEach((change) => unapplied.add(change.field));
    } else {
      effective = next;
    }
  }
  return {
    effective,
    amendedBy: ordered.map((amendment) => amendment.id),
    conflicts: conflictsAmong(ordered),
    unapplied: [...unapplied],
  };
}

/** All changes of one amendment or none: two swapped engines must not end as one. `null` when the body would not fit its kind. */
function withChanges(entry: Entry, amendment: Amendment): Entry | null {
  if (entry.kind === 'unrecognised') {
    return null;
  }
  let body: unknown = entry.body;
  for (const { field, new: value } of amendment.body.changes) {
    if (WIRING.some((wired) => field === wired || field.startsWith(`${wired}.`))) {
      return null;
    }
    const changed = changedField(body, field, value);
    if (!changed.ok) {
      return null;
    }
    body = changed.value;
  }
  const read = bodyFrom(entry.kind, body);
  return read.ok ? withBody(entry, read.value) : null;
}

/** What an amendment replaces comes before it; otherwise order of writing. */
function inOrder(amendments: readonly Amendment[]): readonly Amendment[] {
  const waiting = [...amendments].sort(compareEntries);
  const ids = new Set(waiting.map((amendment) => amendment.id));
  const done = new Set<EntryId>();
  const ordered: Amendment[] = [];
  while (waiting.length > 0) {
    // The first in order of writing is nearly always ready; only a clock that went back makes one wait.
    const ready = waiting.findIndex((amendment) =>
      amendment.body.replaces.every((id) => !ids.has(id) || done.has(id)),
    );
    const [next] = waiting.splice(Math.max(ready, 0), 1);
    if (next !== undefined) {
      done.add(next.id);
      ordered.push(next);
    }
  }
  return ordered;
}

/**
 * Fields on which amendments that do not know each other differ. An amendment speaks for a field as long as no later
 * one that knew it, directly or through others, set that field too.
 */
function conflictsAmong(amendments: readonly Amendment[]): readonly string[] {
  if (amendments.length < 2) {
    return [];
  }
  const byId = new Map(amendments.map((amendment) => [amendment.id, amendment]));
  const fields = new Set(
    amendments.flatMap(({ body }) => body.changes.map((change) => change.field)),
  );
  return [...fields].filter((field) => {
    const setters = amendments.filter((amendment) => valueFor(amendment, field) !== undefined);
    const known = knownTo(setters, byId);
    const said = setters
      .filter((amendment) => !known.has(amendment.id))
      .map((amendment) => valueFor(amendment, field));
    return new Set(said).size > 1;
  });
}

/** Everything that the given amendments replace, directly or through others. */
function knownTo(
  setters: readonly Amendment[],
  byId: ReadonlyMap<EntryId, Amendment>,
): ReadonlySet<EntryId> {
  const known = new Set<EntryId>();
  const queue = setters.flatMap((amendment) => [...amendment.body.replaces]);
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    const amendment = byId.get(id);
    if (amendment !== undefined && !known.has(id)) {
      known.add(id);
      queue.push(...amendment.body.replaces);
    }
  }
  return known;
}

/** Canonical text of what the amendment makes of `field`, directly or through a row above it; `undefined` when it does not touch it. */
function valueFor(amendment: Amendment, field: string): string | undefined {
  const change = amendment.body.changes.findLast(
    (candidate) => field === candidate.field || field.startsWith(`${candidate.field}.`),
  );
  if (change === undefined) {
    return undefined;
  }
  const rest = field.slice(change.field.length + 1);
  return canonicalJson(rest === '' ? change.new : (fieldAt(change.new, rest) ?? null));
}
