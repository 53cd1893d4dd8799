import { getStroke } from 'perfect-freehand';
import { SKETCH_SIDE, type Strokes } from '../../record/sketch.ts';
import styles from './Ink.module.css';

/** Width of the pen, in units of the card; the same everywhere, since a finger's pressure says nothing here. */
const PEN = { size: 16, thinning: 0, smoothing: 0.5, streamline: 0.35, simulatePressure: false };

/** A card with what was drawn on it, in ink of the theme. */
export function Ink({ strokes, label }: { readonly strokes: Strokes; readonly label: string }) {
  return (
    <svg
      className={styles.ink}
      viewBox={`0 0 ${SKETCH_SIDE} ${SKETCH_SIDE}`}
      role="img"
      aria-label={label}
    >
      {strokes.map((stroke, index) => (
        <path key={index} d={outlineOf(stroke)} />
      ))}
    </svg>
  );
}

/** The outline of an inked stroke as a closed path of curves through the middles of its edges. */
function outlineOf(stroke: readonly number[]): string {
  const points = Array.from({ length: stroke.length / 2 }, (_, index): [number, number] => [
    stroke[index * 2] ?? 0,
    stroke[index * 2 + 1] ?? 0,
  ]);
  const outline = getStroke(points, PEN);
  const [first] = outline;
  if (first === undefined) {
    return '';
  }
  const curves = outline.map(([x, y], index) => {
    const [nextX, nextY] = outline[(index + 1) % outline.length] ?? first;
    return `${tenth(x)},${tenth(y)} ${tenth((x + nextX) / 2)},${tenth((y + nextY) / 2)}`;
  });
  return `M${tenth(first[0])},${tenth(first[1])} Q${curves.join(' ')} Z`;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
