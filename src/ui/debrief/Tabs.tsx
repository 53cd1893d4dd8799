import { useRef, type KeyboardEvent } from 'react';
import styles from './Debrief.module.css';

export const TABS = [
  { id: 'timeline', words: 'Timeline' },
  { id: 'answers', words: 'Answers' },
  { id: 'flights', words: 'Flights' },
  { id: 'recorder', words: 'Recorder' },
  { id: 'audit', words: 'Audit' },
  { id: 'forms', words: 'Forms' },
  { id: 'files', words: 'Files' },
  { id: 'sign', words: 'Sign' },
] as const;
export type TabId = (typeof TABS)[number]['id'];

export const tabElementId = (id: TabId): string => `debrief-tab-${id}`;
export const tabPanelId = (id: TabId): string => `debrief-panel-${id}`;

/** The views of Debrief; arrows walk along them as along any row of tabs. */
export function Tabs({
  chosen,
  onChoose,
}: {
  readonly chosen: TabId;
  readonly onChoose: (id: TabId) => void;
}) {
  const row = useRef<HTMLDivElement>(null);
  const onKeyDown = (event: KeyboardEvent): void => {
    const next = tabAfter(chosen, event.key);
    if (next !== null) {
      event.preventDefault();
      onChoose(next);
      row.current?.querySelector<HTMLElement>(`#${tabElementId(next)}`)?.focus();
    }
  };
  return (
    <div
      ref={row}
      role="tablist"
      aria-label="Views of the flight"
      className={styles.tabs}
      onKeyDown={onKeyDown}
    >
      {TABS.map(({ id, words }) => (
        <button
          key={id}
          type="button"
          role="tab"
          id={tabElementId(id)}
          data-act={`tab-${id}`}
          aria-selected={id === chosen}
          aria-controls={id === chosen ? tabPanelId(id) : undefined}
          tabIndex={id === chosen ? 0 : -1}
          onClick={() => onChoose(id)}
        >
          {words}
        </button>
      ))}
    </div>
  );
}

function tabAfter(chosen: TabId, key: string): TabId | null {
  const index = TABS.findIndex(({ id }) => id === chosen);
  const next = { ArrowRight: index + 1, ArrowLeft: index - 1, Home: 0, End: TABS.length - 1 }[key];
  return next === undefined ? null : (TABS.at(next % TABS.length)?.id ?? null);
}
