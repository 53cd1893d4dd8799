import { boxOf, type LaneBox } from './laneLayout.ts';
import type { Span } from './model.ts';
import { chartX, fitted, hatched, line, plate, setFont, type Pen } from './pen.ts';

interface Bar {
  readonly span: Span;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly height: number;
  /** Among the notes: a short, low bar that leaves people's words readable. */
  readonly isUnderWords: boolean;
}

/** Bars of the interval lanes and the fills of the panel lanes. */
export function paintSpans(pen: Pen): void {
  const { window } = pen.scale;
  const seen = pen.model.spans.filter(
    (span) => span.from <= window.to && (span.to ?? window.to) >= window.from,
  );
  const byLane = new Map<string, Span[]>();
  for (const span of seen) {
    const spans = byLane.get(span.lane) ?? [];
    spans.push(span);
    byLane.set(span.lane, spans);
  }
  for (const box of pen.layout.boxes) {
    paintLane(pen, box, byLane.get(box.lane.id) ?? []);
  }
}

function paintLane(pen: Pen, box: LaneBox, spans: readonly Span[]): void {
  let wordsFrom = pen.layout.namesPx;
  for (const [index, span] of spans.entries()) {
    const bar = barOf(pen, box, span);
    paintBar(pen, bar);
    const next = spans[index + 1];
    const nextLeft = next === undefined ? pen.layout.widthPx : chartX(pen, next.from);
    if (box.lane.form === 'interval') {
      wordsFrom = paintWords(pen, bar, Math.max(wordsFrom, pen.layout.namesPx), nextLeft);
    }
  }
}

function barOf(pen: Pen, box: LaneBox, span: Span): Bar {
  const left = Math.max(chartX(pen, span.from), pen.layout.namesPx - 2);
  const right =
    span.to === null
      ? pen.layout.widthPx - 2
      : Math.min(chartX(pen, span.to), pen.layout.widthPx + 2);
  const inset = box.lane.form === 'panel' ? 1.5 : 3;
  const isUnderWords = box.lane.form === 'words';
  return {
    span,
    left,
    right: Math.max(right, left + 1),
    top: isUnderWords ? box.topPx + box.heightPx - 6 : box.topPx + inset,
    height: isUnderWords ? 5 : box.heightPx - 2 * inset - 1,
    isUnderWords,
  };
}

function paintBar(pen: Pen, { span, left, right, top, height, isUnderWords }: Bar): void {
  const { ctx, roles } = pen;
  const width = right - left;
  ctx.setLineDash([]);
  ctx.lineWidth = 1;
  ctx.fillStyle = roles.ground;
  if (span.to === null) {
    ctx.fillRect(left, top, width, height);
    openBracket(pen, left, isUnderWords ? Math.min(right, left + 12) : right, top, height);
    return;
  }
  switch (span.look) {
    case 'outline':
      ctx.fillRect(left, top, width, height);
      ctx.strokeStyle = roles.ink;
      ctx.strokeRect(left + 0.5, top + 0.5, width - 1, height - 1);
      break;
    case 'solid':
      ctx.fillStyle = roles.mark;
      ctx.fillRect(left, top, Math.max(width - 1, 1), height);
      break;
    case 'laminar':
      ctx.fillRect(left, top, width, height);
      ctx.strokeStyle = roles.lam;
      ctx.strokeRect(left + 0.5, top + 0.5, width - 1, height - 1);
      break;
    case 'turbulent':
      ctx.fillStyle = roles.trb;
      ctx.fillRect(left, top, width, height);
      break;
    case 'intermittent':
      ctx.fillRect(left, top, width, height);
      ctx.strokeStyle = roles.int;
      ctx.strokeRect(left + 0.5, top + 0.5, width - 1, height - 1);
      paintHalf(pen, [left, top + height / 2, width, height / 2]);
      break;
    case 'notAssessed':
      ctx.strokeStyle = roles.rule;
      ctx.setLineDash([3, 2]);
      ctx.strokeRect(left + 0.5, top + 0.5, width - 1, height - 1);
      ctx.setLineDash([]);
      break;
  }
}

