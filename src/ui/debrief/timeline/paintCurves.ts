import { figure } from '../../kit/number.ts';
import { boxOf, yOfValue, type LaneBox } from './laneLayout.ts';
import type { ReductionPoint } from './model.ts';
import { chartX, line, plate, setFont, type Pen } from './pen.ts';

/** Baseline and runs behind the squares of the readings; the squares are marks and are drawn with them. */
export function paintFuel(pen: Pen): void {
  const { ctx, roles, model, layout } = pen;
  const box = boxOf(layout, 'fuel');
  if (box === undefined) {
    return;
  }
  const { fuel } = model;
  sublabels(pen, box, [`${fuel.unit} at card`, fuel.low > 0 ? `from ${figure(fuel.low, 0)}` : '']);
  gridValues(
    pen,
    box,
    fuel,
    box.heightPx < 80 ? [fuel.low, fuel.high] : [fuel.low, (fuel.low + fuel.high) / 2, fuel.high],
    0,
  );
  clippedToChart(pen, () => {
    ctx.strokeStyle = roles.ink;
    ctx.lineWidth = 1.2;
    ctx.setLineDash([6, 4]);
    ctx.beginPath();
    for (const [index, point] of fuel.baseline.entries()) {
      const x = chartX(pen, point.at);
      const y = yOfValue(box, point.value, fuel);
      if (index === 0) {
        ctx.moveTo(x, y);
      } else {
        ctx.lineTo(x, y);
      }
    }
    ctx.stroke();
    ctx.setLineDash([]);
    setFont(pen, 'normal', 11.5);
    for (const run of fuel.runs) {
      const left = chartX(pen, run.from);
      const right = run.to === null ? layout.widthPx : chartX(pen, run.to);
      const y = box.topPx + box.heightPx - 4.5;
      ctx.lineWidth = 1;
      ctx.strokeStyle = roles.ink;
      line(pen, [left, y - 3], [left, y + 2]);
      line(pen, [left, y], [right, y]);
      if (run.to !== null) {
        line(pen, [right, y - 3], [right, y + 2]);
      }
      if (right - left > 30) {
        plate(pen, run.words, left + 3, y - 3, roles.ink);
      }
    }
  });
}

/** Line in its 68 and 95 bands, zero and target always drawn; struck readings break the line and say by which gate. */
export function paintReduction(pen: Pen): void {
  const { ctx, roles, model, layout } = pen;
  const box = boxOf(layout, 'reduction');
  if (box === undefined) {
    return;
  }
  const { reduction } = model;
  sublabels(pen, box, ['% fuel flow', '68, 95 %']);
  const values = [0, 10, 20, 30, 40, 50].filter(
    (value) => value <= reduction.high && (value % 20 === 0 || box.heightPx > 84),
  );
  gridValues(pen, box, reduction, values, 0);
  const y = (value: number): number => yOfValue(box, value, reduction);
  clippedToChart(pen, () => {
    for (const stretch of reduction.stretches) {
      paintStretch(pen, box, stretch);
    }
    paintStruck(pen, box);
    ctx.strokeStyle = roles.ink;
    ctx.lineWidth = 1.4;
    line(pen, [layout.namesPx, y(0)], [layout.widthPx, y(0)]);
    if (reduction.target !== null) {
      ctx.setLineDash([5, 4]);
      line(pen, [layout.namesPx, y(reduction.target)], [layout.widthPx, y(reduction.target)]);
      ctx.setLineDash([]);
    }
  });
  if (reduction.target !== null) {
    const words = `target ${figure(reduction.target, 0)}`;
    setFont(pen, 'normal', 11.5);
    plate(
      pen,
      words,
      layout.widthPx - ctx.measureText(words).width - 3,
      y(reduction.target) - 4,
      roles.quiet,
    );
  }
}

function paintStretch(pen: Pen, box: LaneBox, stretch: readonly ReductionPoint[]): void {
  const { ctx, roles, model } = pen;
  const y = (value: number): number => yOfValue(box, value, model.reduction);
  const xs = stretch.map((point) => chartX(pen, point.at));
  if (stretch.length === 1) {
    // One reading alone has no line to stand on: its bands get a width of their own.
    const [x = 0] = xs;
    band(pen, [x - 3, x + 3], stretch, y, 'both');
    ctx.lineWidth = 1.8;
    ctx.strokeStyle = roles.ink;
    const [point] = stretch;
    if (point !== undefined) {
      line(pen, [x - 3, y(point.value)], [x + 3, y(point.value)]);
    }
    return;
  }
  band(pen, xs, stretch, y, 'each');
  ctx.strokeStyle = roles.ink;
  ctx.lineWidth = 1.4;
  ctx.beginPath();
  for (const [index, point] of stretch.entries()) {
    const x = xs[index] ?? 0;
    if (index === 0) {
      ctx.moveTo(x, y(point.value));
    } else {
      ctx.lineTo(x, y(point.value));
    }
  }
  ctx.stroke();
}

