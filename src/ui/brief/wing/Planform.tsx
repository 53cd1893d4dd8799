import type { Panel, Probe, Wing } from '../../../record/sheet.ts';
import type { WingPlan } from '../../../record/sheetAircraft.ts';
import { wingPlanM } from '../../../record/wingPlan.ts';
import styles from '../Brief.module.css';

const HALF = 92;
const TOP = -6;

/** Edges of a half wing in the drawing: leading and trailing, at the root and at the tip. */
interface Edges {
  readonly leading: { readonly root: number; readonly tip: number };
  readonly trailing: { readonly root: number; readonly tip: number };
}

/** Where nobody gave the wing: tapered, so that it shows which way is out. */
const ANY_WING: Edges = { leading: { root: 2, tip: 18.4 }, trailing: { root: 25.3, tip: 32.1 } };
const USUAL_SWEEP_DEG = 0;

interface WingProps {
  readonly panels: readonly Panel[];
  readonly probes: readonly Probe[];
  readonly plan?: WingPlan | undefined;
}

/** Both wings from above, panels in their places; where no span is given they stand in equal shares. */
export function Planform(props: WingProps) {
  const edges = edgesOf(props.plan);
  const foot = Math.max(edges.trailing.root, edges.trailing.tip, 12);
  const body = foot + 12;
  return (
    <svg
      className={styles.plan}
      viewBox={`-1 ${TOP} 202 ${foot + 18}`}
      role="img"
      aria-label={`Planform: ${props.panels.length} panels, ${props.probes.length} probes`}
    >
      <Half wing="L" edges={edges} foot={foot} {...props} />
      <Half wing="R" edges={edges} foot={foot} {...props} />
      <path
        className={styles.skin}
        d={`M95 ${body} V14 C95 6 97.5 0 100 -4 C102.5 0 105 6 105 14 V${body}`}
      />
    </svg>
  );
}

/** The wing to scale: as long as the drawing is wide, swept as given. */
function edgesOf(plan: WingPlan | undefined): Edges {
  const metres = wingPlanM(plan);
  if (metres === null) return ANY_WING;
  const scale = HALF / metres.semiSpanM;
  const sweep = ((plan?.leadingEdgeSweepDeg ?? USUAL_SWEEP_DEG) * Math.PI) / 180;
  const back = HALF * Math.tan(Math.max(-0.8, Math.min(0.8, sweep)));
  const leading = { root: 2 + Math.max(0, -back), tip: 2 + Math.max(0, back) };
  return {
    leading,
    trailing: {
      root: leading.root + metres.rootChordM * scale,
      tip: leading.tip + metres.tipChordM * scale,
    },
  };
}

function Half(props: WingProps & { wing: Wing; edges: Edges; foot: number }) {
  const { leading, trailing } = props.edges;
  const ofWing = props.panels.filter((panel) => panel.wing === props.wing);
  const x = (share: number): number =>
    props.wing === 'L' ? HALF * (1 - share) : 200 - HALF * (1 - share);
  const along = (edge: Edges['leading'], share: number): number =>
    edge.root + (edge.tip - edge.root) * share;
  const y = (span: number, chord: number): number =>
    along(leading, span) + (along(trailing, span) - along(leading, span)) * chord;
  const corner = (span: number, chord: number): string =>
    `${x(span).toFixed(1)},${y(span, chord).toFixed(1)}`;
  return (
    <g>
      <polygon
        className={styles.skin}
        points={[corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)].join(' ')}
      />
      {ofWing.map((panel, place) => {
        const [from, to] = spanOf(panel, place, ofWing.length);
        const [front, back] = chordOf(panel);
        const inset = 0.006;
        const [a, b] = [from + inset, to - inset];
        const probes = props.probes.filter((probe) => probe.panel === panel.id).length;
        return (
          <g key={place}>
            <polygon
              className={styles.panel}
              points={[corner(a, front), corner(b, front), corner(b, back), corner(a, back)].join(
                ' ',
              )}
            />
            <text className={styles.panelName} x={x((from + to) / 2)} y={props.foot + 6}>
              {panel.id}
            </text>
            <text className={styles.panelProbes} x={x((from + to) / 2)} y={props.foot + 11}>
              {probes === 0 ? 'none' : String(probes)}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function spanOf(panel: Panel, place: number, count: number): readonly [number, number] {
  const { spanFromFraction: from, spanToFraction: to } = panel;
  const given = from !== undefined && to !== undefined && from >= 0 && to <= 1 && from < to;
  return given ? [from, to] : [place / count, (place + 1) / count];
}

/** Nearly the whole chord where no limits are given, so that the skin of the wing still shows. */
function chordOf(panel: Panel): readonly [number, number] {
  const { chordFromFraction: from, chordToFraction: to } = panel;
  const given = from !== undefined && to !== undefined && from >= 0 && to <= 1 && from < to;
  return given ? [from, to] : [0.06, 0.94];
}
