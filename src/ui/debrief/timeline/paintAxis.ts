import type { AxisTime } from '../axisTime.ts';
import { ordinalDate } from '../timeWords.ts';
import { markOf } from './marksInView.ts';
import { chartX, line, plate, setFont, TEXT_PX, type Pen } from './pen.ts';
import { ticks } from './timeScale.ts';

/** The chosen axis above, a second one below it, the date or the unit at the left end, and the grid. */
export function paintAxis(pen: Pen): void {
  const { ctx, roles, layout, scale, axis } = pen;
  const bottom = layout.heightPx;
  const right = layout.widthPx;
  setFont(pen, 'bold', 12);
  ctx.textAlign = 'left';
  ctx.fillStyle = roles.ink;
  ctx.fillText(isOfDay(axis) ? ordinalDate(scale.window.from) : axis.head, 0, 13);
  for (const tick of ticks(scale, axis.labelPx, axis).ticks) {
    const x = Math.round(chartX(pen, tick.at)) + 0.5;
    ctx.strokeStyle = tick.labelled ? roles.rule : roles.hair;
    ctx.lineWidth = tick.midnight ? 1.4 : 0.5;
    line(pen, [x, tick.labelled ? 17 : 36], [x, bottom]);
    if (tick.labelled && x < right - 8) {
      setFont(pen, tick.midnight ? 'bold' : 'normal', 12);
      const words = tick.midnight ? ordinalDate(tick.at) : axis.tickWords(tick.at);
      const half = ctx.measureText(words).width / 2;
      ctx.fillStyle = roles.ink;
      ctx.textAlign = 'left';
      ctx.fillText(words, Math.min(Math.max(x - half, layout.namesPx), right - 2 * half), 13);
    }
  }
  if (pen.under !== null) {
    paintUnder(pen, pen.under);
  }
  ctx.strokeStyle = roles.rule;
  ctx.lineWidth = 1;
  line(pen, [0, layout.axisPx - 0.5], [right, layout.axisPx - 0.5]);
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
  for (const { at, labelled } of ticks(scale, under.labelPx, under).ticks) {
    const words = under.tickWords(at);
    const x = Math.round(chartX(pen, at)) + 0.5;
    // Before the take-off nobody counts minutes from it.
    if (at >= under.zero) {
      line(pen, [x, layout.axisPx - 5], [x, layout.axisPx - 1]);
      if (labelled && x + ctx.measureText(words).width + 4 < layout.widthPx) {
        plate(pen, words, x + 3, 32, roles.quiet);
      }
    }
  }
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
