import styles from './Caution.module.css';

/** The one amber plate: recorded data at risk. Word and shape first, hue last. */
export function Caution({ words }: { readonly words: string }) {
  return (
    <p className={styles.plate} role="status">
      <b>CAUTION</b> <span>{words}</span>
    </p>
  );
}
