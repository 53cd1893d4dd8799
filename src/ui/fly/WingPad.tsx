import { WINGS, type Wing } from '../../record/sheet.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { padGrid } from './cellGrid.ts';
import { CellPad } from './CellPad.tsx';
import { useFly } from './flyContext.ts';
import { PanelShape, ProbeMarks } from './PanelShape.tsx';
import { fromRoot } from './WingMap.tsx';
import { panelStates, STATE_WORDS, type PanelFace } from './wingState.ts';
import styles from './WingPad.module.css';

/** The wing as a pad of tiles: both wings where their panels fit in two rows each, else one wing at a time. */
export function WingPad({ wing }: { readonly wing: Wing }) {
  const { sheet, state, layout } = useFly();
  const grid = padGrid(layout.places.cells, 15);
  const all = WINGS.map((each) => panelStates(sheet, state, each));
  const most = Math.max(...all.map((panels) => panels.length), 1);
  const columnsForBoth = Math.ceil(most / 2);
  const both = columnsForBoth <= grid.columns && grid.rows >= 4;
  if (both) {
    return (
      <CellPad columns={columnsForBoth} rows={4}>
        {all.flatMap((panels) => rowsOf(panels, columnsForBoth))}
      </CellPad>
    );
  }
  const panels = panelStates(sheet, state, wing);
  const columns = Math.min(grid.columns, Math.max(3, Math.ceil(panels.length / 3)));
  return (
    <CellPad columns={columns} rows={Math.ceil(panels.length / columns)}>
      {rowsOf(panels, columns)}
    </CellPad>
  );
}

function rowsOf(panels: readonly PanelFace[], columns: number) {
  const empty = (columns * Math.ceil(panels.length / columns) - panels.length) % columns;
  return [
    ...panels.map((panel, index) => (
      <PanelTile
        key={panel.id}
        panel={panel}
        index={fromRoot(panel.wing, index, panels.length)}
        of={panels.length}
      />
    )),
    ...Array.from({ length: empty }, (_, index) => (
      <span key={`empty-${panels[0]?.wing ?? ''}-${index}`} />
    )),
  ];
}

function PanelTile({
  panel,
  index,
  of,
}: {
  readonly panel: PanelFace;
  readonly index: number;
  readonly of: number;
}) {
  const { ui, move } = useFly();
  const chosen = ui.wingPanel?.panel === panel.id;
  return (
    <TouchKey
      act={`panel-${panel.id}`}
      className={chosen ? `${styles.tile} ${styles.chosen}` : styles.tile}
      pressed={chosen}
      label={`Panel ${panel.id} ${STATE_WORDS[panel.state]}`}
      onTouch={({ stamp }) =>
        move({ do: 'wingPanel', wingPanel: { panel: panel.id, stamp, used: false } })
      }
    >
      <span className={styles.shape}>
        <PanelShape
          state={panel.state}
          index={index}
          of={of}
          tipLeft={panel.wing === 'L'}
          chosen={false}
          cropped
        />
      </span>
      <ProbeMarks states={panel.probes.map((probe) => probe.state)} />
      <span className={styles.plate}>
        <b>{panel.id}</b> {STATE_WORDS[panel.state]}
      </span>
    </TouchKey>
  );
}
