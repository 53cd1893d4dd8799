import { useMemo } from 'react';
import { timelineFileName } from '../../../file/names.ts';
import { digestOf, headerOf, headsOf, writeTimeline } from '../../../file/timelineFile.ts';
import type { Desk } from '../context.ts';
import { useBytesOf } from './useBytesOf.ts';
import styles from './Files.module.css';

/**
 * The file is made before the key is touched, from what this page holds: it can be saved while storage fails, and a
 * browser that wants a touch for a download finds the bytes ready.
 */
export function SaveFile({ desk, build }: { readonly desk: Desk; readonly build: string }) {
  const entries = desk.journal.entries();
  const made = useMemo(() => {
    if (entries.length === 0) {
      return null;
    }
    const text = writeTimeline(entries);
    return { name: timelineFileName(headerOf(entries)), bytes: new TextEncoder().encode(text) };
  }, [entries]);
  const link = useBytesOf(made?.bytes ?? null, 'text/plain;charset=utf-8');
  const pending = desk.journal.status().pending.length;
  return (
    <section aria-label="Save the flight timeline file" className={styles.part}>
      <h2>Save the flight timeline file</h2>
      {made === null ? (
        <p>There is no entry to save yet.</p>
      ) : (
        <>
          <p>
            {entries.length} entries, {Math.ceil(made.bytes.length / 1024)} KiB of plain text, one
            entry a line. Any text editor opens it.
          </p>
          <a
            data-act="save-file"
            className={styles.key}
            href={`#${made.name}`}
            ref={link}
            download={made.name}
          >
            Save {made.name}
          </a>
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
          {pending === 0 ? null : (
            <p>
              <b>{pending} touched and not yet saved on this tablet are not in the file yet.</b>{' '}
              They are kept and tried again.
            </p>
          )}
        </>
      )}
    </section>
  );
}
