import { useSecond, hms } from '../kit/time.ts';
import { useFly } from './flyContext.ts';
import styles from './Top.module.css';

/** The clock, and how much of what was touched would survive a crash. */
export function Top({ awake }: { readonly awake: boolean }) {
  const { clock, status, layout } = useFly();
  const now = useSecond(clock);
  const waiting = status.pending.length;
  const [hour, minute, second] = hms(now).split(':');
  return (
    <div
      className={
        layout.screenClass === 'eightWide' ? `${styles.top} ${styles.stacked}` : styles.top
      }
    >
      <p className={styles.clock}>
        <time>
          {hour}
          <s>:</s>
          {minute}
          <s>:</s>
          {second}
        </time>
        <span className={styles.zulu}>Z</span>
      </p>
      <p className={styles.saved} role="status" data-saved={status.saved} data-pending={waiting}>
        <b>
          {waiting === 0 ? `${status.saved} saved` : `${status.saved} saved, ${waiting} saving`}
        </b>
        <span>{savedNote(status.trouble?.kind ?? null, awake)}</span>
      </p>
    </div>
  );
}

function savedNote(trouble: 'notSaved' | 'missing' | 'fork' | null, awake: boolean): string {
  switch (trouble) {
    case 'notSaved':
      return 'NOT SAVED, kept and tried again';
    case 'missing':
    case 'fork':
      return 'New recorder, see Debrief';
    case null:
      return awake ? 'Screen stays awake' : 'Screen may sleep';
  }
}
