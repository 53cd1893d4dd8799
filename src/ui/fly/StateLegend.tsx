import { TouchKey } from '../kit/TouchSurface.tsx';
import { useFly } from './flyContext.ts';
import { StateSwatch } from './PanelShape.tsx';
import { CALLED_STATES, STATE_WORDS } from './wingState.ts';
import styles from './StateKeys.module.css';

/** Where the panels are too many for the map: what the fills mean, and the way to the probes by name. */
export function StateLegend() {
  const fly = useFly();
  return (
    <div className={`${styles.states} ${styles[fly.layout.screenClass]}`}>
      {CALLED_STATES.map((state) => (
        <p key={state} className={styles.state}>
          <span className={styles.swatch}>
            <StateSwatch state={state} />
          </span>
          <b>{STATE_WORDS[state]}</b>
        </p>
      ))}
      <TouchKey
        act="open-probes"
        className={styles.state}
        onTouch={({ stamp }) =>
          fly.move({ do: 'open', pad: { kind: 'probes', target: null, stamp, wing: 'L' } })
        }
      >
        <span>Open</span>
        <b>Probes</b>
      </TouchKey>
    </div>
  );
}
