import { WINGS, type Wing } from '../../record/sheet.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { useFly } from './flyContext.ts';
import { PanelShape, ProbeMarks } from './PanelShape.tsx';
import {
  MOST_ON_MAP,
  mostPanelsAWing,
  panelStates,
  STATE_WORDS,
  type PanelFace,
} from './wingState.ts';
import styles from './WingMap.module.css';

/** Both wings, nose up, as seen from above: fill and word say the flow. */
export function WingMap() {
  const { sheet, layout } = useFly();
  const most = mostPanelsAWing(sheet);
  if (most === 0) {
    return <p className={styles.none}>No panels on the flight sheet</p>;
  }
  const oneRow = layout.screenClass === 'thirteen';
  return (
    <div className={oneRow ? `${styles.wings} ${styles.oneRow}` : styles.wings}>
      {WINGS.map((wing) =>
        most <= MOST_ON_MAP ? (
          <HalfOfKeys key={wing} wing={wing} />
        ) : (
          <HalfAsKey key={wing} wing={wing} />
        ),
      )}
    </div>
  );
}

function HalfOfKeys({ wing }: { readonly wing: Wing }) {
  const { sheet, state } = useFly();
  const panels = panelStates(sheet, state, wing);
  return (
    <div
      className={`${styles.half} ${styles[wing]}`}
      style={{ gridTemplateColumns: `repeat(${panels.length}, minmax(0, 1fr))` }}
    >
      <Skin wing={wing} />
      {panels.map((panel, index) => (
        <PanelKey
          key={panel.id}
          panel={panel}
          index={fromRoot(panel.wing, index, panels.length)}
          of={panels.length}
        />
      ))}
    </div>
  );
}

export function fromRoot(wing: Wing, index: number, of: number): number {
  return wing === 'L' ? of - 1 - index : index;
}

function PanelKey({
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
      className={chosen ? `${styles.panel} ${styles.chosen}` : styles.panel}
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
          chosen={chosen}
        />
      </span>
      <span className={styles.marks}>
        <ProbeMarks states={panel.probes.map((probe) => probe.state)} />
      </span>
      <span className={styles.plate}>
        <b>{panel.id}</b> {STATE_WORDS[panel.state]}
      </span>
    </TouchKey>
  );
}

/** More panels than fingers can part: the half wing is one key, drawn with all its panels. */
function HalfAsKey({ wing }: { readonly wing: Wing }) {
  const { sheet, state, move } = useFly();
  const panels = panelStates(sheet, state, wing);
  const laminar = panels.filter((panel) => panel.state === 'laminar').length;
  return (
    <TouchKey
      act={`wing-${wing}`}
      className={`${styles.whole} ${styles[wing]}`}
      label={`${wing === 'L' ? 'Left' : 'Right'} wing`}
      onTouch={() => move({ do: 'open', pad: { kind: 'wing', wing } })}
    >
      <Skin wing={wing} />
      <span className={styles.strip}>
        {panels.map((panel, index) => (
          <span key={panel.id}>
            <PanelShape
              state={panel.state}
              index={fromRoot(wing, index, panels.length)}
              of={panels.length}
              tipLeft={wing === 'L'}
              chosen={false}
            />
          </span>
        ))}
      </span>
      <span className={styles.plate}>
        <b>{wing === 'L' ? 'Left' : 'Right'}</b> {laminar} of {panels.length} LAM
      </span>
    </TouchKey>
  );
}

function Skin({ wing }: { readonly wing: Wing }) {
  return (
    <svg
      className={styles.skin}
      viewBox="-0.6 -1.6 101.2 103.2"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <polygon points={wing === 'L' ? '100,0 0,26 0,58 100,49' : '0,0 100,26 100,58 0,49'} />
    </svg>
  );
}