function paintHalf(pen: Pen, box: readonly [number, number, number, number]): void {
  if (pen.roles.isIntHatched) {
    hatched(pen, box);
  } else {
    pen.ctx.fillStyle = pen.roles.int;
    pen.ctx.fillRect(...box);
  }
}

/** Never closed: the right end stays open. */
function openBracket(pen: Pen, left: number, right: number, top: number, height: number): void {
  const { ctx, roles } = pen;
  ctx.strokeStyle = roles.ink;
  ctx.lineWidth = 1.6;
  ctx.beginPath();
  ctx.moveTo(right, top + 0.5);
  ctx.lineTo(left + 0.5, top + 0.5);
  ctx.lineTo(left + 0.5, top + height - 0.5);
  ctx.lineTo(right, top + height - 0.5);
  ctx.stroke();
}

/** Words inside the bar where they fit whole, else beside it up to the next bar; returns where the next words may begin. */
function paintWords(pen: Pen, bar: Bar, wordsFrom: number, nextLeft: number): number {
  const { ctx, roles, layout } = pen;
  if (bar.span.words === '') {
    return wordsFrom;
  }
  setFont(pen, 'normal');
  ctx.textAlign = 'left';
  const baseline = bar.top + bar.height / 2 + 4.4;
  const inside = Math.max(bar.left, layout.namesPx) + 5;
  const width = ctx.measureText(bar.span.words).width;
  if (width <= bar.right - inside - 3) {
    ctx.fillStyle = bar.span.look === 'solid' && bar.span.to !== null ? roles.openInk : roles.ink;
    ctx.fillText(bar.span.words, inside, baseline);
    return bar.right;
  }
  if (bar.span.look === 'outline' || bar.span.to === null) {
    const short = fitted(pen, bar.span.words, bar.right - inside - 3);
    ctx.fillStyle = roles.ink;
    ctx.fillText(short, inside, baseline);
    return bar.right;
  }
  const from = Math.max(bar.right + 5, wordsFrom);
  const words = fitted(pen, bar.span.words, Math.min(nextLeft, layout.widthPx) - from - 4);
  if (words === '') {
    return wordsFrom;
  }
  plate(pen, words, from, baseline, roles.ink);
  return from + ctx.measureText(words).width + 6;
}

/** Names of the lanes, and the rules between them. */
export function paintNames(pen: Pen): void {
  const { ctx, roles, layout } = pen;
  ctx.fillStyle = roles.ground;
  ctx.fillRect(0, layout.axisPx, layout.namesPx - 1, layout.heightPx - layout.axisPx);
  let panelsNamed = false;
  for (const box of layout.boxes) {
    const isPanel = box.lane.form === 'panel';
    if (!isPanel || box.lane.opensFamily) {
      ctx.strokeStyle = roles.rule;
      ctx.lineWidth = box.lane.opensFamily ? 1 : 0.6;
      line(pen, [0, box.topPx - 0.5], [layout.widthPx, box.topPx - 0.5]);
    }
    ctx.fillStyle = roles.ink;
    const baseline = box.lane.form === 'curve' ? box.topPx + 15 : box.topPx + box.heightPx / 2 + 4;
    if (isPanel && !panelsNamed) {
      setFont(pen, 'bold');
      ctx.textAlign = 'left';
      ctx.fillText('Laminar', 0, baseline);
      panelsNamed = true;
    }
    setFont(pen, 'bold', isPanel ? Math.min(12, box.heightPx - 1) : 12.5);
    ctx.textAlign = isPanel ? 'right' : 'left';
    ctx.fillText(box.lane.name, isPanel ? layout.namesPx - 9 : 0, baseline);
  }
  ctx.textAlign = 'left';
  const last = boxOf(layout, 'notes');
  if (last !== undefined) {
    ctx.strokeStyle = roles.rule;
    line(
      pen,
      [0, last.topPx + last.heightPx - 0.5],
      [layout.widthPx, last.topPx + last.heightPx - 0.5],
    );
  }
}
