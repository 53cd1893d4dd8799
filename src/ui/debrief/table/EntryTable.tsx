import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import type { EntryId } from '../../../record/brand.ts';
import type { AxisTime } from '../axisTime.ts';
import { marksBeside } from '../standing.ts';
import { doubtWords } from '../timeWords.ts';
import styles from './EntryTable.module.css';
import { Filters } from './Filters.tsx';
import { sorted, type Filter, type Row, type Sort, type SortColumn } from './rows.ts';
import { Search } from './Search.tsx';
import { useSlice } from './useSlice.ts';

/** The whisker before a time, and the gap after it. */
const BESIDE_TIME_PX = 34;

/** Every entry that stands, as a table: the same marks as the chart, and the chosen one is the same in both. */
export function EntryTable(props: {
  readonly rows: readonly Row[];
  /** Those of them that fit the filter. */
  readonly listed: readonly Row[];
  readonly axis: AxisTime;
  readonly filter: Filter;
  readonly onFilter: (filter: Filter) => void;
  /** To the next entry that fits, earlier or later than the selected one. */
  readonly onStep: (way: 'earlier' | 'later') => void;
  readonly panels: readonly string[];
  readonly struckCount: number;
  readonly selected: EntryId | null;
  readonly onSelect: (entry: EntryId) => void;
}) {
  const { rows, listed, filter, onFilter, selected } = props;
  const [sort, setSort] = useState<Sort>({ column: 'time', ascending: true });
  const [isOpen, setOpen] = useState(false);
  const scroller = useRef<HTMLDivElement>(null);
  const shown = useMemo(() => sorted(listed, sort), [listed, sort]);
  const { first, count, rowPx, reveal } = useSlice({ scroller, total: shown.length });
  const chosen = shown.findIndex(({ id }) => id === selected);

  const revealLatest = useRef(reveal);
  useEffect(() => {
    revealLatest.current = reveal;
  });
  useEffect(() => {
    if (chosen >= 0) {
      revealLatest.current(chosen);
    }
  }, [chosen]);

  const countWords =
    shown.length === rows.length ? `${rows.length}` : `${shown.length} of ${rows.length}`;
  return (
    <section className={styles.entries} aria-label="Entries">
      {isOpen ? (
        <Filters
          rows={rows}
          axis={props.axis}
          filter={filter}
          panels={props.panels}
          onFilter={onFilter}
          onJump={props.onSelect}
        />
      ) : null}
      <div ref={scroller} className={styles.scroller}>
        <table className={styles.table} aria-rowcount={shown.length + 1}>
          <caption className={styles.offScreen}>
            Every entry of the flight that stands, times as {props.axis.head}.
            {props.struckCount === 0
              ? ''
              : ` ${props.struckCount} withdrawn entries are in the audit.`}
          </caption>
          <thead>
            <tr aria-rowindex={1} style={{ height: rowPx }}>
              <SortHead
                column="time"
                words={props.axis.head}
                widthPx={props.axis.labelPx + BESIDE_TIME_PX}
                sort={sort}
                onSort={setSort}
              />
              <SortHead
                column="entry"
                words="Entry"
                count={countWords}
                sort={sort}
                onSort={setSort}
              >
                <Search
                  filter={filter}
                  isOpen={isOpen}
                  onFilter={onFilter}
                  onStep={props.onStep}
                  onOpen={() => setOpen(!isOpen)}
                />
              </SortHead>
              <SortHead column="doubt" words="Doubt" sort={sort} onSort={setSort} />
              <SortHead column="author" words="By" sort={sort} onSort={setSort} />
              <th scope="col" className={styles.marks}>
                Marks
              </th>
            </tr>
          </thead>
          <tbody>
            <Gap rows={first} rowPx={rowPx} />
            {shown.slice(first, first + count).map((row, index) => (
              <EntryRow
                key={row.id}
                row={row}
                axis={props.axis}
                position={first + index}
                isSelected={row.id === selected}
                rowPx={rowPx}
                onSelect={props.onSelect}
              />
            ))}
            <Gap rows={shown.length - first - count} rowPx={rowPx} />
          </tbody>
        </table>
        {shown.length === 0 ? <p className={styles.none}>No entry fits this filter.</p> : null}
      </div>
    </section>
  );
}

function EntryRow(props: {
  readonly row: Row;
  readonly axis: AxisTime;
  readonly position: number;
  readonly isSelected: boolean;
  readonly rowPx: number;
  readonly onSelect: (entry: EntryId) => void;
}) {
  const { row, isSelected } = props;
  const { entry } = row.standing;
  const beside = marksBeside(row.standing);
  const isBackDated = beside.includes('Back-dated') || beside.includes('Late');
  return (
    <tr
      aria-rowindex={props.position + 2}
      style={{ height: props.rowPx }}
      className={isSelected ? styles.selected : undefined}
      onClick={() => props.onSelect(row.id)}
    >
      <th scope="row" className={styles.time}>
        <button
          type="button"
          data-act="row"
          data-entry={row.id}
          data-seq={entry.seq}
          data-kind={entry.kind}
          aria-pressed={isSelected}
          style={{ minHeight: props.rowPx - 1 }}
        >
          {isBackDated ? <i className={styles.whisker} aria-hidden="true" /> : null}
          {props.axis.words(row.at)}
        </button>
      </th>
      <td className={styles.entry}>
        <Clamped>{row.words()}</Clamped>
        <div className={styles.under} aria-hidden="true">
          {row.doubtS === null ? null : <span>{doubtWords(row.doubtS)}, </span>}
          {[entry.author, ...beside].join(', ')}
        </div>
      </td>
      <td className={styles.doubt}>{row.doubtS === null ? '' : doubtWords(row.doubtS)}</td>
      <td className={styles.author}>
        <Clamped>{entry.author}</Clamped>
      </td>
      <td className={styles.marks}>
        <Clamped>{beside.join(', ')}</Clamped>
      </td>
    </tr>
  );
}

/** Rows keep one height, so that a long flight can be scrolled without laying out every line. */
function Clamped({ children }: { readonly children: ReactNode }) {
  return <div className={styles.clamped}>{children}</div>;
}

function Gap({ rows, rowPx }: { readonly rows: number; readonly rowPx: number }) {
  return rows <= 0 ? null : (
    <tr aria-hidden="true">
      <td style={{ height: rows * rowPx, padding: 0, border: 0 }} />
    </tr>
  );
}

function SortHead(props: {
  readonly column: SortColumn;
  readonly words: string;
  readonly count?: string;
  readonly widthPx?: number;
  readonly sort: Sort;
  readonly onSort: (sort: Sort) => void;
  readonly children?: ReactNode;
}) {
  const { column, sort } = props;
  const isChosen = sort.column === column;
  return (
    <th
      scope="col"
      className={styles[column]}
      style={props.widthPx === undefined ? undefined : { width: props.widthPx }}
      aria-sort={ariaSort(sort, column)}
    >
      <div className={styles.headCell}>
        <button
          type="button"
          data-act={`sort-${column}`}
          onClick={() => props.onSort({ column, ascending: isChosen ? !sort.ascending : true })}
        >
          <span>
            {props.words}
            {props.count === undefined ? null : <small> {props.count}</small>}
          </span>
          {isChosen ? (
            <i aria-hidden="true" className={sort.ascending ? styles.up : styles.down} />
          ) : null}
        </button>
        {props.children}
      </div>
    </th>
  );
}

function ariaSort(sort: Sort, column: SortColumn): 'ascending' | 'descending' | 'none' {
  if (sort.column !== column) {
    return 'none';
  }
  return sort.ascending ? 'ascending' : 'descending';
}
