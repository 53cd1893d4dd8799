import type { ReactNode } from 'react';
import styles from './CellPad.module.css';

/** A pad of equal cells in the place of the tiles. */
export function CellPad(props: {
  readonly columns: number;
  readonly rows: number;
  readonly upright?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <div
      className={props.upright === true ? `${styles.cells} ${styles.upright}` : styles.cells}
      style={{
        gridTemplateColumns: `repeat(${props.columns}, minmax(0, 1fr))`,
        gridTemplateRows: `repeat(${props.rows}, minmax(0, 1fr))`,
      }}
    >
      {props.children}
    </div>
  );
}
