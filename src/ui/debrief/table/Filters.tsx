import { useMemo, type ReactNode } from 'react';
import type { EntryId } from '../../../record/brand.ts';
import type { AxisTime } from '../axisTime.ts';
import { laneName, type LaneId } from '../timeline/lanes.ts';
import styles from './EntryTable.module.css';
import { choicesOf, landmarksOf, type Filter, type Row } from './rows.ts';

const FIXED: readonly LaneId[] = ['phase', 'covers', 'moisture', 'suction', 'sampler'];
const AFTER_PANELS: readonly LaneId[] = ['fuel', 'notes'];

/** Which rows and marks to show: by lane of the chart, by kind and by author; and a jump to an event, filtered or not. */
export function Filters(props: {
  readonly rows: readonly Row[];
  readonly axis: AxisTime;
  readonly filter: Filter;
  readonly panels: readonly string[];
  readonly onFilter: (filter: Filter) => void;
  readonly onJump: (entry: EntryId) => void;
}) {
  const { rows, filter, onFilter, axis } = props;
  const { kinds, authors } = useMemo(() => choicesOf(rows), [rows]);
  const landmarks = useMemo(() => landmarksOf(rows), [rows]);
  const panelLanes = props.panels.map((id): LaneId => `panel:${id}`);
  const lanes: readonly LaneId[] = [...FIXED, ...panelLanes, ...AFTER_PANELS];
  const optionOf = (id: LaneId) => (
    <option key={id} value={id}>
      {laneName(id)}
    </option>
  );
  return (
    <div className={styles.filters} role="group" aria-label="Filter">
      <Chooser
        act="filter-lane"
        label="Lane"
        value={filter.lane}
        onChange={(value) => {
          const lane = lanes.find((id) => id === value) ?? (value === 'panels' ? value : 'all');
          onFilter({ ...filter, lane });
        }}
      >
        <option value="all">All lanes</option>
        {FIXED.map(optionOf)}
        <option value="panels">All panels</option>
        {[...panelLanes, ...AFTER_PANELS].map(optionOf)}
      </Chooser>
      <Chooser
        act="filter-kind"
        label="Kind"
        value={filter.kind}
        onChange={(value) => {
          const kind = kinds.find((one) => one.kind === value)?.kind ?? 'all';
          onFilter({ ...filter, kind });
        }}
      >
        <option value="all">All kinds</option>
        {kinds.map(({ kind, words }) => (
          <option key={kind} value={kind}>
            {words}
          </option>
        ))}
      </Chooser>
      <Chooser
        act="filter-author"
        label="By"
        value={filter.author ?? ''}
        onChange={(value) => onFilter({ ...filter, author: value === '' ? null : value })}
      >
        <option value="">By anyone</option>
        {authors.map((author) => (
          <option key={author} value={author}>
            {author}
          </option>
        ))}
      </Chooser>
      <Chooser
        act="jump"
        label="Jump to"
        value=""
        onChange={(value) => {
          const to = landmarks.find(({ id }) => id === value);
          if (to !== undefined) {
            props.onJump(to.id);
          }
        }}
      >
        <option value="">Jump to</option>
        {landmarks.map((row) => (
          <option key={row.id} value={row.id}>
            {axis.words(row.at)} {row.words()}
          </option>
        ))}
      </Chooser>
    </div>
  );
}

function Chooser(props: {
  readonly act: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly children: ReactNode;
}) {
  return (
    <label>
      <span className={styles.offScreen}>{props.label}</span>
      <select
        data-act={props.act}
        value={props.value}
        onChange={(event) => props.onChange(event.target.value)}
      >
        {props.children}
      </select>
    </label>
  );
}
