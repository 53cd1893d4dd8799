import { useCallback, useMemo, type RefCallback } from 'react';
import { timelineFileName } from '../../../file/names.ts';
import { entriesTable, readingsTable } from '../../../file/tables.ts';
import { digestOf, headerOf, headsOf, writeTimeline } from '../../../file/timelineFile.ts';
import type { Desk } from '../context.ts';
import { meaningOf } from './meaning.ts';
import styles from './Files.module.css';

/**
 * The file is made before the key is touched, from what this page holds: it can be saved while storage fails, and a
 * browser that wants a touch for a download finds the bytes ready.
 */
export function SaveFile({ desk, build }: { readonly desk: Desk; readonly build: string }) {
  const { view, base } = desk;
  const entries = desk.journal.entries();
  const made = useMemo(() => {
    if (entries.length === 0) {
      return null;
    }
    const encoder = new TextEncoder();
    const { sheet } = view.state;
    const meaning = meaningOf({ view, base });
    return {
      name: timelineFileName(headerOf(entries)),
      timeline: encoder.encode(writeTimeline(entries)),
      entriesCsv: encoder.encode(entriesTable(view.standing, sheet, meaning)),
      readingsCsv: encoder.encode(readingsTable(view.standing, sheet, meaning)),
    };
  }, [entries, view, base]);
  const pending = desk.journal.status().pending.length;
  if (made === null) {
    return <p>There is no entry to save yet.</p>;
  }
  const stem = made.name.replace(/\.jsonl$/, '');
  return (
    <section aria-label="Save the flight timeline file" className={styles.part}>
      <h2>Save the flight timeline file</h2>
      <p>
        {entries.length} entries, {Math.ceil(made.timeline.length / 1024)} KiB of plain text, one
        entry a line. Any text editor opens it.
      </p>
      <FileLink act="save-file" name={made.name} bytes={made.timeline} isMain />
      {pending === 0 ? null : (
        <p>
          <b>{pending} touched and not yet saved on this tablet are not in the file yet.</b> They
          are kept and tried again.
        </p>
      )}
      <dl className={styles.facts}>
        <dt>Fingerprint</dt>
        <dd>
          <code>{digestOf(entries).slice(0, 8)}</code>
        </dd>
        <dt>Heads</dt>
        <dd>
          {headsOf(entries).map(({ hash, seq, rec }) => (
            <span key={hash}>
              <code>{hash.slice(0, 8)}</code> entry {seq} of recorder {rec.slice(0, 8)}
            </span>
          ))}
        </dd>
        <dt>App</dt>
        <dd>{build}</dd>
      </dl>
      <h3>Tables for a spreadsheet</h3>
      <FileLink act="save-entries" name={`${stem}-entries.csv`} bytes={made.entriesCsv} />
      <FileLink act="save-readings" name={`${stem}-readings.csv`} bytes={made.readingsCsv} />
    </section>
  );
}

function FileLink(props: {
  readonly act: string;
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly isMain?: boolean;
}) {
  const link = useBytesOf(props.bytes);
  return (
    <a
      data-act={props.act}
      className={props.isMain === true ? `${styles.key} ${styles.main}` : styles.key}
      href={`#${props.name}`}
      ref={link}
      download={props.name}
    >
      Save {props.name}
    </a>
  );
}

/** Gives the link its bytes for as long as it stands in the page, and takes them back after. */
function useBytesOf(bytes: Uint8Array<ArrayBuffer>): RefCallback<HTMLAnchorElement> {
  return useCallback(
    (link) => {
      if (link === null) {
        return;
      }
      const url = URL.createObjectURL(new Blob([bytes], { type: 'application/octet-stream' }));
      link.setAttribute('href', url);
      return () => URL.revokeObjectURL(url);
    },
    [bytes],
  );
}
