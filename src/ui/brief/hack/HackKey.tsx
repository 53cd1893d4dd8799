import type { Clock } from '../../../journal/journal.ts';
import type { Stamp } from '../../../record/entry.ts';
import type { EpochMs } from '../../../record/brand.ts';
import { hms, useSecond } from '../../kit/time.ts';
import { TouchKey, TouchSurface } from '../../kit/TouchSurface.tsx';
import { clockText } from './hackTime.ts';
import styles from '../Brief.module.css';

/** The tablet's own time, and the one key of a time hack: the touch is the tablet's time of the callout. */
export function HackKey(props: {
  readonly clock: Clock;
  readonly pxPerMm: number;
  readonly called: EpochMs | null;
  readonly onHack: (stamp: Stamp) => void;
}) {
  const now = useSecond(props.clock);
  return (
    <div className={styles.hack}>
      <p className={styles.clock}>
        <time>{hms(now)}</time>
        <span>Z</span>
      </p>
      <TouchSurface
        clock={props.clock}
        pxPerMm={props.pxPerMm}
        onIgnored={() => undefined}
        className={styles.hackSurface ?? ''}
      >
        <TouchKey
          act="hack.touch"
          form="event"
          className={styles.hackKey}
          onTouch={(touch) => props.onHack(touch.stamp)}
        >
          <b>{props.called === null ? 'Hack' : `Hack at ${clockText(props.called)}`}</b>
          <span>Touch on the word. The touch is the time.</span>
        </TouchKey>
      </TouchSurface>
    </div>
  );
}
