import type { ReactNode } from 'react';
import { TouchKey } from '../kit/TouchSurface.tsx';
import type { Touch } from '../kit/touchBoard.ts';
import type { TargetForm } from '../kit/touchRules.ts';
import { useFly } from './flyContext.ts';
import styles from './ControlGrid.module.css';

export interface Control {
  readonly act: string;
  readonly label: ReactNode;
  readonly onTouch: (touch: Touch) => void;
  readonly form?: TargetForm;
  readonly chosen?: boolean;
  readonly strong?: boolean;
  readonly disabled?: boolean;
}

/** Least width of a key with a word of seven letters on two lines. */
const LEAST_MM = 15.5;

/** The keys that stand beside a pad of cells: what is being set, and Enter. */
export function ControlGrid(props: {
  readonly title: string;
  readonly sub: string;
  readonly keys: readonly Control[];
}) {
  const { layout } = useFly();
  const columns = Math.floor((layout.places.controls.w + 4) / (LEAST_MM * layout.textSize + 4));
  return (
    <div className={styles.controls}>
      <p className={styles.head}>
        <b>{props.title}</b> <span>{props.sub}</span>
      </p>
      <div
        className={styles.grid}
        style={{
          gridTemplateColumns: `repeat(${Math.min(columns, props.keys.length)}, minmax(0, 1fr))`,
        }}
      >
        {props.keys.map((key) => (
          <TouchKey
            key={key.act}
            act={key.act}
            form={key.form ?? 'key'}
            className={`${styles.key} ${key.chosen === true ? styles.chosen : ''} ${key.strong === true ? styles.strong : ''}`}
            pressed={key.chosen}
            disabled={key.disabled}
            onTouch={key.onTouch}
          >
            {key.label}
          </TouchKey>
        ))}
      </div>
    </div>
  );
}
