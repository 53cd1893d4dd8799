import { useMemo } from 'react';
import { timelineFileName } from '../../../file/names.ts';
import { digestOf, headerOf, headsOf, writeTimeline } from '../../../file/timelineFile.ts';
import { entryId } from '../../../record/brand.ts';
import { headCode } from '../../../record/headCode.ts';
import type { Desk } from '../context.ts';
import { FileLink } from './FileLink.tsx';
import styles from './Files.module.css';

/**
 * The file is made before the key is touched, from what this page holds: it can be saved while storage fails, and a
 * browser that wants a touch for a download finds the bytes ready.
 */
export function SaveFile({ desk, build }: { readonly desk: Desk; readonly build: string }) {
  const entries = desk.journal.entries();
  const made = useMemo(
    () =>
      entries.length === 0
        ? null
        : {
            name: timelineFileName(headerOf(entries)),
            timeline: new TextEncoder().encode(writeTimeline(entries)),
          },
    [entries],
  );
  const pending = desk.journal.status().pending.length;
  if (made === null) {
    return <p>There is no entry to save yet.</p>;
  }
  const heads = headsOf(entries);
  return (
    <section aria-label="Save the flight timeline file" className={styles.part}>
      <h2>Save the flight timeline file</h2>
      <p>
        {entries.length} entries, {Math.ceil(made.timeline.length / 1024)} KiB of plain text, one
        entry a line. Any text editor opens it.
      </p>
      <FileLink
        act="save-file"
        name={made.name}
        words={made.name}
        content={made.timeline}
        mediaType="application/octet-stream"
        isMain
      />
      {pending === 0 ? null : (
        <p>
          <b>{pending} touched and not yet saved on this tablet are not in the file yet.</b> They
          are kept and tried again.
        </p>
      )}
      <dl className={styles.facts}>
        <dt>Code</dt>
        <dd>
          <code>{headCode(heads.map(({ hash }) => entryId(hash)))}</code>
        </dd>
        <dt>Fingerprint</dt>
        <dd>
          <code>{digestOf(entries).slice(0, 8)}</code>
        </dd>
        <dt>Heads</dt>
        <dd>
          {heads.map(({ hash, seq, rec }) => (
            <span key={hash}>
              <code>{hash.slice(0, 8)}</code> entry {seq} of recorder {rec.slice(0, 8)}
            </span>
          ))}
        </dd>
        <dt>App</dt>
        <dd>{build}</dd>
      </dl>
    </section>
  );
}
