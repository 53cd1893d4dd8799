import type { PanelState } from '../../../record/kinds.ts';
import type { FlightSheet, Panel, Wing } from '../../../record/sheet.ts';
import styles from './Print.module.css';

const HALF = 92;
/** Edges of a half wing in the drawing, root and tip, so that taper shows which way is out. */
const LEADING = { root: 2, tip: 18.4 };
const TRAILING = { root: 27, tip: 33 };
const PROBES_Y = 36;
const ID_Y = 45;
const WORDS_Y = 51;

/** Both wings from above; more fill is more turbulent, and the word stands under it. Hatch and fill, no hue. */
export function WingPlan(props: {
  readonly sheet: FlightSheet;
  readonly label: string;
  readonly stateOf: (panel: string) => PanelState;
  readonly wordsOf: (panel: string) => string;
  /** Whether a probe was turbulent; null draws none. */
  readonly probeOf: ((probe: string) => PanelState) | null;
}) {
  return (
    <svg className={styles.plan} viewBox="-1 -6 202 60" role="img" aria-label={props.label}>
      <defs>
        <pattern
          id="print-hatch"
          width="2"
          height="2"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="1" height="2" />
        </pattern>
      </defs>
      <Half wing="L" {...props} />
      <Half wing="R" {...props} />
      <path className={styles.skin} d="M95 52 V14 C95 6 97.5 0 100 -4 C102.5 0 105 6 105 14 V52" />
    </svg>
  );
}

type HalfProps = Parameters<typeof WingPlan>[0] & { readonly wing: Wing };

function Half({ wing, sheet, stateOf, wordsOf, probeOf }: HalfProps) {
  const panels = sheet.panels.filter((panel) => panel.wing === wing);
  const x = (share: number): number =>
    wing === 'L' ? HALF * (1 - share) : 200 - HALF * (1 - share);
  const y = (edge: typeof LEADING, share: number): number =>
    edge.root + (edge.tip - edge.root) * share;
  return (
    <g>
      <polygon
        className={styles.skin}
        points={`${x(0)},${LEADING.root} ${x(1)},${LEADING.tip} ${x(1)},${TRAILING.tip} ${x(0)},${TRAILING.root}`}
      />
      {panels.map((panel, place) => {
        const [from, to] = spanOf(panel, place, panels.length);
        const [a, b] = [from + 0.008, to - 0.008];
        const corner = (share: number, edge: typeof LEADING, inset: number): string =>
          `${x(share).toFixed(1)},${(y(edge, share) + inset).toFixed(1)}`;
        const [rootFore, tipFore] = [corner(a, LEADING, 2), corner(b, LEADING, 2)];
        const [tipAft, rootAft] = [corner(b, TRAILING, -1.6), corner(a, TRAILING, -1.6)];
        const state = stateOf(panel.id);
        const middle = x((from + to) / 2);
        return (
          <g key={panel.id} className={styles[state]}>
            <polygon
              className={styles.skinPart}
              points={`${rootFore} ${tipFore} ${tipAft} ${rootAft}`}
            />
            {state === 'intermittent' ? (
              <polygon className={styles.half} points={`${rootFore} ${tipAft} ${rootAft}`} />
            ) : null}
            {probeOf === null ? null : (
              <Probes sheet={sheet} panel={panel} middle={middle} wing={wing} probeOf={probeOf} />
            )}
            <text className={styles.panelId} x={middle} y={ID_Y}>
              {panel.id}
            </text>
            <text x={middle} y={WORDS_Y}>
              {wordsOf(panel.id)}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** From root to tip: outwards on either side. */
function Probes(props: {
  readonly sheet: FlightSheet;
  readonly panel: Panel;
  readonly wing: Wing;
  readonly middle: number;
  readonly probeOf: (probe: string) => PanelState;
}) {
  const probes = props.sheet.probes.filter(
    ({ panel, form }) => panel === props.panel.id && form === 'trailingEdgeTotal',
  );
  const step = Math.min(3, 12 / Math.max(1, probes.length));
  const outward = props.wing === 'L' ? -1 : 1;
  return probes.map(({ id }, place) => (
    <rect
      key={id}
      className={styles[`probe-${props.probeOf(id)}`]}
      x={props.middle + outward * step * (place - (probes.length - 1) / 2) - 1}
      y={PROBES_Y}
      width="2"
      height="2"
    />
  ));
}

function spanOf(panel: Panel, place: number, count: number): readonly [number, number] {
  const { spanFromFraction: from, spanToFraction: to } = panel;
  const given = from !== undefined && to !== undefined && from >= 0 && to <= 1 && from < to;
  return given ? [from, to] : [place / count, (place + 1) / count];
}
