import type { PanelState } from '../../record/kinds.ts';
import styles from './PanelShape.module.css';

/** Leading edge drops 26 % of the half height from root to tip; the trailing edge goes from 49 % to 58 %. */
const LEAD_DROP = 26;
const TRAIL_ROOT = 49;
const TRAIL_DROP = 9;
const INSET = 5;

/** A panel drawn inside its target: fill says the flow, taper says the place. `index` counts from the root. */
export function PanelShape(props: {
  readonly state: PanelState;
  readonly index: number;
  readonly of: number;
  readonly tipLeft: boolean;
  readonly chosen: boolean;
  /** The lower part of a map's target holds marks and words; on a tile the shape has the height to itself. */
  readonly cropped?: boolean;
}) {
  const near = props.index / props.of;
  const far = (props.index + 1) / props.of;
  const lead = (share: number): number => LEAD_DROP * share + INSET;
  const trail = (share: number): number => TRAIL_ROOT + TRAIL_DROP * share - 1.5;
  const [left, right] = props.tipLeft ? [far, near] : [near, far];
  const outline = `2,${lead(left)} 98,${lead(right)} 98,${trail(right)} 2,${trail(left)}`;
  const aft = props.tipLeft
    ? `98,${lead(right)} 98,${trail(right)} 2,${trail(left)}`
    : `2,${lead(left)} 98,${trail(right)} 2,${trail(left)}`;
  return (
    <svg
      className={`${styles.shape} ${styles[props.state]} ${props.chosen ? styles.chosen : ''}`}
      viewBox={props.cropped === true ? '0 2 100 58' : '0 0 100 100'}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <polygon className={styles.outline} points={outline} />
      {props.state === 'intermittent' ? <polygon className={styles.half} points={aft} /> : null}
    </svg>
  );
}

/** The same three fills on the state keys. */
export function StateSwatch({ state }: { readonly state: PanelState }) {
  return (
    <svg
      className={`${styles.swatch} ${styles[state]}`}
      viewBox="0 0 24 10"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <rect className={styles.outline} x=".6" y=".6" width="22.8" height="8.8" />
      {state === 'intermittent' ? (
        <polygon className={styles.half} points=".6,.6 23.4,9.4 .6,9.4" />
      ) : null}
    </svg>
  );
}

/** One small square a probe: open laminar, half intermittent, full turbulent, a dash when not read. */
export function ProbeMarks({ states }: { readonly states: readonly PanelState[] }) {
  return (
    <span className={styles.probes} aria-hidden="true">
      {states.map((state, index) => (
        <i key={index} className={styles[`probe-${state}`]} />
      ))}
    </span>
  );
}

/** The hatch that stands for the half fill in Sun. */
export function HatchDefs() {
  return (
    <svg className={styles.defs} aria-hidden="true">
      <defs>
        <pattern
          id="hatch"
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="3.4" height="7" fill="currentColor" />
        </pattern>
      </defs>
    </svg>
  );
}
