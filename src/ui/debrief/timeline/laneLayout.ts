import type { Lane, LaneId } from './lanes.ts';

/** Where each lane stands, in CSS px from the top of the chart; the axis takes the first `axisPx`. */
export interface LaneBox {
  readonly lane: Lane;
  readonly topPx: number;
  readonly heightPx: number;
}

export interface ChartLayout {
  readonly boxes: readonly LaneBox[];
  readonly axisPx: number;
  readonly heightPx: number;
  /** The column of names, left of the axis. */
  readonly namesPx: number;
  readonly widthPx: number;
}

const AXIS_PX = 38;
/** Under the fuel readings run the brackets of the test points, with their names. */
const INSETS_PX = { fuel: [7, 18], other: [7, 7] } as const;
/** Least and most of each form: lanes share what the screen has, in this order of need. */
const HEIGHTS_PX: Readonly<
  Record<Lane['form'] | 'reduction', readonly [least: number, most: number]>
> = {
  interval: [19, 24],
  panel: [12, 18],
  curve: [60, 110],
  reduction: [78, 150],
  words: [22, 26],
};

const NARROW_BELOW_PX = 700;

/** Width of the column of names: all that shares the axis begins its own there. */
export function namesPxOf(widthPx: number): number {
  return widthPx < NARROW_BELOW_PX ? 96 : 112;
}

/**
 * Lays lanes out between their least and most heights. More panels than fit make the chart taller, never a lane lower
 * than its least.
 */
export function chartLayout(
  lanes: readonly Lane[],
  room: { readonly widthPx: number; readonly heightPx: number; readonly namesPx: number },
): ChartLayout {
  const least = sum(lanes, 0);
  const most = sum(lanes, 1);
  const spare = Math.max(0, room.heightPx - AXIS_PX - least);
  const share = most === least ? 0 : Math.min(1, spare / (most - least));
  let topPx = AXIS_PX;
  const boxes = lanes.map((lane) => {
    const [low, high] = heightsOf(lane);
    const heightPx = Math.floor(low + share * (high - low));
    const box = { lane, topPx, heightPx };
    topPx += heightPx;
    return box;
  });
  return {
    boxes,
    axisPx: AXIS_PX,
    heightPx: topPx + 1,
    namesPx: room.namesPx,
    widthPx: room.widthPx,
  };
}

function heightsOf(lane: Lane): readonly [number, number] {
  return HEIGHTS_PX[lane.id === 'reduction' ? 'reduction' : lane.form];
}

function sum(lanes: readonly Lane[], which: 0 | 1): number {
  return lanes.reduce((total, lane) => total + heightsOf(lane)[which], 0);
}

export function boxOf(layout: ChartLayout, id: LaneId): LaneBox | undefined {
  return layout.boxes.find((box) => box.lane.id === id);
}

/** The lane under a height; the nearest one above or below the lanes. */
export function laneAt(layout: ChartLayout, yPx: number): LaneBox | undefined {
  return (
    layout.boxes.find((box) => yPx >= box.topPx && yPx < box.topPx + box.heightPx) ??
    (yPx < layout.axisPx ? layout.boxes[0] : layout.boxes.at(-1))
  );
}

/** Height of a value inside a curve lane, in px from the top of the chart. */
export function yOfValue(
  box: LaneBox,
  value: number,
  range: { readonly low: number; readonly high: number },
): number {
  const [abovePx, belowPx] = INSETS_PX[box.lane.id === 'fuel' ? 'fuel' : 'other'];
  const share = (value - range.low) / (range.high - range.low || 1);
  return box.topPx + box.heightPx - belowPx - share * (box.heightPx - abovePx - belowPx);
}
