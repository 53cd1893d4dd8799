import { placeOf } from './hitTest.ts';
import { boxOf } from './laneLayout.ts';
import { markOf, marksInView } from './marksInView.ts';
import type { Mark } from './model.ts';
import { chartX, fitted, line, plate, setFont, TEXT_PX, type Pen } from './pen.ts';

const SQUARE_PX = 6;

/** A tick for each entry, a square for each reading, a whisker before what was back-dated, words of people in the notes. */
export function paintMarks(pen: Pen): void {
  const { ctx, roles } = pen;
  const seen = marksInView(pen.model, pen.scale);
  for (const mark of seen) {
    if (mark.whiskerS !== null) {
      paintWhisker(pen, mark, mark.whiskerS);
    }
  }
  // One stroke for all ticks and one fill for all squares: a canvas pays by the stroke.
  ctx.strokeStyle = roles.ink;
  ctx.lineWidth = 1.4;
  ctx.beginPath();
  for (const mark of seen) {
    if (mark.level === null && !mark.hollow) {
      addTick(pen, mark);
    }
  }
  ctx.stroke();
  ctx.fillStyle = roles.ink;
  ctx.beginPath();
  for (const mark of seen) {
    if (mark.level !== null && !mark.hollow) {
      addSquare(pen, mark);
    }
  }
  ctx.fill();
  for (const mark of seen) {
    if (mark.hollow) {
      paintHollow(pen, mark);
    }
  }
  paintMarkWords(pen, seen);
  paintSelected(pen);
}

function paintWhisker(pen: Pen, mark: Mark, doubtS: number): void {
  const { ctx, roles } = pen;
  const place = placeOf(mark, pen);
  if (place === null) {
    return;
  }
  const { xPx, yPx } = place;
  const left = Math.max(pen.layout.namesPx, xPx - whiskerPx(pen, doubtS));
  ctx.strokeStyle = roles.ink;
  ctx.lineWidth = 1.4;
  line(pen, [left, yPx], [xPx, yPx]);
  line(pen, [left, yPx - 4], [left, yPx + 4]);
}

function addTick(pen: Pen, mark: Mark): void {
  const box = boxOf(pen.layout, mark.lane);
  if (box === undefined) {
    return;
  }
  const xPx = chartX(pen, mark.at);
  const bottomPx = box.topPx + box.heightPx;
  const [fromPx, toPx] =
    box.lane.form === 'panel'
      ? [box.topPx + 1, box.topPx + 4]
      : box.lane.form === 'words' || mark.lane === 'covers'
        ? [mark.words === '' ? bottomPx - 7 : box.topPx + 4, bottomPx - 3]
        : [bottomPx - 5, bottomPx - 1];
  pen.ctx.moveTo(xPx, fromPx);
  pen.ctx.lineTo(xPx, toPx);
}

function addSquare(pen: Pen, mark: Mark): void {
  const place = placeOf(mark, pen);
  if (place !== null) {
    const half = SQUARE_PX / 2;
    pen.ctx.rect(place.xPx - half, place.yPx - half, SQUARE_PX, SQUARE_PX);
  }
}

function paintHollow(pen: Pen, mark: Mark): void {
  const { ctx, roles } = pen;
  const place = placeOf(mark, pen);
  if (place === null) {
    return;
  }
  const [widthPx, heightPx] = mark.level === null ? [6, 10] : [SQUARE_PX, SQUARE_PX];
  const box = [place.xPx - widthPx / 2, place.yPx - heightPx / 2, widthPx, heightPx] as const;
  ctx.fillStyle = roles.ground;
  ctx.strokeStyle = roles.ink;
  ctx.lineWidth = mark.level === null ? 1.4 : 1.3;
  ctx.fillRect(...box);
  ctx.strokeRect(...box);
}

function whiskerPx(pen: Pen, doubtS: number): number {
  const { window, widthPx } = pen.scale;
  return Math.max(6, (doubtS * 1000 * widthPx) / (window.to - window.from));
}

function paintMarkWords(pen: Pen, seen: readonly Mark[]): void {
  const { ctx, roles, layout } = pen;
  setFont(pen, 'normal');
  ctx.textAlign = 'left';
  const nextLeft = new Map<string, number>();
  // Setting a font costs as much as drawing a word, so it is set where the lanes change only.
  let wasLow = false;
  for (const mark of seen.toReversed()) {
    const box = boxOf(layout, mark.lane);
    if (
      mark.words !== '' &&
      box !== undefined &&
      (box.lane.form !== 'panel' || mark.cause !== null) &&
      box.lane.form !== 'curve'
    ) {
      // Lanes of panels are lower than a line of the notes.
      const isLow = box.lane.form === 'panel';
      if (isLow !== wasLow) {
        setFont(pen, 'normal', isLow ? 10.5 : TEXT_PX);
        wasLow = isLow;
      }
      const left = chartX(pen, mark.at) + 4;
      const room = (nextLeft.get(mark.lane) ?? layout.widthPx) - left - 6;
      nextLeft.set(mark.lane, left - 4);
      const words = room < 20 || left < layout.namesPx ? '' : fitted(pen, mark.words, room);
      if (words !== '') {
        plate(pen, words, left, box.topPx + box.heightPx / 2 + (isLow ? 3.7 : 4.4), roles.ink);
      }
    }
  }
}

/** The mark that the table and the panel speak about; ringed 3 px thick while the keyboard is on the chart. */
function paintSelected(pen: Pen): void {
  const { ctx, roles, model, selected, isFocused } = pen;
  const mark = markOf(model, selected);
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
