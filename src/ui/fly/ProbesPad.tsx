import type { Wing } from '../../record/sheet.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { CellPad } from './CellPad.tsx';
import { useFly } from './flyContext.ts';
import { ProbeMarks } from './PanelShape.tsx';
import { probeColumns, type ProbeLine } from './probeColumns.ts';
import type { ProbeNaming } from './useProbePad.ts';
import { STATE_WORDS } from './wingState.ts';
import styles from './ProbesPad.module.css';

/** Every probe of the wing by name; a panel's own key names all of its probes. */
export function ProbesPad({
  wing,
  page,
  naming,
}: {
  readonly wing: Wing;
  readonly page: number;
  readonly naming: ProbeNaming;
}) {
  const fly = useFly();
  const { pages, cells, upright } = probeColumns(fly, wing);
  const lines = pages[page % pages.length] ?? [];
  const count = Math.max(1, lines.length);
  return (
    <CellPad columns={upright ? count : cells} rows={upright ? cells : count} upright={upright}>
      {lines.flatMap((line, index) => lineKeys({ line, index, cells, wing, naming }))}
    </CellPad>
  );
}

function lineKeys({
  line,
  index,
  cells,
  wing,
  naming,
}: {
  readonly line: ProbeLine;
  readonly index: number;
  readonly cells: number;
  readonly wing: Wing;
  readonly naming: ProbeNaming;
}) {
  const states = naming.states(wing);
  return [
    line.first ? (
      <TouchKey
        key={`whole-${line.panel}`}
        act={`whole-${line.panel}`}
        className={styles.panel}
        onTouch={() => naming.setPanel(wing, line.panel, line.probes)}
      >
        <b>{line.panel}</b>
        <span>all {STATE_WORDS[naming.brush]}</span>
      </TouchKey>
    ) : (
      <span key={`more-${line.panel}-${index}`} />
    ),
    ...line.probes.map((probe) => {
      const state = states[probe] ?? 'notAssessed';
      return (
        <TouchKey
          key={probe}
          act={`probe-${probe}`}
          className={`${styles.probe} ${styles[state]}`}
          label={`Probe ${probe} ${STATE_WORDS[state]}`}
          onTouch={() => naming.set(wing, [probe])}
        >
          <b>{probe}</b>
          <span className={styles.state}>
            <ProbeMarks states={[state]} /> {STATE_WORDS[state]}
          </span>
        </TouchKey>
      );
    }),
    ...Array.from({ length: cells - 1 - line.probes.length }, (_, place) => (
      <span key={`empty-${line.panel}-${index}-${place}`} />
    )),
  ];
}
