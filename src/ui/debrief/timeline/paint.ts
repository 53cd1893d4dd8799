import { paintAxis, paintCursor } from './paintAxis.ts';
import { paintFuel, paintReduction } from './paintCurves.ts';
import { paintMarks } from './paintMarks.ts';
import { paintNames, paintSpans } from './paintSpans.ts';
import type { Pen } from './pen.ts';

/** Draws the whole chart anew: only what lies inside the window costs anything. */
export function paintTimeline(pen: Pen, pxPerCssPx: number): void {
  const { ctx, roles, layout } = pen;
  ctx.setTransform(pxPerCssPx, 0, 0, pxPerCssPx, 0, 0);
  ctx.fillStyle = roles.ground;
  ctx.fillRect(0, 0, layout.widthPx, layout.heightPx);
  paintAxis(pen);
  ctx.save();
  ctx.beginPath();
  ctx.rect(
    layout.namesPx - 1,
    layout.axisPx - 1,
    layout.widthPx - layout.namesPx + 1,
    layout.heightPx,
  );
  ctx.clip();
  paintSpans(pen);
  ctx.restore();
  paintNames(pen);
  paintFuel(pen);
  paintReduction(pen);
  ctx.save();
  ctx.beginPath();
  ctx.rect(
    layout.namesPx - 12,
    layout.axisPx - 1,
    layout.widthPx - layout.namesPx + 12,
    layout.heightPx,
  );
  ctx.clip();
  paintMarks(pen);
  ctx.restore();
  paintCursor(pen);
}
