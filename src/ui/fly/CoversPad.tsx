import { TouchKey } from '../kit/TouchSurface.tsx';
import { padGrid } from './cellGrid.ts';
import { CellPad } from './CellPad.tsx';
import { ControlGrid } from './ControlGrid.tsx';
import { useFly } from './flyContext.ts';
import type { CoverNaming } from './useCovers.ts';
import styles from './CoversPad.module.css';

/** One key a cover. */
export function CoversPad({ covers }: { readonly covers: CoverNaming }) {
  const { layout } = useFly();
  const grid = padGrid(layout.places.cells, 20);
  const columns = Math.max(1, Math.min(grid.columns, covers.panels.length <= 6 ? 3 : 4));
  return (
    <CellPad columns={columns} rows={Math.max(1, Math.ceil(covers.panels.length / columns))}>
      {covers.panels.map((panel) => {
        const seen = covers.seen[panel];
        return (
          <TouchKey
            key={panel}
            act={`cover-${panel}`}
            className={
              seen === 'hung'
                ? `${styles.cover} ${styles.hung}`
                : seen === 'clear'
                  ? styles.cover
                  : `${styles.cover} ${styles.unknown}`
            }
            onTouch={() => covers.set(panel)}
          >
            <b>{panel}</b>
            <span>{seen ?? 'not seen'}</span>
          </TouchKey>
        );
      })}
    </CellPad>
  );
}

export function CoverControls({
  covers,
  wing,
}: {
  readonly covers: CoverNaming;
  readonly wing: 'L' | 'R';
}) {
  const { move } = useFly();
  return (
    <ControlGrid
      title={`Covers, ${wing === 'L' ? 'left' : 'right'} wing`}
      sub={`${covers.panels.filter((panel) => covers.seen[panel] === 'clear').length} of ${covers.panels.length} clear`}
      keys={[
        {
          act: 'brush-clear',
          label: 'Clear',
          chosen: covers.brush === 'clear',
          onTouch: () => covers.setBrush('clear'),
        },
        {
          act: 'brush-hung',
          label: 'Hung',
          chosen: covers.brush === 'hung',
          onTouch: () => covers.setBrush('hung'),
        },
        { act: 'all-clear', label: 'Rest clear', onTouch: covers.allClear },
        { act: 'pad-close', label: 'Close', onTouch: () => move({ do: 'closePad' }) },
        {
          act: 'covers-enter',
          label: 'Enter',
          strong: true,
          onTouch: ({ stamp }) => void covers.enter(stamp),
        },
      ]}
    />
  );
}
