import { figure as numberWords } from '../../../kit/number.ts';
import { axisOver, shareOf } from './axis.ts';
import type { PlotFigure } from './figures.ts';
import styles from './Plot.module.css';
import { usePlotWidth } from './usePlotWidth.ts';

export interface XyPoint {
  readonly key: string;
  readonly x: number;
  readonly y: PlotFigure | number;
  /** Printed beside the point. */
  readonly name: string;
}

const HEIGHT_PX = 210;
const LEFT_PX = 58;
const BOTTOM_PX = 42;
const TOP_PX = 12;
const RIGHT_PX = 26;
const CHARACTER_PX = 7.8;

/** Points on two axes: flights in a row where `names` stand along the bottom, else a value against a value. */
export function XyPlot(props: {
  readonly title: string;
  readonly scale: string;
  readonly summary: string;
  readonly points: readonly XyPoint[];
  /** Names of the places 0, 1, 2, … along the bottom. */
  readonly names?: readonly string[];
  readonly xTitle?: string;
  readonly withZero?: boolean;
}) {
  const { points, names } = props;
  const { box, widthPx } = usePlotWidth();
  const plotPx = widthPx - LEFT_PX - RIGHT_PX;
  const y = axisOver(points.flatMap(yValues), { withZero: props.withZero ?? true, atMost: 5 });
  const x =
    names === undefined
      ? axisOver(
          points.map((point) => point.x),
          { withZero: true, atMost: Math.max(2, Math.floor(plotPx / 80)) },
        )
      : { low: -0.5, high: names.length - 0.5, ticks: names.map((_, at) => at), decimals: 0 };
  const right = (value: number): number => LEFT_PX + shareOf(x, value) * plotPx;
  const down = (value: number): number =>
    TOP_PX + (1 - shareOf(y, value)) * (HEIGHT_PX - TOP_PX - BOTTOM_PX);
  const floor = HEIGHT_PX - BOTTOM_PX;
  const everyName = names === undefined ? 1 : Math.ceil((names.length * 86) / plotPx);
  return (
    <figure className={styles.plot}>
      <figcaption>
        <b>{props.title}</b> <span>{props.scale}</span>
      </figcaption>
      <div ref={box}>
        <svg role="img" aria-label={props.summary} width={widthPx} height={HEIGHT_PX}>
          {y.ticks.map((tick) => (
            <g key={tick}>
              <line
                className={tick === 0 ? styles.zero : styles.grid}
                x1={LEFT_PX}
                x2={widthPx - RIGHT_PX}
                y1={down(tick)}
                y2={down(tick)}
              />
              <text className={styles.told} x={LEFT_PX - 8} y={down(tick) + 4.5}>
                {numberWords(tick, y.decimals)}
              </text>
            </g>
          ))}
          {x.ticks
            .filter((_, index) => index % everyName === 0)
            .map((tick) => (
              <g key={tick}>
                <line
                  className={styles.grid}
                  x1={right(tick)}
                  x2={right(tick)}
                  y1={floor}
                  y2={floor + 5}
                />
                <text className={styles.tick} x={right(tick)} y={floor + 19}>
                  {names?.[tick] ?? numberWords(tick, x.decimals)}
                </text>
              </g>
            ))}
          <text className={styles.axisTitle} x={LEFT_PX} y={HEIGHT_PX - 4}>
            {props.xTitle ?? ''}
          </text>
          {points.map((point) => (
            <Point
              key={point.key}
              point={point}
              right={right(point.x)}
              down={down}
              widthPx={widthPx}
            />
          ))}
        </svg>
      </div>
    </figure>
  );
}

function Point({
  point: { y, name },
  right,
  down,
  widthPx,
}: {
  readonly point: XyPoint;
  readonly right: number;
  readonly down: (value: number) => number;
  readonly widthPx: number;
}) {
  const isLast = right + 10 + name.length * CHARACTER_PX > widthPx;
  const value = typeof y === 'number' ? y : y.value;
  const isHollow = typeof y !== 'number' && y.isHollow;
  return (
    <g>
      {typeof y === 'number' ? null : (
        <>
          <line
            className={styles.w95}
            x1={right}
            x2={right}
            y1={down(y.low95)}
            y2={down(y.high95)}
          />
          <rect
            className={styles.w68}
            x={right - 6}
            y={down(y.high68)}
            width={12}
            height={Math.max(1, down(y.low68) - down(y.high68))}
          />
        </>
      )}
      <rect
        className={isHollow ? styles.hollow : styles.dot}
        x={right - 3.5}
        y={down(value) - 3.5}
        width={7}
        height={7}
      />
      <text
        className={isLast ? styles.told : styles.name}
        x={isLast ? right - 10 : right + 10}
        y={down(value) - 5}
      >
        {name}
      </text>
    </g>
  );
}

function yValues({ y }: XyPoint): readonly number[] {
  return typeof y === 'number' ? [y] : [y.low95, y.high95];
}
