import { numberWords } from '../../record/sheetMeasure.ts';
import styles from './Graph.module.css';

/** Millimetres of the drawing. */
const WIDE = 120;
const HIGH = 56;
const FRAME = { left: 14, right: 115, top: 5, bottom: 46 };
const TICKS = 4;

export interface GraphPoint {
  readonly x: number;
  readonly y: number;
  /** Half of the 95 % interval; 0 draws none. */
  readonly half: number;
}

/** A small graph of a flight sheet: lines with their intervals, measured points, and a hull of what was flown. */
export function Graph(props: {
  readonly label: string;
  readonly across: string;
  readonly up: string;
  readonly lines: readonly { readonly name: string; readonly points: readonly GraphPoint[] }[];
  /** `isLeft`: shown and not fitted. */
  readonly dots: readonly { readonly x: number; readonly y: number; readonly isLeft: boolean }[];
  /** From where to where across somebody flew. */
  readonly hull?: readonly [number, number];
  readonly fromZero?: boolean;
}) {
  const drawn = props.lines.flatMap(({ points }) => points);
  const zero = props.fromZero === true ? [0] : [];
  const [x, y] = [
    scaleOf(
      [...zero, ...drawn.map((point) => point.x), ...props.dots.map((dot) => dot.x)],
      [FRAME.left, FRAME.right],
    ),
    scaleOf(
      [
        ...zero,
        ...drawn.flatMap((point) => [point.y - point.half, point.y + point.half]),
        ...props.dots.map((dot) => dot.y),
      ],
      [FRAME.bottom, FRAME.top],
    ),
  ];
  const at = (point: { readonly x: number; readonly y: number }) =>
    `${x.at(point.x).toFixed(2)},${y.at(point.y).toFixed(2)}`;
  return (
    <svg
      className={styles.graph}
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={`${props.label}: ${props.up} against ${props.across}`}
    >
      {x.ticks.map((tick) => (
        <g key={tick}>
          <line
            className={styles.grid}
            x1={x.at(tick)}
            x2={x.at(tick)}
            y1={FRAME.top}
            y2={FRAME.bottom}
          />
          <text x={x.at(tick)} y={FRAME.bottom + 3.6} textAnchor="middle">
            {numberWords(tick)}
          </text>
        </g>
      ))}
      {y.ticks.map((tick) => (
        <g key={tick}>
          <line
            className={styles.grid}
            x1={FRAME.left}
            x2={FRAME.right}
            y1={y.at(tick)}
            y2={y.at(tick)}
          />
          <text x={FRAME.left - 1} y={y.at(tick) + 0.9} textAnchor="end">
            {numberWords(tick)}
          </text>
        </g>
      ))}
      <text x={FRAME.right} y={HIGH - 2} textAnchor="end">
        {props.across}
      </text>
      <text x={1} y={3}>
        {props.up}
      </text>
      {props.hull === undefined ? null : (
        <rect
          className={styles.hull}
          x={x.at(props.hull[0])}
          y={FRAME.top}
          width={Math.max(0, x.at(props.hull[1]) - x.at(props.hull[0]))}
          height={FRAME.bottom - FRAME.top}
        />
      )}
      {props.lines.map(({ name, points }, index) => (
        <g key={index}>
          <polygon
            className={styles.band}
            points={[
              ...points.map((point) => at({ x: point.x, y: point.y + point.half })),
              ...points.toReversed().map((point) => at({ x: point.x, y: point.y - point.half })),
            ].join(' ')}
          />
          <polyline className={styles.line} points={points.map(at).join(' ')} />
          {props.lines.length < 2 ? null : (
            <LineName
              name={name}
              place={index}
              points={points.map((point) => ({ x: x.at(point.x), y: y.at(point.y) }))}
            />
          )}
        </g>
      ))}
      {props.dots.map((dot, index) => (
        <circle
          key={index}
          className={dot.isLeft ? styles.left : styles.dot}
          cx={x.at(dot.x)}
          cy={y.at(dot.y)}
          r={1}
        />
      ))}
      <path
        className={styles.axis}
        d={`M${FRAME.left} ${FRAME.top} V${FRAME.bottom} H${FRAME.right}`}
      />
    </svg>
  );
}

/** A line that rises leaves room below its middle; a second name stands a line of text lower. */
function LineName(props: {
  readonly name: string;
  readonly place: number;
  readonly points: readonly { readonly x: number; readonly y: number }[];
}) {
  const [first, last] = [props.points[0], props.points.at(-1)];
  return first === undefined || last === undefined ? null : (
    <text
      x={(first.x + last.x) / 2 + 2}
      y={Math.min(FRAME.bottom - 1.5, (first.y + last.y) / 2 + 5 + 3.2 * props.place)}
    >
      {props.name}
    </text>
  );
}

/** A scale whose ends are round numbers around all values. */
function scaleOf(values: readonly number[], [from, to]: readonly [number, number]) {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const span = most > least ? most - least : Math.max(1, Math.abs(most));
  const step = roundStep(span / TICKS);
  const low = Math.floor(least / step + 1e-9) * step;
  const high = Math.max(low + step, Math.ceil(most / step - 1e-9) * step);
  const count = Math.round((high - low) / step);
  return {
    at: (value: number) => from + ((value - low) / (high - low)) * (to - from),
    ticks: Array.from({ length: count + 1 }, (_, place) =>
      Number((low + place * step).toPrecision(10)),
    ),
  };
}

function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const share = rough / power;
  return power * (share > 5 ? 10 : share > 2 ? 5 : share > 1 ? 2 : 1);
}
