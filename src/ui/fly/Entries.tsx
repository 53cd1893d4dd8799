import type { StandingEntry } from '../../record/flightState.ts';
import type { FlightView } from '../../record/flight.ts';
import { itemsBackwards } from '../../record/trail.ts';
import { hms } from '../kit/time.ts';
import { entryLabel, isShown } from './entryLabel.ts';
import { useFly } from './flyContext.ts';
import type { ScreenClass } from './layout.ts';
import styles from './Entries.module.css';

const SHOWN: Readonly<Record<ScreenClass, number>> = {
  eight: 2,
  eightWide: 3,
  tall: 2,
  wide: 3,
  thirteen: 3,
};

/** The last entries, newest first; in the band below the targets, for reading only. */
export function Entries({ inPad }: { readonly inPad: boolean }) {
  const { view, sheet, layout } = useFly();
  const latest = newestShown(view, SHOWN[layout.screenClass] - (inPad ? 1 : 0));
  const caution = inPad
    ? 'Record only, not for fuel planning'
    : layout.places.wing === null
      ? 'Provisional, record only'
      : null;
  return (
    <div
      className={
        layout.screenClass === 'eight' ? `${styles.entries} ${styles.stacked}` : styles.entries
      }
    >
      <div className={styles.list}>
        {latest.map((each, index) => (
          // By place: what is written moves down as words in a place that stays.
          <p key={index} className={index === 0 ? styles.newest : undefined}>
            <span>
              <time>{hms(each.at)}</time> <b>{entryLabel(each, sheet)}</b>
              {each.standing === 'unconfirmed' ? <i className={styles.query}>?</i> : null}
            </span>
          </p>
        ))}
      </div>
      {caution === null ? null : <p className={styles.caution}>{caution}</p>}
    </div>
  );
}

function newestShown(view: FlightView, count: number): readonly StandingEntry[] {
  const found: StandingEntry[] = [];
  for (const each of itemsBackwards(view.timeline)) {
    if (found.length === count) {
      break;
    }
    if (isShown(each) && each.standing !== 'withdrawn' && each.standing !== 'dropped') {
      found.push(each);
    }
  }
  return found;
}
