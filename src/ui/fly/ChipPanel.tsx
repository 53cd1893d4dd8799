import type { ReactNode } from 'react';
import { HoldKey, TouchKey } from '../kit/TouchSurface.tsx';
import type { Touch } from '../kit/touchBoard.ts';
import { chipGrid, chipPage } from './chipGrid.ts';
import { useFly } from './flyContext.ts';
import styles from './ChipPanel.module.css';

export interface Chip {
  readonly act: string;
  readonly label: string;
  /** A value that stands already. */
  readonly set?: boolean;
  /** Must be held: it cannot be taken lightly. */
  readonly hold?: boolean;
  readonly onTouch: (touch: Touch) => void;
}

/** A panel of chips that stands beside the tiles and stops nobody: every other key works on. */
export function ChipPanel(props: {
  readonly title: ReactNode;
  readonly sub: ReactNode;
  readonly chips: readonly Chip[];
  /** Always there, at the end: the next question, and done. */
  readonly fixed: readonly Chip[];
  readonly page: number;
  readonly onMore: () => void;
}) {
  const { layout } = useFly();
  const grid = chipGrid(
    layout.places.panel,
    [...props.chips, ...props.fixed].map((chip) => chip.label),
    layout.textSize,
  );
  const { items, pages } = chipPage(
    props.chips,
    grid.columns * grid.rows - props.fixed.length,
    props.page,
  );
  return (
    <div className={styles.panel}>
      <p className={styles.head}>
        <b>{props.title}</b>
        <span>{props.sub}</span>
      </p>
      <div
        className={styles.grid}
        style={{
          gridTemplateColumns: `repeat(${grid.columns}, minmax(0, 1fr))`,
          gridTemplateRows: `repeat(${grid.rows}, minmax(0, 1fr))`,
        }}
      >
        {items.map((chip) => (
          <ChipKey key={chip.act} chip={chip} />
        ))}
        {pages > 1 ? (
          <ChipKey
            chip={{
              act: 'panel-more',
              label: `More ${(props.page % pages) + 1}/${pages}`,
              onTouch: props.onMore,
            }}
            quiet
          />
        ) : null}
        {props.fixed.map((chip, index) => {
          // From the end of the grid, so that the next touch on Done finds it where the last one did.
          const cell = grid.columns * grid.rows - props.fixed.length + index;
          return <ChipKey key={chip.act} chip={chip} quiet cell={cellAt(cell, grid.columns)} />;
        })}
      </div>
    </div>
  );
}

interface Cell {
  readonly gridRow: number;
  readonly gridColumn: number;
}

function cellAt(index: number, columns: number): Cell {
  return { gridRow: Math.floor(index / columns) + 1, gridColumn: (index % columns) + 1 };
}

function ChipKey({
  chip,
  quiet = false,
  cell,
}: {
  readonly chip: Chip;
  readonly quiet?: boolean;
  readonly cell?: Cell;
}) {
  const className = `${styles.chip} ${chip.set === true ? styles.set : ''} ${quiet ? styles.quiet : ''}`;
  if (chip.hold === true) {
    return (
      <HoldKey act={chip.act} className={className} style={cell} onTouch={chip.onTouch}>
        {chip.label}
      </HoldKey>
    );
  }
  return (
    <TouchKey
      act={chip.act}
      className={className}
      pressed={chip.set}
      style={cell}
      onTouch={chip.onTouch}
    >
      {chip.label}
    </TouchKey>
  );
}
