import { TouchKey } from '../kit/TouchSurface.tsx';
import { callState } from './callState.ts';
import { useFly } from './flyContext.ts';
import { StateSwatch } from './PanelShape.tsx';
import { CALLED_STATES, STATE_WORDS } from './wingState.ts';
import styles from './StateKeys.module.css';

/** LAM, INT, TRB for the chosen panel, and the way to the probes by name. No cycling: a bounce would change the datum. */
export function StateKeys({ withProbes }: { readonly withProbes: boolean }) {
  const fly = useFly();
  const { wingPanel } = fly.ui;
  return (
    <div className={`${styles.states} ${styles[fly.layout.screenClass]}`}>
      {CALLED_STATES.map((state) => (
        <TouchKey
          key={state}
          act={`state-${state}`}
          form="event"
          className={styles.state}
          disabled={wingPanel === null}
          label={`${STATE_WORDS[state]} ${wingPanel?.panel ?? ''}`}
          onTouch={({ stamp }) => void callState(fly, state, stamp)}
        >
          <span className={styles.swatch}>
            <StateSwatch state={state} />
          </span>
          <b>{STATE_WORDS[state]}</b>
        </TouchKey>
      ))}
      {withProbes ? (
        <TouchKey
          act="open-probes"
          className={`${styles.state} ${styles.way}`}
          onTouch={({ stamp }) =>
            fly.move({ do: 'open', pad: { kind: 'probes', target: null, stamp, wing: 'L' } })
          }
        >
          <span>Open</span>
          <b>Probes</b>
        </TouchKey>
      ) : null}
    </div>
  );
}
