import type { EntryId, RecorderId } from '../record/brand.ts';
import type { Entry, EntryOf, KnownEntry } from '../record/entry.ts';
import type { FlightView } from '../record/flight.ts';
import type { StandingEntry } from '../record/flightState.ts';
import { WINGS, type FlightSheet } from '../record/sheet.ts';
import { timeDoubtS } from './encounters/timeDoubt.ts';

/** What two recorders wrote of what may be one thing: the same kind, the same wing or panel, close in time. */
export interface ObservationPair {
  /** In order of event time. */
  readonly first: StandingEntry;
  readonly second: StandingEntry;
  /** Wings, panels or points that both speak of; empty where the kind is about the whole aircraft. */
  readonly subjects: readonly string[];
  /** Second less first, in seconds. */
  readonly apartS: number;
  /** What a person made of it; null while nobody has. */
  readonly decided: PairDecision | null;
}

export interface PairDecision {
  /** The one that stands alone; null where both do. */
  readonly standsAlone: EntryId | null;
  readonly reason: string;
  readonly author: string;
  readonly role: string;
  readonly by: EntryId;
}

/** People look at their watches half a minute apart at most. Common practice, no source; the fold asks about panels alike. */
const CLOSE_S = 30;

type Decision = EntryOf<'observationsResolved'>;

/**
 * Every pair, in order of time. An entry stands in at most one pair with each other recorder: with the nearest. Two
 * readings of one gauge are two readings, and words of two people are two notes: neither makes a pair.
 */
export function observationPairs(view: FlightView): readonly ObservationPair[] {
  const { sheet } = view.state;
  const seen = view.standing.filter(
    ({ effective, standing, withdrawnBy }) =>
      isObservation(effective) &&
      (standing === 'stands' || (withdrawnBy !== null && isDecision(view, withdrawnBy))),
  );
  if (new Set(seen.map(({ entry }) => entry.rec)).size < 2) {
    return [];
  }
  const decisions = decisionsOf(view);
  return nearest(candidates(view, sheet, seen))
    .map((pair) => ({ ...pair, decided: decisionOn(decisions, pair) }))
    .toSorted((a, b) => a.first.at - b.first.at);
}

type Candidate = Omit<ObservationPair, 'decided'>;

function candidates(
  view: FlightView,
  sheet: FlightSheet | null,
  seen: readonly StandingEntry[],
): readonly Candidate[] {
  const byKind = new Map<string, StandingEntry[]>();
  for (const standing of seen) {
    const alike = byKind.get(standing.entry.kind) ?? [];
    byKind.set(standing.entry.kind, alike);
    alike.push(standing);
  }
  return [...byKind.values()].flatMap((alike) => candidatesOf(view, sheet, alike));
}

/** @param alike in order of time */
function candidatesOf(
  view: FlightView,
  sheet: FlightSheet | null,
  alike: readonly StandingEntry[],
): readonly Candidate[] {
  const doubts = alike.map((one) => doubtS(view, sheet, one));
  const widestS = doubts.reduce((most, own) => Math.max(most, own), 0);
  const found: Candidate[] = [];
  for (const [index, first] of alike.entries()) {
    for (let next = index + 1; next < alike.length; next += 1) {
      const second = alike[next];
      if (second === undefined) break;
      const apartS = (second.at - first.at) / 1000;
      if (apartS > closeS(widestS, widestS)) break;
      const subjects = shared(first.effective, second.effective, sheet);
      if (
        first.entry.rec !== second.entry.rec &&
        subjects !== null &&
        apartS <= closeS(doubts[index] ?? 0, doubts[next] ?? 0)
      ) {
        found.push({ first, second, subjects, apartS });
      }
    }
  }
  return found;
}

/** Within half a minute, or within twice the joined doubt of the two times where that is more. */
function closeS(oneS: number, otherS: number): number {
  return Math.max(CLOSE_S, 2 * Math.hypot(oneS, otherS));
}

function doubtS(view: FlightView, sheet: FlightSheet | null, { effective, at }: StandingEntry) {
  const own = effective.kind === 'unrecognised' ? null : (effective.body.doubtS ?? null);
  return sheet === null
    ? (own ?? 0)
    : timeDoubtS(view, sheet, { at, doubtS: own, by: effective.id });
}

