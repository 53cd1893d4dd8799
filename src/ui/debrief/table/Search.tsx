import styles from './EntryTable.module.css';
import { countOfFilters, type Filter } from './rows.ts';

/** Letters to find; Enter goes to the next entry that holds them, with Shift to the one before. */
export function Search(props: {
  readonly filter: Filter;
  readonly isOpen: boolean;
  readonly onFilter: (filter: Filter) => void;
  readonly onStep: (way: 'earlier' | 'later') => void;
  readonly onOpen: () => void;
}) {
  const { filter } = props;
  const count = countOfFilters(filter);
  return (
    <div className={styles.search}>
      <label>
        <span className={styles.offScreen}>Find words</span>
        <input
          data-act="filter-words"
          type="search"
          placeholder="Find words"
          value={filter.words}
          onChange={(event) => props.onFilter({ ...filter, words: event.target.value })}
          onKeyDown={(event) => {
            if (event.key === 'Enter') {
              props.onStep(event.shiftKey ? 'earlier' : 'later');
            }
          }}
        />
      </label>
      <button
        type="button"
        data-act="filters"
        aria-expanded={props.isOpen}
        className={props.isOpen || count > 0 ? styles.narrowed : undefined}
        onClick={props.onOpen}
      >
        {count === 0 ? 'Filter' : `Filter ${count}`}
      </button>
    </div>
  );
}
