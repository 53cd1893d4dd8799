import type { EntryId, EpochMs } from '../../../record/brand.ts';
import type { FlightView } from '../../../record/flight.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
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
  /** Letters that the words, the author or the number must hold; empty lets all through. */
  readonly words: string;
}

export const EVERY_ROW: Filter = { lane: 'all', words: '' };

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

export function filtered(rows: readonly Row[], filter: Filter): readonly Row[] {
  const wanted = filter.words.trim().toLowerCase();
  return rows.filter(
    (row) =>
      isInLane(row.lane, filter.lane) &&
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