function band(
  pen: Pen,
  xs: readonly number[],
  stretch: readonly ReductionPoint[],
  y: (value: number) => number,
  width: 'both' | 'each',
): void {
  const { ctx, roles } = pen;
  const at = (index: number): ReductionPoint | undefined => stretch[width === 'both' ? 0 : index];
  const outline = (
    high: (p: ReductionPoint) => number,
    low: (p: ReductionPoint) => number,
  ): void => {
    ctx.beginPath();
    for (const [index, x] of xs.entries()) {
      const point = at(index);
      if (point !== undefined) {
        ctx.lineTo(x, y(high(point)));
      }
    }
    for (const [index, x] of [...xs.entries()].reverse()) {
      const point = at(index);
      if (point !== undefined) {
        ctx.lineTo(x, y(low(point)));
      }
    }
    ctx.closePath();
  };
  const paint = (fill: string): void => {
    ctx.lineWidth = 1.4;
    ctx.strokeStyle = roles.ink;
    ctx.fillStyle = fill;
    if (roles.areBandsOutlined) {
      ctx.stroke();
    } else {
      ctx.fill();
    }
  };
  outline(
    (point) => point.high95,
    (point) => point.low95,
  );
  paint(roles.band95);
  outline(
    (point) => point.value + point.half68,
    (point) => point.value - point.half68,
  );
  paint(roles.band68);
}

function paintStruck(pen: Pen, box: LaneBox): void {
  const { ctx, roles, model, layout } = pen;
  setFont(pen, 'normal', 11.5);
  let wordsFrom = layout.namesPx;
  for (const struck of model.reduction.struck) {
    const x = chartX(pen, struck.at);
    const y = yOfValue(box, struck.value, model.reduction);
    ctx.strokeStyle = roles.ink;
    ctx.fillStyle = roles.ground;
    ctx.lineWidth = 1.2;
    ctx.fillRect(x - 3, y - 3, 6, 6);
    ctx.strokeRect(x - 3, y - 3, 6, 6);
    line(pen, [x - 6, y], [x + 6, y]);
    const words = `struck, ${struck.words}`;
    if (x + 9 >= wordsFrom) {
      plate(pen, words, x + 9, wordsBaseline(pen, box, y), roles.quiet);
      wordsFrom = x + 9 + ctx.measureText(words).width + 8;
    }
  }
}

/** Beside the zero line or well under the target, so that no broken line runs through the words. */
function wordsBaseline(pen: Pen, box: LaneBox, y: number): number {
  const zero = yOfValue(box, 0, pen.model.reduction);
  return y > zero - 16 ? zero - 8 : y + 16;
}

function sublabels(pen: Pen, box: LaneBox, words: readonly string[]): void {
  const { ctx, roles } = pen;
  setFont(pen, 'normal', 11.5);
  ctx.textAlign = 'left';
  ctx.fillStyle = roles.quiet;
  for (const [index, text] of words.entries()) {
    ctx.fillText(text, 0, box.topPx + 30 + 14 * index);
  }
}

function gridValues(
  pen: Pen,
  box: LaneBox,
  range: { readonly low: number; readonly high: number },
  values: readonly number[],
  decimals: number,
): void {
  const { ctx, roles, layout } = pen;
  setFont(pen, 'normal', 11.5);
  for (const value of values) {
    const y = Math.round(yOfValue(box, value, range)) + 0.5;
    ctx.strokeStyle = roles.hair;
    ctx.lineWidth = 0.4;
    line(pen, [layout.namesPx, y], [layout.widthPx, y]);
    ctx.textAlign = 'right';
    ctx.fillStyle = roles.ink;
    ctx.fillText(figure(value, decimals), layout.namesPx - 8, y + 4);
  }
  ctx.textAlign = 'left';
}

function clippedToChart(pen: Pen, paint: () => void): void {
  const { ctx, layout } = pen;
  ctx.save();
  ctx.beginPath();
  ctx.rect(layout.namesPx, layout.axisPx, layout.widthPx - layout.namesPx, layout.heightPx);
  ctx.clip();
  paint();
  ctx.restore();
}
