import type { EntryId, EpochMs } from '../../../record/brand.ts';
import type { Entry } from '../../../record/entry.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { kindWords } from '../../../record/kindWords.ts';
import { entryWords } from '../../../record/lang.ts';
import { doubtOf, isStruck } from '../standing.ts';
import type { TimeBase } from '../timeBase.ts';
import { laneOf, type LaneId } from '../timeline/lanes.ts';

/** One entry of the table. The words are worked out when they are asked for: of many rows few are seen. */
export interface Row {
  readonly standing: StandingEntry;
  readonly id: EntryId;
  readonly at: EpochMs;
  readonly lane: LaneId;
  readonly doubtS: number | null;
  readonly words: () => string;
}

export type SortColumn = 'time' | 'entry' | 'doubt' | 'author';
export interface Sort {
  readonly column: SortColumn;
  readonly ascending: boolean;
}

export interface Filter {
  readonly lane: LaneId | 'all' | 'panels';
  readonly kind: Entry['kind'] | 'all';
  /** Who wrote it; null lets everybody's through. */
  readonly author: string | null;
  /** Letters that the words, the author or the number must hold; empty lets all through. */
  readonly words: string;
}

export const EVERY_ROW: Filter = { lane: 'all', kind: 'all', author: null, words: '' };

function isEveryRow(filter: Filter): boolean {
  return countOfFilters(filter) === 0 && filter.words.trim() === '';
}

/** How many of lane, kind and author are narrowed. */
export function countOfFilters({ lane, kind, author }: Filter): number {
  return [lane !== 'all', kind !== 'all', author !== null].filter(Boolean).length;
}

/** As many rows as marks: every entry that stands, in order of time. */
export function rowsOf(view: FlightView, base: TimeBase): readonly Row[] {
  const { sheet } = view.state;
  return view.standing
    .filter((standing) => !isStruck(standing))
    .map((standing) => {
      let words: string | null = null;
      return {
        standing,
        id: standing.entry.id,
        at: base.shown(standing.at, standing.entry.rec),
        lane: laneOf(standing.effective, sheet),
        doubtS: doubtOf(standing, sheet),
        words: () => (words ??= entryWords(standing.effective, sheet)),
      };
    })
    .sort((a, b) => a.at - b.at);
}

/** The rows that fit, in their order; the same array where all do by default. */
export function filtered(rows: readonly Row[], filter: Filter): readonly Row[] {
  if (isEveryRow(filter)) {
    return rows;
  }
  const wanted = filter.words.trim().toLowerCase();
  return rows.filter(
    (row) =>
      isInLane(row.lane, filter.lane) &&
      (filter.kind === 'all' || row.standing.entry.kind === filter.kind) &&
      (filter.author === null || row.standing.entry.author === filter.author) &&
      (wanted === '' ||
        row.words().toLowerCase().includes(wanted) ||
        row.standing.entry.author.toLowerCase().includes(wanted) ||
        String(row.standing.entry.seq) === wanted),
  );
}

function isInLane(lane: LaneId, wanted: Filter['lane']): boolean {
  return wanted === 'all' || lane === wanted || (wanted === 'panels' && lane.startsWith('panel:'));
}

/** Stable: rows that are equal in the column keep their order of time. */
export function sorted(rows: readonly Row[], { column, ascending }: Sort): readonly Row[] {
  if (column === 'time') {
    return ascending ? rows : rows.toReversed();
  }
  const sign = ascending ? 1 : -1;
  return rows.toSorted((a, b) => sign * compare(a, b, column));
}

function compare(a: Row, b: Row, column: Exclude<SortColumn, 'time'>): number {
  switch (column) {
    case 'entry':
      return a.words().localeCompare(b.words());
    case 'doubt':
      return (a.doubtS ?? -1) - (b.doubtS ?? -1);
    case 'author':
      return a.standing.entry.author.localeCompare(b.standing.entry.author);
  }
}

/** What the rows can be narrowed to: only what occurs, in the order of words. */
export function choicesOf(rows: readonly Row[]): {
  readonly kinds: readonly { readonly kind: Entry['kind']; readonly words: string }[];
  readonly authors: readonly string[];
} {
  const kinds = [...new Set(rows.map(({ standing }) => standing.entry.kind))];
  const authors = [...new Set(rows.map(({ standing }) => standing.entry.author))];
  return {
    kinds: kinds
      .map((kind) => ({ kind, words: kindWords(kind) }))
      .toSorted((a, b) => a.words.localeCompare(b.words)),
    authors: authors.toSorted((a, b) => a.localeCompare(b)),
  };
}

/** By these a flight is found again: where it began and ended, its points, its cloud, its stops. */
const LANDMARKS: ReadonlySet<Entry['kind']> = new Set([
  'blocksOff',
  'takeOffRolled',
  'liftedOff',
  'levelledOff',
  'conditionReached',
  'suctionTurnedOn',
  'testPointStarted',
  'moistureEntered',
  'laminarLost',
  'stopCalled',
  'descentBegun',
  'touchedDown',
  'blocksOn',
]);
const LANDMARKS_AT_MOST = 200;

/** Events to jump to, in order of time; of very many the first. */
export function landmarksOf(rows: readonly Row[]): readonly Row[] {
  return rows
    .filter(({ standing }) => LANDMARKS.has(standing.entry.kind))
    .slice(0, LANDMARKS_AT_MOST);
}
