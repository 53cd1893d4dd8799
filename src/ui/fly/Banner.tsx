import { useFly } from './flyContext.ts';
import styles from './Banner.module.css';

/** Both side margins, full height: a practice, a demonstration or a reading window can never pass as a flight. */
export function Banner() {
  const { state, status } = useFly();
  const words = bannerWords(state.nature, status.writer);
  if (words === null) {
    return null;
  }
  const line = Array.from({ length: 6 }, () => words).join('    ');
  return (
    <>
      <p className={`${styles.band} ${styles.left}`}>{line}</p>
      <p className={`${styles.band} ${styles.right}`} aria-hidden="true">
        {line}
      </p>
    </>
  );
}

function bannerWords(
  nature: 'flight' | 'practice' | 'demo',
  writer: ReturnType<typeof useFly>['status']['writer'],
): string | null {
  if (writer.kind === 'anotherWindow') {
    return 'READ ONLY, ANOTHER WINDOW RECORDS';
  }
  if (writer.kind === 'readOnly') {
    return writer.because === 'replay' ? 'REPLAY' : 'FROM A FILE';
  }
  return nature === 'flight' ? null : nature === 'practice' ? 'PRACTICE' : 'DEMO';
}
