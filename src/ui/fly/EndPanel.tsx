import { HoldKey, TouchKey } from '../kit/TouchSurface.tsx';
import { useFly } from './flyContext.ts';
import styles from './EndPanel.module.css';

/** The end of the record in flight: one key that must be held, 13 mm from anything else that can be touched. */
export function EndPanel({
  how,
  onBack,
}: {
  readonly how: 'complete' | 'aborted';
  readonly onBack: () => void;
}) {
  const fly = useFly();
  return (
    <div className={styles.panel}>
      <p className={styles.head}>
        <b>{how === 'complete' ? 'Flight complete' : 'Flight aborted'}</b>
        <span>Hold until the bar is full. The log stays.</span>
      </p>
      <div className={styles.row}>
        <TouchKey act="desk-back" onTouch={onBack}>
          Back
        </TouchKey>
        <HoldKey
          act={how === 'complete' ? 'end-flight' : 'abort-flight'}
          className={styles.hold}
          onTouch={({ stamp }) => {
            void fly.append({ kind: 'flightClosed', body: { how }, stamp }).then((entry) => {
              if (entry !== null) {
                fly.leave.onEnded();
              }
            });
          }}
        >
          {how === 'complete' ? 'Hold to end' : 'Hold to abort'}
        </HoldKey>
      </div>
    </div>
  );
}
