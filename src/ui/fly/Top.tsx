import { useMemo } from 'react';
import type { FlightView } from '../../record/flight.ts';
import { itemsBackwards } from '../../record/trail.ts';
import { useSecond, hms } from '../kit/time.ts';
import { useFly } from './flyContext.ts';
import { useRisk } from './useRisk.ts';
import styles from './Top.module.css';

/** The clock, and how much of what was touched would survive a crash. */
export function Top() {
  const { clock, status, layout, view, awake } = useFly();
  const unsure = useMemo(() => unsureCount(view), [view]);
  const now = useSecond(clock);
  const risk = useRisk();
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
          {status.saved} saved
          {/* Seen, not spoken: one touch is one message. */}
          {waiting === 0 ? null : <span aria-hidden="true">, {waiting} saving</span>}
        </b>
        {risk !== null && status.trouble === null ? (
          <span className={styles.risk}>
            <b>CAUTION</b> {layout.screenClass === 'eightWide' ? '' : risk.short}
          </span>
        ) : (
          <span>{savedNote(status.trouble?.kind ?? null, awake(), unsure)}</span>
        )}
      </p>
    </div>
  );
}

function savedNote(
  trouble: 'notSaved' | 'missing' | 'fork' | null,
  awake: boolean,
  unsure: number,
): string {
  switch (trouble) {
    case 'notSaved':
      return 'NOT SAVED, kept';
    case 'missing':
    case 'fork':
      return 'new recorder';
    case null:
      return `${unsure === 0 ? '' : `${unsure} not sure, `}${awake ? 'awake' : 'may sleep'}`;
  }
}

const LOOKED_AT = 300;

/** Touches that wait for Keep or Drop, among the newest ones: a badge, never a reminder. */
function unsureCount(view: FlightView): number {
  let looked = 0;
  let count = 0;
  for (const each of itemsBackwards(view.timeline)) {
    looked += 1;
    if (looked > LOOKED_AT) {
      break;
    }
    count += each.standing === 'unconfirmed' ? 1 : 0;
  }
  return count;
}
