import { laneName, type LaneId } from '../timeline/lanes.ts';
import styles from './EntryTable.module.css';
import type { Filter } from './rows.ts';

const FIXED: readonly LaneId[] = ['phase', 'covers', 'moisture', 'suction', 'sampler'];
const AFTER_PANELS: readonly LaneId[] = ['fuel', 'notes'];

/** Which rows to list: by lane of the chart, and by letters they hold. */
export function Filters(props: {
  readonly filter: Filter;
  readonly panels: readonly string[];
  readonly onFilter: (filter: Filter) => void;
}) {
  const { filter, onFilter } = props;
  const panelLanes = props.panels.map((id): LaneId => `panel:${id}`);
  const lanes: readonly LaneId[] = [...FIXED, ...panelLanes, ...AFTER_PANELS];
  return (
    <div className={styles.filters}>
      <label>
        <span className={styles.offScreen}>Lane</span>
        <select
          data-act="filter-lane"
          value={filter.lane}
          onChange={(event) => {
            const { value } = event.target;
            const lane =
              lanes.find((id) => id === value) ?? (value === 'panels' ? 'panels' : 'all');
            onFilter({ ...filter, lane });
          }}
        >
          <option value="all">All lanes</option>
          {FIXED.map((id) => (
            <option key={id} value={id}>
              {laneName(id)}
            </option>
          ))}
          <option value="panels">All panels</option>
          {[...panelLanes, ...AFTER_PANELS].map((id) => (
            <option key={id} value={id}>
              {laneName(id)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span className={styles.offScreen}>Words</span>
        <input
          data-act="filter-words"
          type="search"
          placeholder="Find words"
          value={filter.words}
          onChange={(event) => onFilter({ ...filter, words: event.target.value })}
        />
      </label>
    </div>
  );
}
