import { figure as numberWords } from '../../../kit/number.ts';
import { axisOver, shareOf } from './axis.ts';
import type { PlotFigure } from './figures.ts';
import styles from './Plot.module.css';
import { usePlotWidth } from './usePlotWidth.ts';

export interface PlotRow {
  readonly key: string;
  readonly name: string;
  /** Solid from zero; `of` is the whole that it is part of, drawn as an outline. */
  readonly bar?: { readonly value: number; readonly of?: number };
  readonly figure?: PlotFigure | null;
  /** Stands in the place of a number that cannot be given. */
  readonly words?: string;
  /** Printed at the end of the row. */
  readonly told?: string;
}

const ROW_PX = 32;
const AXIS_PX = 26;
const CHARACTER_PX = 7.6;
const TICK_PX = 74;

/** Rows on one value axis: a square in thick 68 and thin 95 whiskers, or a bar from zero; zero always drawn. */
export function RowPlot(props: {
  /** What is plotted and in which unit. */
  readonly title: string;
  readonly scale: string;
  /** One sentence for a reader: what the plot shows. */
  readonly summary: string;
  readonly rows: readonly PlotRow[];
  readonly target?: { readonly value: number; readonly words: string } | null;
}) {
  const { rows } = props;
  const target = props.target ?? null;
  const { box, widthPx } = usePlotWidth();
  const namesPx = columnPx(
    rows.map(({ name }) => name),
    60,
    0.36 * widthPx,
  );
  const toldPx = columnPx(
    rows.map(({ told }) => told ?? ''),
    0,
    0.3 * widthPx,
  );
  const plotPx = Math.max(80, widthPx - namesPx - toldPx - 20);
  const axis = axisOver([...rows.flatMap(valuesOf), ...(target === null ? [] : [target.value])], {
    withZero: true,
    atMost: Math.max(2, Math.floor(plotPx / TICK_PX) + 1),
  });
  const x = (value: number): number => namesPx + 10 + shareOf(axis, value) * plotPx;
  const bottom = AXIS_PX + rows.length * ROW_PX;
  return (
    <figure className={styles.plot}>
      <figcaption>
        <b>{props.title}</b> <span>{props.scale}</span>
      </figcaption>
      <div ref={box}>
        <svg role="img" aria-label={props.summary} width={widthPx} height={bottom + 6}>
          {axis.ticks.map((tick) => (
            <g key={tick}>
              <line
                className={tick === 0 ? styles.zero : styles.grid}
                x1={x(tick)}
                x2={x(tick)}
                y1={AXIS_PX - 5}
                y2={bottom}
              />
              <text className={styles.tick} x={x(tick)} y={AXIS_PX - 9}>
                {numberWords(tick, axis.decimals)}
              </text>
            </g>
          ))}
          {target === null ? null : (
            <line
              className={styles.target}
              x1={x(target.value)}
              x2={x(target.value)}
              y1={AXIS_PX - 5}
              y2={bottom}
            >
              <title>{target.words}</title>
            </line>
          )}
          {rows.map((row, index) => (
            <Row
              key={row.key}
              row={row}
              middle={AXIS_PX + (index + 0.5) * ROW_PX}
              x={x}
              widthPx={widthPx}
            />
          ))}
        </svg>
      </div>
    </figure>
  );
}

function Row(props: {
  readonly row: PlotRow;
  readonly middle: number;
  readonly x: (value: number) => number;
  readonly widthPx: number;
}) {
  const { row, middle, x, widthPx } = props;
  return (
    <g>
      <line
        className={styles.row}
        x1={0}
        x2={widthPx}
        y1={middle + ROW_PX / 2}
        y2={middle + ROW_PX / 2}
      />
      <text className={styles.name} x={0} y={middle + 4.5}>
        {row.name}
      </text>
      {row.bar === undefined ? null : <Bar bar={row.bar} middle={middle} x={x} />}
      {row.figure === undefined || row.figure === null ? null : (
        <Whiskers figure={row.figure} at={x} across={middle} />
      )}
      {row.words === undefined ? null : (
        <text className={styles.words} x={x(0) + 8} y={middle + 4.5}>
          {row.words}
        </text>
      )}
      {row.told === undefined ? null : (
        <text className={styles.told} x={widthPx} y={middle + 4.5}>
          {row.told}
        </text>
      )}
    </g>
  );
}

function Bar({
  bar: { value, of },
  middle,
  x,
}: {
  readonly bar: NonNullable<PlotRow['bar']>;
  readonly middle: number;
  readonly x: (value: number) => number;
}) {
  const left = Math.min(x(0), x(value));
  return (
    <>
      {of === undefined ? null : (
        <rect className={styles.whole} x={x(0)} y={middle - 8} width={x(of) - x(0)} height={16} />
      )}
      <rect
        className={styles.bar}
        x={left}
        y={middle - 8}
        width={Math.abs(x(value) - x(0))}
        height={16}
      />
    </>
  );
}

function Whiskers({
  figure,
  at,
  across,
}: {
  readonly figure: PlotFigure;
  readonly at: (value: number) => number;
  readonly across: number;
}) {
  const [low68, high68] = [at(figure.low68), at(figure.high68)];
  return (
    <>
      <line
        className={styles.w95}
        x1={at(figure.low95)}
        x2={at(figure.high95)}
        y1={across}
        y2={across}
      />
      <rect
        className={styles.w68}
        x={low68}
        y={across - 6}
        width={Math.max(1, high68 - low68)}
        height={12}
      />
      <rect
        className={figure.isHollow ? styles.hollow : styles.dot}
        x={at(figure.value) - 3.5}
        y={across - 3.5}
        width={7}
        height={7}
      />
    </>
  );
}

function valuesOf({ bar, figure }: PlotRow): readonly number[] {
  return [
    ...(bar === undefined ? [] : [bar.value, bar.of ?? bar.value]),
    ...(figure === undefined || figure === null ? [] : [figure.low95, figure.high95]),
  ];
}

function columnPx(words: readonly string[], least: number, most: number): number {
  const longest = Math.max(0, ...words.map(({ length }) => length));
  return Math.min(most, Math.max(least, longest * CHARACTER_PX + (longest === 0 ? 0 : 8)));
}
