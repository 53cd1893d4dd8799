import { useEffect, useState } from 'react';
import type { HandedFile, HandedGroup } from '../../../handover/handOver.ts';
import type { Desk } from '../context.ts';
import { FileLink } from './FileLink.tsx';
import styles from './Files.module.css';

const GROUPS: readonly { readonly id: HandedGroup; readonly words: string }[] = [
  { id: 'log', words: 'Entries and readings, for a spreadsheet' },
  { id: 'results', words: 'Results, for a spreadsheet' },
  { id: 'kinds', words: 'Each kind of entry, for a spreadsheet' },
  { id: 'programs', words: 'For other programs: JSON, GeoJSON, Parquet' },
];

type Made =
  | { readonly kind: 'making' | 'failed' }
  | { readonly kind: 'made'; readonly files: readonly HandedFile[] };

/** Views of the record for other programs, made when this page is looked at. The timeline file is the record. */
export function HandOver({ desk, build }: { readonly desk: Desk; readonly build: string }) {
  const { view, journal } = desk;
  const [made, setMade] = useState<Made>({ kind: 'making' });
  useEffect(() => {
    let over = false;
    const entries = journal.entries();
    import('../../../handover/handOver.ts').then(
      ({ handOver }) => {
        const files = entries.length === 0 ? [] : handOver(entries, { build, files: [] }, view);
        if (!over) setMade({ kind: 'made', files });
      },
      () => {
        if (!over) setMade({ kind: 'failed' });
      },
    );
    return () => {
      over = true;
    };
  }, [journal, view, build]);
  return (
    <section aria-label="Hand over" className={styles.part}>
      <h2>Hand over for other programs</h2>
      <p>
        One header row, one unit a column, times in UTC, as read beside as corrected. Withdrawn
        entries are marked.
      </p>
      {made.kind === 'making' ? <p role="status">Being made…</p> : null}
      {made.kind === 'failed' ? (
        <p role="alert">
          They could not be made. Close other windows of the app, reload, and open this page again.
        </p>
      ) : null}
      {made.kind === 'made'
        ? GROUPS.map(({ id, words }) => (
            <Group key={id} words={words} files={made.files.filter(({ group }) => group === id)} />
          ))
        : null}
    </section>
  );
}

function Group(props: { readonly words: string; readonly files: readonly HandedFile[] }) {
  const { words, files } = props;
  return files.length === 0 ? null : (
    <details className={styles.group}>
      <summary data-act={`group-${files[0]?.group}`}>
        {words}, {files.length} {files.length === 1 ? 'file' : 'files'}
      </summary>
      <div className={styles.links}>
        {files.map(({ name, ending, content, mediaType }) => (
          <FileLink
            key={name}
            act={`save-${ending}`}
            name={name}
            words={ending}
            content={content}
            mediaType={mediaType}
          />
        ))}
      </div>
    </details>
  );
}
