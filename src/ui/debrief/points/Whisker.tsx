import type { ReductionFigure } from '../../../analysis/results.ts';
import styles from './Points.module.css';
import { shareOf, ticksOf, type PointScale } from './pointScale.ts';

/** Half of a 68 % interval beside half of a 95 % one (normal distribution). */
const SHARE_68_OF_95 = 1 / 1.959964;

/** A square on a thick 68 and a thin 95 whisker, hollow where it is only indicative; words in its place where there is no number. */
export function Whisker(props: {
  readonly scale: PointScale;
  readonly figure: ReductionFigure | null;
  readonly targetPct: number | null;
  readonly isHollow: boolean;
  readonly words: string | null;
}) {
  const { scale, figure } = props;
  const at = (valuePct: number): string => `${(100 * shareOf(scale, valuePct)).toFixed(2)}%`;
  return (
    <div className={styles.axisBox}>
      <svg className={styles.whisker} aria-hidden="true">
        {ticksOf(scale).map((value) => (
          <line
            key={value}
            className={value === 0 ? styles.zero : styles.grid}
            x1={at(value)}
            x2={at(value)}
            y1="0"
            y2="100%"
          />
        ))}
        {props.targetPct === null ? null : (
          <line
            className={styles.target}
            x1={at(props.targetPct)}
            x2={at(props.targetPct)}
            y1="0"
            y2="100%"
          />
        )}
        {figure === null ? null : <Bars at={at} figure={figure} isHollow={props.isHollow} />}
      </svg>
      {props.words === null ? null : <span className={styles.inPlace}>{props.words}</span>}
    </div>
  );
}

function Bars({
  at,
  figure,
  isHollow,
}: {
  readonly at: (valuePct: number) => string;
  readonly figure: ReductionFigure;
  readonly isHollow: boolean;
}) {
  const value = 100 * figure.fraction;
  const low = 100 * figure.interval95.low;
  const high = 100 * figure.interval95.high;
  const half68 = ((high - low) / 2) * SHARE_68_OF_95;
  return (
    <>
      <line className={styles.w95} x1={at(low)} x2={at(high)} y1="50%" y2="50%" />
      <line
        className={styles.w68}
        x1={at(value - half68)}
        x2={at(value + half68)}
        y1="50%"
        y2="50%"
      />
      <svg x={at(value)} y="50%" overflow="visible">
        <rect
          className={isHollow ? styles.hollow : styles.dot}
          x="-3"
          y="-3"
          width="6"
          height="6"
        />
      </svg>
    </>
  );
}
