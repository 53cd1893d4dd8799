import { WINGS } from '../../record/sheet.ts';
import { useFly } from './flyContext.ts';
import { panelStates } from './wingState.ts';
import styles from './MiniWing.module.css';

/** Both wings in a few millimetres: fill says the flow, place says the panel. */
export function MiniWing() {
  const { sheet, state } = useFly();
  return (
    <span className={styles.mini} aria-hidden="true">
      {WINGS.map((wing) => (
        <span key={wing} className={styles.half}>
          {panelStates(sheet, state, wing).map((panel) => (
            <i key={panel.id} className={styles[panel.state]} />
          ))}
        </span>
      ))}
    </span>
  );
}
