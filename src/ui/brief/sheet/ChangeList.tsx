import styles from '../Brief.module.css';

const SHOWN_AT_MOST = 12;

/** Changes of a flight sheet in words, the first dozen; the rest by number. */
export function ChangeList({ changes }: { readonly changes: readonly string[] }) {
  return (
    <ul className={styles.changes}>
      {changes.slice(0, SHOWN_AT_MOST).map((words) => (
        <li key={words}>{words}</li>
      ))}
      {changes.length > SHOWN_AT_MOST ? (
        <li>{`And ${changes.length - SHOWN_AT_MOST} more.`}</li>
      ) : null}
    </ul>
  );
}
