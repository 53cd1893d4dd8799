import type { PanelState } from '../../record/kinds.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { useFly, type Fly } from './flyContext.ts';
import type { Stamp } from '../../record/entry.ts';
import { StateSwatch } from './PanelShape.tsx';
import { CALLED_STATES, STATE_WORDS } from './wingState.ts';
import styles from './StateKeys.module.css';

/** A panel touched this long ago or less gives its touch as the time; after that the state key's own touch does. */
const PANEL_TOUCH_HOLDS_MS = 10_000;

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
          className={styles.state}
          onTouch={({ stamp }) =>
            fly.move({ do: 'open', pad: { kind: 'probes', target: null, stamp, wing: 'L' } })
          }
        >
          <span>By name</span>
          <b>Probes</b>
        </TouchKey>
      ) : null}
    </div>
  );
}

async function callState(
  fly: Fly,
  state: Exclude<PanelState, 'notAssessed'>,
  stamp: Stamp,
): Promise<void> {
  const { wingPanel } = fly.ui;
  if (wingPanel === null) {
    return;
  }
  const ageMs = stamp.wall - wingPanel.stamp.wall;
  const at = ageMs >= 0 && ageMs <= PANEL_TOUCH_HOLDS_MS ? wingPanel.stamp : stamp;
  // The panel stays chosen for a second thought, but its touch is used up.
  fly.move({
    do: 'wingPanel',
    wingPanel: {
      panel: wingPanel.panel,
      stamp: { ...wingPanel.stamp, wall: stamp.wall, mono: stamp.mono },
    },
  });
  await fly.append({
    kind: 'panelStateCalled',
    body: { panel: wingPanel.panel, state },
    stamp: at,
  });
}
