import type { ReactNode } from 'react';
import { useFly } from './flyContext.ts';
import styles from './CellPad.module.css';

/** How many cells of at least so many millimetres fit the place of a pad. */
export function padGrid(
  place: { readonly w: number; readonly h: number },
  leastMm: number,
): { readonly columns: number; readonly rows: number } {
  return {
    columns: Math.floor((place.w + 4) / (leastMm + 4)),
    rows: Math.floor((place.h + 4) / (leastMm + 4)),
  };
}

/** A pad of equal cells in the place of the tiles. */
export function CellPad(props: {
  readonly columns: number;
  readonly rows: number;
  readonly children: ReactNode;
}) {
  const { layout } = useFly();
  return (
    <div
      className={`${styles.cells} ${styles[layout.screenClass]}`}
      style={{
        gridTemplateColumns: `repeat(${props.columns}, minmax(0, 1fr))`,
        gridTemplateRows: `repeat(${props.rows}, minmax(0, 1fr))`,
      }}
    >
      {props.children}
    </div>
  );
}
