import type { AxisTime } from '../axisTime.ts';
import { ordinalDate } from '../timeWords.ts';
import { markOf } from './marksInView.ts';
import { chartX, line, setFont, TEXT_PX, type Pen } from './pen.ts';
import { ticks, type Tick } from './timeScale.ts';

/** The chosen axis above, a second one below it, the date or the unit at the left end, and the grid. */
export function paintAxis(pen: Pen): void {
  const { ctx, roles, layout, scale, axis } = pen;
  const right = layout.widthPx;
  setFont(pen, 'bold', 12);
  ctx.textAlign = 'left';
  ctx.fillStyle = roles.ink;
  ctx.fillText(isOfDay(axis) ? ordinalDate(scale.window.from) : axis.head, 0, 13);
  const all = ticks(scale, axis.labelPx, axis).ticks;
  paintGrid(pen, all);
  setFont(pen, 'normal', 12);
  for (const tick of all) {
    const x = Math.round(chartX(pen, tick.at)) + 0.5;
    if (tick.labelled && x < right - 8) {
      if (tick.midnight) setFont(pen, 'bold', 12);
      const words = tick.midnight ? ordinalDate(tick.at) : axis.tickWords(tick.at);
      const half = ctx.measureText(words).width / 2;
      ctx.fillText(words, Math.min(Math.max(x - half, layout.namesPx), right - 2 * half), 13);
      if (tick.midnight) setFont(pen, 'normal', 12);
    }
  }
  if (pen.under !== null) {
    paintUnder(pen, pen.under);
  }
  ctx.strokeStyle = roles.rule;
  ctx.lineWidth = 1;
  line(pen, [0, layout.axisPx - 0.5], [right, layout.axisPx - 0.5]);
}

/** Uprights of one weight in one stroke each: hairs, labelled ones, midnight. */
function paintGrid(pen: Pen, all: readonly Tick[]): void {
  const { ctx, roles, layout } = pen;
  const uprights = (wanted: (tick: Tick) => boolean, colour: string, widthPx: number): void => {
    ctx.strokeStyle = colour;
    ctx.lineWidth = widthPx;
    ctx.beginPath();
    for (const tick of all.filter(wanted)) {
      const x = Math.round(chartX(pen, tick.at)) + 0.5;
      ctx.moveTo(x, tick.labelled ? 17 : 36);
      ctx.lineTo(x, layout.heightPx);
    }
    ctx.stroke();
  };
  uprights(({ labelled }) => !labelled, roles.hair, 0.5);
  uprights(({ labelled, midnight }) => labelled && !midnight, roles.rule, 0.5);
  uprights(({ midnight }) => midnight, roles.rule, 1.4);
}

/** UTC carries its date; what counts from an event carries its unit. */
const isOfDay = ({ choice }: AxisTime): boolean => choice === 'utc' || choice === 'dayOfYear';

function paintUnder(pen: Pen, under: AxisTime): void {
  const { ctx, roles, layout, scale } = pen;
  setFont(pen, 'normal', 11);
  ctx.textAlign = 'left';
  ctx.fillStyle = roles.quiet;
  ctx.fillText(under.head, 0, 32);
  ctx.strokeStyle = roles.rule;
  ctx.lineWidth = 1;
  ctx.beginPath();
  for (const { at, labelled } of ticks(scale, under.labelPx, under).ticks) {
    const words = under.tickWords(at);
    const x = Math.round(chartX(pen, at)) + 0.5;
    // Before the take-off nobody counts minutes from it.
    if (at >= under.zero) {
      ctx.moveTo(x, layout.axisPx - 5);
      ctx.lineTo(x, layout.axisPx - 1);
      const widthPx = labelled ? ctx.measureText(words).width : 0;
      if (labelled && x + widthPx + 4 < layout.widthPx) {
        // A plain plate: an outline around every figure would be the dearest stroke of the axis.
        ctx.fillStyle = roles.ground;
        ctx.fillRect(x + 1, 22, widthPx + 4, 11);
        ctx.fillStyle = roles.quiet;
        ctx.fillText(words, x + 3, 32);
      }
    }
  }
  ctx.stroke();
}

/** One upright through every lane, its time on an inverse plate. */
export function paintCursor(pen: Pen): void {
  const { ctx, roles, layout, model, selected, axis } = pen;
  const mark = markOf(model, selected);
  if (mark === undefined) {
    return;
  }
  const x = chartX(pen, mark.at);
  if (x < layout.namesPx || x > layout.widthPx) {
    return;
  }
  ctx.strokeStyle = roles.ink;
  ctx.lineWidth = 1.6;
  line(pen, [x, 18], [x, layout.heightPx]);
  setFont(pen, 'bold', TEXT_PX);
  const words = axis.words(mark.at);
  const width = ctx.measureText(words).width + 10;
  const left = Math.min(Math.max(x - width / 2, layout.namesPx), layout.widthPx - width);
  ctx.fillStyle = roles.ink;
  ctx.fillRect(left, 0, width, 19);
  ctx.fillStyle = roles.ground;
  ctx.textAlign = 'left';
  ctx.fillText(words, left + 5, 14);
}
