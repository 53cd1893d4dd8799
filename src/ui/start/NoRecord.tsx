import styles from './Start.module.css';

/** This browser gives no place to keep a record: said at once, before anybody relies on it. */
export function NoRecord() {
  return (
    <main className={styles.start}>
      <h1>Kneeline</h1>
      <p role="alert" className={styles.trouble}>
        <b>No record can be kept in this window.</b> The browser refused its storage. Close other
        windows of the app and reload; a private window or blocked site data does the same. Until
        then, use the paper card.
      </p>
    </main>
  );
}
