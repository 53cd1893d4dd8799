import type { ReactNode } from 'react';
import type { EpochMs } from '../../../../record/brand.ts';
import { minuteWords } from '../../timeWords.ts';
import { ticks, xOf, type TimeWindow } from '../../timeline/timeScale.ts';
import styles from './Plot.module.css';
import { usePlotWidth } from './usePlotWidth.ts';

/** What a lane draws in: places in px from the left of the plot and from the top of the lane. */
export interface LanePen {
  readonly x: (at: EpochMs) => number;
  readonly fromPx: number;
  readonly toPx: number;
  readonly heightPx: number;
}

export interface TimeLane {
  readonly key: string;
  readonly name: string;
  readonly heightPx: number;
  /** A heavier rule above. */
  readonly opens?: boolean;
  readonly draw: (pen: LanePen) => ReactNode;
}

const AXIS_PX = 28;
const NAMES_PX = 98;
const LABEL_PX = 52;

/** Lanes under one axis of time in UTC, left to right, their names at the left. */
export function TimePlot(props: {
  readonly title: string;
  readonly scale: string;
  readonly summary: string;
  readonly window: TimeWindow;
  readonly lanes: readonly TimeLane[];
}) {
  const { lanes, window } = props;
  const { box, widthPx } = usePlotWidth();
  const plotPx = widthPx - NAMES_PX - 8;
  const scale = { window, widthPx: plotPx };
  const x = (at: EpochMs): number => NAMES_PX + xOf(scale, at);
  const heightPx = AXIS_PX + heightOf(lanes) + 4;
  const placed = lanes.map((lane, index) => ({
    lane,
    top: AXIS_PX + heightOf(lanes.slice(0, index)),
  }));
  return (
    <figure className={styles.plot}>
      <figcaption>
        <b>{props.title}</b> <span>{props.scale}</span>
      </figcaption>
      <div ref={box}>
        <svg role="img" aria-label={props.summary} width={widthPx} height={heightPx}>
          <Hatch />
          {ticks(scale, LABEL_PX).ticks.map(({ at, labelled, midnight }) => (
            <g key={at}>
              <line
                className={midnight ? styles.zero : styles.grid}
                x1={x(at)}
                x2={x(at)}
                y1={AXIS_PX - 6}
                y2={heightPx - 4}
              />
              {labelled ? (
                <text className={styles.tick} x={x(at)} y={AXIS_PX - 11}>
                  {minuteWords(at)}
                </text>
              ) : null}
            </g>
          ))}
          {placed.map(({ lane, top: at }) => (
            <g key={lane.key} transform={`translate(0 ${at})`}>
              <line
                className={lane.opens === true ? styles.family : styles.row}
                x1={0}
                x2={widthPx}
                y1={0}
                y2={0}
              />
              <text className={styles.name} x={0} y={Math.min(lane.heightPx / 2, 18) + 4.5}>
                {lane.name}
              </text>
              {lane.draw({ x, fromPx: NAMES_PX, toPx: NAMES_PX + plotPx, heightPx: lane.heightPx })}
            </g>
          ))}
        </svg>
      </div>
    </figure>
  );
}

function heightOf(lanes: readonly TimeLane[]): number {
  return lanes.reduce((total, lane) => total + lane.heightPx, 0);
}

/** The hatch that stands for the half fill in Sun. */
export function Hatch() {
  return (
    <defs>
      <pattern id="hatch" width="4" height="4" patternUnits="userSpaceOnUse">
        <rect width="4" height="4" className={styles.paper} />
        <path d="M0 4L4 0M-1 1L1 -1M3 5L5 3" className={styles.hatch} />
      </pattern>
    </defs>
  );
}
