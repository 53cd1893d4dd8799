import { epochMs } from '../../../record/brand.ts';
import { clockWords, minuteWords, ordinalDate } from '../timeWords.ts';
import { markOf } from './marksInView.ts';
import { chartX, line, plate, setFont, TEXT_PX, type Pen } from './pen.ts';
import { ticks } from './timeScale.ts';

const LABEL_PX = 62;
const MINUTE_MS = 60_000;

/** UTC above, minutes from take-off below it, the date at the left end and at midnight, and the grid. */
export function paintAxis(pen: Pen): void {
  const { ctx, roles, layout, scale } = pen;
  const bottom = layout.heightPx;
  const right = layout.widthPx;
  setFont(pen, 'bold', 12);
  ctx.textAlign = 'left';
  ctx.fillStyle = roles.ink;
  ctx.fillText(ordinalDate(scale.window.from), 0, 13);
  for (const tick of ticks(scale, LABEL_PX).ticks) {
    const x = Math.round(chartX(pen, tick.at)) + 0.5;
    ctx.strokeStyle = tick.labelled ? roles.rule : roles.hair;
    ctx.lineWidth = tick.midnight ? 1.4 : 0.5;
    line(pen, [x, tick.labelled ? 17 : 36], [x, bottom]);
    if (tick.labelled && x < right - 8) {
      setFont(pen, tick.midnight ? 'bold' : 'normal', 12);
      const words = tick.midnight ? ordinalDate(tick.at) : `${minuteWords(tick.at)}Z`;
      const half = ctx.measureText(words).width / 2;
      ctx.fillStyle = roles.ink;
      ctx.textAlign = 'left';
      ctx.fillText(words, Math.min(Math.max(x - half, layout.namesPx), right - 2 * half), 13);
    }
  }
  paintFromTakeOff(pen);
  ctx.strokeStyle = roles.rule;
  ctx.lineWidth = 1;
  line(pen, [0, layout.axisPx - 0.5], [right, layout.axisPx - 0.5]);
}

function paintFromTakeOff(pen: Pen): void {
  const { ctx, roles, layout, scale, takeOff } = pen;
  if (takeOff === null) {
    return;
  }
  const { window } = scale;
  const { stepMin } = ticks(scale, LABEL_PX);
  const stepMs =
    Math.max(
      stepMin,
      10 * Math.round((LABEL_PX * (window.to - window.from)) / scale.widthPx / (10 * MINUTE_MS)),
    ) * MINUTE_MS;
  setFont(pen, 'normal', 11);
  ctx.textAlign = 'left';
  ctx.fillStyle = roles.quiet;
  ctx.fillText('Lift-off +min', 0, 32);
  ctx.strokeStyle = roles.rule;
  ctx.lineWidth = 1;
  const first = Math.max(0, Math.ceil((window.from - takeOff) / stepMs));
  for (let at = takeOff + first * stepMs; at <= window.to; at += stepMs) {
    const x = Math.round(chartX(pen, epochMs(at))) + 0.5;
    line(pen, [x, layout.axisPx - 5], [x, layout.axisPx - 1]);
    const words = `+${Math.round((at - takeOff) / MINUTE_MS)}`;
    if (x + ctx.measureText(words).width + 4 < layout.widthPx) {
      plate(pen, words, x + 3, 32, roles.quiet);
    }
  }
}

/** One upright through every lane, its time on an inverse plate. */
export function paintCursor(pen: Pen): void {
  const { ctx, roles, layout, model, selected } = pen;
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
  const words = clockWords(mark.at);
  const width = ctx.measureText(words).width + 10;
  const left = Math.min(Math.max(x - width / 2, layout.namesPx), layout.widthPx - width);
  ctx.fillStyle = roles.ink;
  ctx.fillRect(left, 0, width, 19);
  ctx.fillStyle = roles.ground;
  ctx.textAlign = 'left';
  ctx.fillText(words, left + 5, 14);
}
