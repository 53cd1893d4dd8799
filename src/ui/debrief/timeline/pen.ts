import type { EntryId, EpochMs } from '../../../record/brand.ts';
import type { AxisTime } from '../axisTime.ts';
import type { ChartLayout } from './laneLayout.ts';
import type { TimelineModel } from './model.ts';
import type { Roles } from './roles.ts';
import { xOf, type TimeScale } from './timeScale.ts';

/** What every stroke of the chart needs to know. */
export interface Pen {
  readonly ctx: CanvasRenderingContext2D;
  readonly roles: Roles;
  readonly model: TimelineModel;
  readonly layout: ChartLayout;
  readonly scale: TimeScale;
  /** How the axis and its cursor say a time, and the second row under them. */
  readonly axis: AxisTime;
  readonly under: AxisTime | null;
  readonly selected: EntryId | null;
  /** The focus ring is drawn while the list of marks has the focus. */
  readonly isFocused: boolean;
}

export const TEXT_PX = 12.5;

export function chartX({ layout, scale }: Pen, at: EpochMs): number {
  return layout.namesPx + xOf(scale, at);
}

export function setFont(pen: Pen, weight: 'normal' | 'bold', sizePx = TEXT_PX): void {
  pen.ctx.font = `${weight === 'bold' ? 700 : 400} ${sizePx}px ${pen.roles.font}`;
}

export function line(
  pen: Pen,
  from: readonly [number, number],
  to: readonly [number, number],
): void {
  pen.ctx.beginPath();
  pen.ctx.moveTo(from[0], from[1]);
  pen.ctx.lineTo(to[0], to[1]);
  pen.ctx.stroke();
}

/** The words, or as many of their letters as the room allows with an ellipsis; empty below three letters. */
export function fitted(pen: Pen, words: string, roomPx: number): string {
  if (pen.ctx.measureText(words).width <= roomPx) {
    return words;
  }
  let low = 0;
  let high = words.length;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if (pen.ctx.measureText(`${words.slice(0, middle).trimEnd()}…`).width <= roomPx) {
      low = middle;
    } else {
      high = middle - 1;
    }
  }
  return low < 3 ? '' : `${words.slice(0, low).trimEnd()}…`;
}

/** Words with the ground behind them, so that a grid line never runs through a letter. */
export function plate(pen: Pen, words: string, xPx: number, yPx: number, colour: string): void {
  const { ctx, roles } = pen;
  ctx.lineJoin = 'round';
  ctx.lineWidth = 4;
  ctx.strokeStyle = roles.ground;
  ctx.strokeText(words, xPx, yPx);
  ctx.fillStyle = colour;
  ctx.fillText(words, xPx, yPx);
}

export function hatched(pen: Pen, box: readonly [number, number, number, number]): void {
  const { ctx, roles } = pen;
  const [x, y, width, height] = box;
  ctx.save();
  ctx.beginPath();
  ctx.rect(x, y, width, height);
  ctx.clip();
  ctx.strokeStyle = roles.int;
  ctx.lineWidth = 2.4;
  ctx.beginPath();
  for (let step = -height; step < width; step += 7) {
    ctx.moveTo(x + step, y + height);
    ctx.lineTo(x + step + height, y);
  }
  ctx.stroke();
  ctx.restore();
}
