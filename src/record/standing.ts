import type { EntryId } from './brand.ts';
import { amended, type Amendment, type Amended } from './amend.ts';
import type { Entry, EntryOf } from './entry.ts';
import type { StandingEntry } from './flightState.ts';
import { compareEntries } from './merge.ts';

/** How an entry stands, apart from its place in time. */
export interface Standing extends Amended {
  readonly entry: Entry;
  readonly standing: StandingEntry['standing'];
  readonly withdrawnBy: EntryId | null;
}

/** The entries that change how another entry stands. */
export type AboutEntry = EntryOf<
  'entryAmended' | 'entryWithdrawn' | 'unconfirmedSettled' | 'observationsResolved'
>;

function isAboutEntry(entry: Entry): entry is AboutEntry {
  return (
    entry.kind === 'entryAmended' ||
    entry.kind === 'entryWithdrawn' ||
    entry.kind === 'unconfirmedSettled' ||
    entry.kind === 'observationsResolved'
  );
}

/** Which entries it may change: a decision between two observations has a say in both. */
function namedBy({ body, kind }: AboutEntry): readonly EntryId[] {
  return kind === 'observationsResolved' && body.other !== body.target
    ? [body.target, body.other]
    : [body.target];
}

/**
 * How `entry` stands when `about` are the entries in effect that name it. Withdrawing outweighs the rest, giving way to
 * another recorder's observation is withdrawn by that decision; an entry that may not have been meant waits until it is kept or dropped, the latest answer in order of writing counting.
 */
function standingOf(entry: Entry, about: readonly AboutEntry[]): Standing {
  const amendments = about.filter((one): one is Amendment => one.kind === 'entryAmended');
  const change = amended(entry, amendments);
  const withdrawal =
    earliest(about.filter((one) => one.kind === 'entryWithdrawn')) ?? gaveWay(entry, about);
  if (withdrawal !== null) {
    return { entry, ...change, standing: 'withdrawn', withdrawnBy: withdrawal.id };
  }
  return { entry, ...change, standing: unsettled(change.effective, about), withdrawnBy: null };
}

/** The decision by which this entry gives way. Of several about one pair the latest in order of writing counts. */
function gaveWay(
  entry: Entry,
  about: readonly AboutEntry[],
): EntryOf<'observationsResolved'> | null {
  const byPartner = new Map<EntryId, EntryOf<'observationsResolved'>>();
  const decisions = about.filter((one) => one.kind === 'observationsResolved');
  for (const decision of decisions.sort(compareEntries)) {
    const { target, other } = decision.body;
    byPartner.set(target === entry.id ? other : target, decision);
  }
  byPartner.delete(entry.id);
  const against = [...byPartner.values()].filter(
    ({ body }) => body.verdict === 'otherStands' && body.target === entry.id,
  );
  return earliest(against);
}

function unsettled(effective: Entry, about: readonly AboutEntry[]): StandingEntry['standing'] {
  if (effective.kind === 'unrecognised' || effective.body.unconfirmed === undefined) {
    return 'stands';
  }
  const answers = about.filter((one) => one.kind === 'unconfirmedSettled').sort(compareEntries);
  const answer = answers.at(-1);
  if (answer === undefined) {
    return 'unconfirmed';
  }
  return answer.body.kept ? 'stands' : 'dropped';
}

function earliest<E extends Entry>(entries: readonly E[]): E | null {
  return entries.reduce<E | null>(
    (least, entry) => (least === null || compareEntries(entry, least) < 0 ? entry : least),
    null,
  );
}

/** Every entry known, and how it stands. Entries arrive in any order; a target may come after what names it. */
export interface Standings {
  /** Takes in entries not known yet and gives all whose standing changed by that, the new ones among them. */
  readonly add: (entries: readonly Entry[]) => ReadonlySet<EntryId>;
  readonly get: (id: EntryId) => Standing | undefined;
}

export function startStandings(): Standings {
  const entries = new Map<EntryId, Entry>();
  const standings = new Map<EntryId, Standing>();
  const naming = new Map<EntryId, AboutEntry[]>();

  /** Only an entry that stands itself has a say; one withdrawn takes its word back. */
  const inEffect = (one: AboutEntry): boolean => standings.get(one.id)?.standing === 'stands';

  const add = (given: readonly Entry[]): ReadonlySet<EntryId> => {
    const fresh = new Map<EntryId, Entry>();
    for (const entry of given) {
      if (!entries.has(entry.id)) {
        fresh.set(entry.id, entry);
      }
    }
    for (const entry of fresh.values()) {
      entries.set(entry.id, entry);
      if (isAboutEntry(entry)) {
        for (const target of namedBy(entry)) {
          const others = naming.get(target);
          if (others === undefined) {
            naming.set(target, [entry]);
          } else {
            others.push(entry);
          }
        }
      }
    }
    return settle([...fresh.values()]);
  };

  /**
   * Works from the new entries to what they name, round by round. It ends because an entry can name only what was
   * written before it: a hash cannot name the future. The latest come first, so that most entries are judged once.
   */
  const settle = (fresh: readonly Entry[]): ReadonlySet<EntryId> => {
    const changed = new Set<EntryId>();
    let round: Iterable<Entry> = fresh.toSorted((a, b) => compareEntries(b, a));
    for (let going = fresh.length > 0; going;) {
      const next = new Map<EntryId, Entry>();
      for (const entry of round) {
        const had = standings.get(entry.id)?.standing === 'stands';
        const has = judge(entry).standing === 'stands';
        changed.add(entry.id);
        next.delete(entry.id);
        for (const id of isAboutEntry(entry) && had !== has ? namedBy(entry) : []) {
          const target = entries.get(id);
          // A target not judged yet is new itself and comes later in this round.
          if (target !== undefined && standings.has(id)) {
            next.set(id, target);
          }
        }
      }
      round = next.values();
      going = next.size > 0;
    }
    return changed;
  };

  const judge = (entry: Entry): Standing => {
    const about = naming.get(entry.id)?.filter(inEffect) ?? [];
    const standing = standingOf(entry, about);
    standings.set(entry.id, standing);
    return standing;
  };

  return { add, get: (id) => standings.get(id) };
}
