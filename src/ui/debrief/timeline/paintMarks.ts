import { firstMarkFrom, placeOf } from './hitTest.ts';
import { boxOf } from './laneLayout.ts';
import type { Mark } from './model.ts';
import { chartX, fitted, line, plate, setFont, type Pen } from './pen.ts';
import { xOf } from './timeScale.ts';

const SQUARE_PX = 6;

/** A tick for each entry, a square for each reading, a whisker before what was back-dated, words of people in the notes. */
export function paintMarks(pen: Pen): void {
  const { model, scale } = pen;
  const lastColumn = new Map<string, number>();
  const seen: Mark[] = [];
  for (
    let index = firstMarkFrom(model.marks, scale.window.from);
    index < model.marks.length;
    index += 1
  ) {
    const mark = model.marks[index];
    if (mark === undefined || mark.at > scale.window.to) {
      break;
    }
    // Marks in one column of pixels of one lane look like one mark: the first stands for them.
    const column = Math.round(xOf(scale, mark.at));
    if (column >= 0 && (lastColumn.get(mark.lane) !== column || mark.words !== '')) {
      lastColumn.set(mark.lane, column);
      seen.push(mark);
      paintMark(pen, mark);
    }
  }
  paintMarkWords(pen, seen);
  paintSelected(pen);
}

function paintMark(pen: Pen, mark: Mark): void {
  const { ctx, roles } = pen;
  const box = boxOf(pen.layout, mark.lane);
  const place = placeOf(mark, pen);
  if (box === undefined || place === null) {
    return;
  }
  const { xPx, yPx } = place;
  ctx.strokeStyle = roles.ink;
  ctx.lineWidth = 1.4;
  if (mark.whiskerS !== null) {
    const left = Math.max(pen.layout.namesPx, chartX(pen, mark.at) - whiskerPx(pen, mark.whiskerS));
    line(pen, [left, yPx], [xPx, yPx]);
    line(pen, [left, yPx - 4], [left, yPx + 4]);
  }
  if (mark.level !== null) {
    paintSquare(pen, xPx, yPx, mark.hollow);
  } else if (mark.hollow) {
    ctx.lineWidth = 1.4;
    ctx.fillStyle = roles.ground;
    ctx.fillRect(xPx - 3, yPx - 5, 6, 10);
    ctx.strokeRect(xPx - 3, yPx - 5, 6, 10);
  } else if (box.lane.form === 'panel') {
    line(pen, [xPx, box.topPx + 1], [xPx, box.topPx + 4]);
  } else if (box.lane.form === 'curve') {
    line(pen, [xPx, box.topPx + box.heightPx - 5], [xPx, box.topPx + box.heightPx - 1]);
  } else if (box.lane.form === 'words' || mark.lane === 'covers') {
    line(
      pen,
      [xPx, box.topPx + (mark.words === '' ? box.heightPx - 7 : 4)],
      [xPx, box.topPx + box.heightPx - 3],
    );
  } else {
    line(pen, [xPx, box.topPx + box.heightPx - 5], [xPx, box.topPx + box.heightPx - 1]);
  }
}

function whiskerPx(pen: Pen, doubtS: number): number {
  const { window, widthPx } = pen.scale;
  return Math.max(6, (doubtS * 1000 * widthPx) / (window.to - window.from));
}

function paintSquare(pen: Pen, xPx: number, yPx: number, isHollow: boolean): void {
  const { ctx, roles } = pen;
  const half = SQUARE_PX / 2;
  if (isHollow) {
    ctx.fillStyle = roles.ground;
    ctx.strokeStyle = roles.ink;
    ctx.lineWidth = 1.3;
    ctx.fillRect(xPx - half, yPx - half, SQUARE_PX, SQUARE_PX);
    ctx.strokeRect(xPx - half, yPx - half, SQUARE_PX, SQUARE_PX);
  } else {
    ctx.fillStyle = roles.ink;
    ctx.fillRect(xPx - half, yPx - half, SQUARE_PX, SQUARE_PX);
  }
}

function paintMarkWords(pen: Pen, seen: readonly Mark[]): void {
  const { ctx, roles, layout } = pen;
  setFont(pen, 'normal');
  ctx.textAlign = 'left';
  const nextLeft = new Map<string, number>();
  for (const mark of seen.toReversed()) {
    const box = boxOf(layout, mark.lane);
    if (
      mark.words !== '' &&
      box !== undefined &&
      box.lane.form !== 'panel' &&
      box.lane.form !== 'curve'
    ) {
      const left = chartX(pen, mark.at) + 4;
      const room = (nextLeft.get(mark.lane) ?? layout.widthPx) - left - 6;
      nextLeft.set(mark.lane, left - 4);
      const words = room < 20 || left < layout.namesPx ? '' : fitted(pen, mark.words, room);
      if (words !== '') {
        plate(pen, words, left, box.topPx + box.heightPx / 2 + 4.4, roles.ink);
      }
    }
  }
}

/** The mark that the table and the panel speak about; ringed 3 px thick while the keyboard is on the chart. */
function paintSelected(pen: Pen): void {
  const { ctx, roles, model, selected, isFocused } = pen;
  const mark = model.marks.find(({ entry }) => entry === selected);
  const place = mark === undefined ? null : placeOf(mark, pen);
  if (place === null || place.xPx < pen.layout.namesPx || place.xPx > pen.layout.widthPx) {
    return;
  }
  const half = isFocused ? 10 : 7;
  ctx.strokeStyle = roles.ground;
  ctx.lineWidth = isFocused ? 6 : 4;
  ctx.strokeRect(place.xPx - half, place.yPx - half, 2 * half, 2 * half);
  ctx.strokeStyle = roles.ink;
  ctx.lineWidth = isFocused ? 3 : 2;
  ctx.strokeRect(place.xPx - half, place.yPx - half, 2 * half, 2 * half);
}
