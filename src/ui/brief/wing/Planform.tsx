import type { Panel, Probe, Wing } from '../../../record/sheet.ts';
import styles from '../Brief.module.css';

const HALF = 92;
/** Edges of a half wing in the drawing: root and tip, leading and trailing, so that taper shows which way is out. */
const LEADING = { root: 2, tip: 18.4 };
const TRAILING = { root: 25.3, tip: 32.1 };

/** Both wings from above, panels in their places; where no span is given they stand in equal shares. */
export function Planform(props: {
  readonly panels: readonly Panel[];
  readonly probes: readonly Probe[];
}) {
  return (
    <svg
      className={styles.plan}
      viewBox="-1 -6 202 50"
      role="img"
      aria-label={`Planform: ${props.panels.length} panels, ${props.probes.length} probes`}
    >
      <Half wing="L" {...props} />
      <Half wing="R" {...props} />
      <path className={styles.skin} d="M95 44 V14 C95 6 97.5 0 100 -4 C102.5 0 105 6 105 14 V44" />
    </svg>
  );
}

function Half(props: {
  readonly wing: Wing;
  readonly panels: readonly Panel[];
  readonly probes: readonly Probe[];
}) {
  const ofWing = props.panels.filter((panel) => panel.wing === props.wing);
  const x = (share: number): number =>
    props.wing === 'L' ? HALF * (1 - share) : 200 - HALF * (1 - share);
  const y = (edge: typeof LEADING, share: number): number =>
    edge.root + (edge.tip - edge.root) * share;
  return (
    <g>
      <polygon
        className={styles.skin}
        points={`${x(0)},${LEADING.root} ${x(1)},${LEADING.tip} ${x(1)},${TRAILING.tip} ${x(0)},${TRAILING.root}`}
      />
      {ofWing.map((panel, place) => {
        const [from, to] = spanOf(panel, place, ofWing.length);
        const inset = 0.006;
        const [a, b] = [from + inset, to - inset];
        const probes = props.probes.filter((probe) => probe.panel === panel.id).length;
        return (
          <g key={place}>
            <polygon
              className={styles.panel}
              points={[
                [x(a), y(LEADING, a) + 1.8],
                [x(b), y(LEADING, b) + 1.8],
                [x(b), y(TRAILING, b) - 1.4],
                [x(a), y(TRAILING, a) - 1.4],
              ]
                .map(([px = 0, py = 0]) => `${px.toFixed(1)},${py.toFixed(1)}`)
                .join(' ')}
            />
            <text className={styles.panelName} x={x((from + to) / 2)} y={38}>
              {panel.id}
            </text>
            <text className={styles.panelProbes} x={x((from + to) / 2)} y={43}>
              {probes === 0 ? 'no probe' : String(probes)}
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