/** The closest pairs first; what already has a partner on that recorder takes no second. */
function nearest(all: readonly Candidate[]): readonly Candidate[] {
  const taken = new Set<string>();
  const key = (entry: Entry, rec: RecorderId): string => `${entry.id} ${rec}`;
  return all
    .toSorted((a, b) => a.apartS - b.apartS)
    .filter(({ first: { entry: one }, second: { entry: other } }) => {
      const keys = [key(one, other.rec), key(other, one.rec)];
      const isFree = keys.every((each) => !taken.has(each));
      if (isFree) keys.forEach((each) => taken.add(each));
      return isFree;
    });
}

function decisionsOf(view: FlightView): readonly Decision[] {
  return view.standing
    .flatMap(({ effective, standing }) =>
      standing === 'stands' && effective.kind === 'observationsResolved' ? [effective] : [],
    )
    .toSorted((a, b) => a.ord - b.ord);
}

function isDecision(view: FlightView, id: EntryId): boolean {
  return view.byId(id)?.entry.kind === 'observationsResolved';
}

function decisionOn(decisions: readonly Decision[], pair: Candidate): PairDecision | null {
  const ids = [pair.first.entry.id, pair.second.entry.id];
  const last = decisions.findLast(
    ({ body }) => ids.includes(body.target) && ids.includes(body.other),
  );
  return last === undefined
    ? null
    : {
        standsAlone: last.body.verdict === 'otherStands' ? last.body.other : null,
        reason: last.body.reason,
        author: last.author,
        role: last.role,
        by: last.id,
      };
}

/** What both speak of; null where they speak of different things. */
function shared(one: Entry, other: Entry, sheet: FlightSheet | null): readonly string[] | null {
  const mine = subjectsOf(one, sheet);
  const theirs = subjectsOf(other, sheet);
  if (mine.length === 0 && theirs.length === 0) return [];
  const both = mine.filter((subject) => theirs.includes(subject));
  return both.length === 0 ? null : both;
}

function isObservation(entry: Entry): entry is KnownEntry {
  return entry.kind !== 'unrecognised' && OBSERVED.has(entry.kind);
}

/** What a person sees or hears happen to the aircraft and its wing. */
const OBSERVED: ReadonlySet<KnownEntry['kind']> = new Set([
  'engineStarted',
  'engineShutDown',
  'blocksOff',
  'blocksOn',
  'takeOffRolled',
  'liftedOff',
  'touchedDown',
  'gearMoved',
  'coversReleased',
  'legStarted',
  'turnStarted',
  'turnEnded',
  'levelledOff',
  'descentBegun',
  'conditionReached',
  'conditionLost',
  'suctionUnitSwitched',
  'suctionTurnedOn',
  'suctionChanged',
  'suctionTurnedOff',
  'throttleChanged',
  'testPointStarted',
  'testPointEnded',
  'testPointInterrupted',
  'testPointTerminated',
  'stopCalled',
  'probesRead',
  'rakeRead',
  'panelStateCalled',
  'laminarGained',
  'laminarLost',
  'moistureSighted',
  'moistureEntered',
  'moistureExited',
  'samplerOpened',
  'samplerClosed',
  'turbulenceEntered',
  'turbulenceExited',
]);

function subjectsOf(entry: Entry, sheet: FlightSheet | null): readonly string[] {
  switch (entry.kind) {
    case 'panelStateCalled':
      return [entry.body.panel];
    case 'probesRead':
      return WINGS.filter((wing) => entry.body.wings?.[wing] !== undefined);
    case 'laminarGained':
    case 'laminarLost':
      return wingsOf(entry.body, sheet);
    case 'coversReleased':
    case 'suctionTurnedOn':
    case 'suctionChanged':
    case 'suctionTurnedOff':
      return entry.body.wing === 'both' ? WINGS : [entry.body.wing];
    case 'rakeRead':
      return [`${entry.body.wing} ${entry.body.rake}`];
    case 'gearMoved':
      return [entry.body.to];
    case 'testPointStarted':
    case 'testPointEnded':
    case 'testPointInterrupted':
    case 'testPointTerminated':
      return [entry.body.point];
    default:
      return [];
  }
}

/** A loss that names neither wing nor panel may be of either wing. */
function wingsOf(
  { wings, panels = [] }: EntryOf<'laminarLost'>['body'],
  sheet: FlightSheet | null,
): readonly string[] {
  const named = WINGS.filter(
    (wing) =>
      wings?.[wing] !== undefined ||
      panels.some((id) => sheet?.panels.some((panel) => panel.id === id && panel.wing === wing)),
  );
  return named.length === 0 ? WINGS : named;
}
