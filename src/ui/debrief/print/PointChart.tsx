import type { PointOfFlight } from '../../../analysis/flightResults.ts';
import { missingWords } from '../../../analysis/words/reasons.ts';
import { stateWords } from '../../../analysis/words/points.ts';
import type { ReductionFigure } from '../../../analysis/results.ts';
import { flowIn } from '../../../analysis/sheetUnits.ts';
import { figure } from '../../kit/number.ts';
import { cut } from './cut.ts';
import type { Printed } from './printed.ts';
import styles from './Print.module.css';
import { halfPct } from './summaryFacts.ts';

const WIDTH = 680;
const ROW = 17;
const TOP = 16;
const AXIS = { from: 210, to: 600 };
/** Half of a 68 % interval beside half of a 95 % one (normal distribution). */
const SHARE_68_OF_95 = 1 / 1.959964;

/** A line a point: square on a thick 68 and a thin 95 % whisker, hollow where indicative; a reason where no number is. */
export function PointChart({ printed }: { readonly printed: Printed }) {
  const { points } = printed.results;
  const target = printed.desk.view.state.sheet?.targetReductionFraction;
  const figures = points.flatMap((point) => figureOf(point) ?? []);
  const highPct = Math.max(
    10,
    100 * (target ?? 0),
    ...figures.map(({ interval95 }) => 100 * interval95.high),
  );
  const lowPct = Math.min(0, ...figures.map(({ interval95 }) => 100 * interval95.low));
  const at = (valuePct: number): number =>
    AXIS.from + ((valuePct - lowPct) / (highPct - lowPct)) * (AXIS.to - AXIS.from);
  const height = TOP + ROW * points.length;
  const ticks = Array.from({ length: Math.floor(highPct / 10) + 1 }, (_, place) => 10 * place);
  return (
    <svg
      className={styles.chart}
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label="Fuel-flow reduction by test point, in per cent, with 95 % intervals"
    >
      {ticks.map((tick) => (
        <g key={tick}>
          <line
            className={tick === 0 ? styles.zero : styles.grid}
            x1={at(tick)}
            x2={at(tick)}
            y1={TOP - 3}
            y2={height}
          />
          <text className={styles.tick} x={at(tick)} y={TOP - 6}>
            {tick}
          </text>
        </g>
      ))}
      {target === undefined ? null : (
        <line
          className={styles.target}
          x1={at(100 * target)}
          x2={at(100 * target)}
          y1={TOP - 3}
          y2={height}
        />
      )}
      {points.map((point, place) => (
        <Row
          key={`${point.point} ${point.run}`}
          printed={printed}
          point={point}
          y={TOP + ROW * place}
          at={at}
        />
      ))}
    </svg>
  );
}

function figureOf({ result }: PointOfFlight): ReductionFigure | null {
  return result.kind === 'valid' || result.kind === 'indicative' ? result.fuel : null;
}

function Row(props: {
  readonly printed: Printed;
  readonly point: PointOfFlight;
  readonly y: number;
  readonly at: (valuePct: number) => number;
}) {
  const { point, y, at, printed } = props;
  const { result } = point;
  const shown = figureOf(point);
  const base = y + 12;
  return (
    <g>
      <line className={styles.rowLine} x1="0" x2={WIDTH} y1={y} y2={y} />
      <text className={styles.strong} x="0" y={base}>
        {point.point}
      </text>
      <text x="36" y={base}>
        r{point.run}
      </text>
      <text x="54" y={base}>
        {cut(point.setting === '' ? point.title : point.setting, 27)}
      </text>
      {shown === null ? null : (
        <Bars figure={shown} isHollow={isHollow(point)} y={y + 8.5} at={at} />
      )}
      {result.kind === 'none' ? (
        <text x={AXIS.from + 8} y={base}>
          no number: {missingWords(result.because)}
        </text>
      ) : null}
      {result.kind === 'baseline' ? (
        <text x={AXIS.from + 8} y={base}>
          baseline {figure(flowIn(printed.flowUnit, result.flowAtCardKgPerS), 0)} {printed.flowUnit}
        </text>
      ) : null}
      <text className={styles.atRight} x={WIDTH} y={base}>
        {shown === null
          ? stateWords(point)
          : `${figure(100 * shown.fraction, 1)} ± ${halfPct(shown.interval95)}`}
      </text>
    </g>
  );
}

/** Struck by a gate or not finished: a number to look at, not to use. */
function isHollow({ result }: PointOfFlight): boolean {
  return result.kind === 'indicative' || (result.kind === 'valid' && result.broken.length > 0);
}

function Bars(props: {
  readonly figure: ReductionFigure;
  readonly isHollow: boolean;
  readonly y: number;
  readonly at: (valuePct: number) => number;
}) {
  const { at, y } = props;
  const { fraction, interval95 } = props.figure;
  const half = 50 * (interval95.high - interval95.low) * SHARE_68_OF_95;
  const value = 100 * fraction;
  return (
    <g>
      <line
        className={styles.w95}
        x1={at(100 * interval95.low)}
        x2={at(100 * interval95.high)}
        y1={y}
        y2={y}
      />
      <line className={styles.w68} x1={at(value - half)} x2={at(value + half)} y1={y} y2={y} />
      <rect
        className={props.isHollow ? styles.hollow : styles.dot}
        x={at(value) - 3.5}
        y={y - 3.5}
        width="7"
        height="7"
      />
    </g>
  );
}
