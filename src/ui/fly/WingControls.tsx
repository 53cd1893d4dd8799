import type { Wing } from '../../record/sheet.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { useFly } from './flyContext.ts';
import { otherWing } from './act.ts';
import { StateKeys } from './StateKeys.tsx';
import styles from './Controls.module.css';

/** Beside the wing pad: the state keys, the other wing, the probes by name. */
export function WingControls({ wing }: { readonly wing: Wing }) {
  const { move, ui } = useFly();
  return (
    <div className={styles.controls}>
      <p className={styles.head}>
        <b>{ui.wingPanel === null ? 'Touch a panel' : ui.wingPanel.panel}</b>
        <span>{ui.wingPanel === null ? 'The touch is the time.' : 'Then its state.'}</span>
      </p>
      <div className={styles.row}>
        <StateKeys withProbes={false} />
      </div>
      <div className={styles.row}>
        <div className={styles.keys}>
          <TouchKey
            act="wing-probes"
            onTouch={({ stamp }) =>
              move({ do: 'open', pad: { kind: 'probes', target: null, stamp, wing } })
            }
          >
            Probes
          </TouchKey>
          <TouchKey
            act="wing-other"
            onTouch={() => move({ do: 'open', pad: { kind: 'wing', wing: otherWing(wing) } })}
          >
            {wing === 'L' ? 'Right' : 'Left'}
          </TouchKey>
          <TouchKey act="pad-close" onTouch={() => move({ do: 'closePad' })}>
            Close
          </TouchKey>
        </div>
      </div>
    </div>
  );
}
